import { formatNumber, formatQuantity, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type { CapacityChange } from './capacityChange.ts';
import { sayChance } from './sayCapacity.ts';

/** A static that moved by less than this explains nothing, psi (common practice, no source). */
const STILL_PSI = 3;

/** What a change of capacity means, and what to look for: the sentence that flags a loss. */
export function sayChange(change: CapacityChange, reader: Reader): string {
  const { locale } = reader;
  const { verdict, fraction, fromGpm, toGpm, fromTestedOn, between, lossChance, staticChangePsi } = change;
  const share = (value: number): string => formatNumber(Math.abs(value) * 100, locale, 0);
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  const said = say(locale, `hydraulics.history.${verdict}`, {
    percent: share(fraction),
    direction: fraction < 0 ? 'down' : 'up',
    from: gpm(fromGpm),
    to: gpm(toGpm),
    since: fromTestedOn,
    chance: sayChance(verdict === 'gain' ? 1 - lossChance : lossChance, reader),
  });
  if (verdict !== 'loss' && verdict !== 'possible-loss') return said;
  const lowerPressure = staticChangePsi <= -STILL_PSI && change.sameDropFraction > fraction / 2;
  const cause = say(locale, lowerPressure ? 'hydraulics.history.pressure' : 'hydraulics.history.pipes', {
    change: formatQuantity(Math.abs(staticChangePsi), 'psi', reader),
  });
  const within = between
    ? say(locale, 'hydraulics.history.between', {
        low: formatNumber(between.low * 100, locale, 0),
        high: formatNumber(between.high * 100, locale, 0),
      })
    : '';
  return [said, within, cause].filter((sentence) => sentence !== '').join(' ');
}
