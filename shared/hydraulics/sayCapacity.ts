import { convert } from '../units/convert.ts';
import { displays, formatNumber, formatQuantity, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type { FlowTestResult } from './evaluateFlowTest.ts';

/** An end of an interval in the reader's unit, moved outward to the ten, so that rounding never claims more than is known. */
function end(gpm: number, direction: 'down' | 'up', { system, locale }: Reader): string {
  const { unit } = displays.gpm[system];
  const value = convert(gpm, 'gpm', unit);
  const step = value >= 100 ? 10 : 1;
  const rounded = (direction === 'down' ? Math.floor(value / step) : Math.ceil(value / step)) * step;
  return formatNumber(rounded, locale, 0);
}

/** Both ends of an interval as they may be said, without their unit. */
export const intervalEnds = (
  { lowGpm, highGpm }: { readonly lowGpm: number; readonly highGpm: number },
  reader: Reader,
): { readonly low: string; readonly high: string } => ({
  low: end(lowGpm, 'down', reader),
  high: end(highGpm, 'up', reader),
});

/** A chance in whole percent, rounded down: nobody is told that a class is surer than it is. */
export function sayChance(chance: number, { locale }: Reader): string {
  const percent = Math.floor(chance * 100 + 1e-9);
  return percent >= 99 && chance > 0.995
    ? say(locale, 'hydraulics.answer.chance-over')
    : say(locale, 'hydraulics.answer.chance', { percent });
}

/**
 * The answer that a chief can use, in one line: `B, 880 gpm, 810 to 950 at 95%, class B 99% sure`. The capacity is shown
 * to the whole gallon, as it is banded; the ends of the interval outward to the ten.
 */
export function sayCapacity(
  {
    rating,
    hydrantClass,
    className,
    interval,
  }: Pick<FlowTestResult, 'rating' | 'hydrantClass' | 'interval'> &
    Partial<Pick<FlowTestResult, 'className'>>,
  reader: Reader,
): string {
  const { locale } = reader;
  if (rating.capacityGpm === null || hydrantClass === null) return say(locale, 'hydraulics.answer.no-class');
  const named = className ?? hydrantClass;
  if (!interval)
    return say(locale, 'hydraulics.answer.nothing', {
      hydrantClass: named,
      residual: formatQuantity(rating.residualPsi, 'psi', reader),
    });
  return say(locale, 'hydraulics.answer.rated', {
    hydrantClass: named,
    capacity: formatQuantity(rating.capacityGpm, 'gpm', reader),
    ...intervalEnds(interval, reader),
    coverage: Math.round(interval.coverage * 100),
    chance: sayChance(interval.classChance, reader),
  });
}
