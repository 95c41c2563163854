import { dateWords, instantParts } from '../../../../shared/public/times.ts';
import { toldDistance } from '../../../../shared/public/toldDistance.ts';
import { writeQuantity } from '../../../../shared/units/shown.ts';
import type { System, UnitId } from '../../../../shared/units/units.ts';
import { pageLocale, pageWords, type Say } from '../pageWords.ts';

/** What the map's script says, with its quantities written as the publisher writes them. */
export interface Words {
  readonly say: Say;
  readonly distance: (feet: number) => string;
  readonly flow: (gpm: number) => string;
  readonly instant: (at: string, asOf: string) => string;
  readonly date: (date: string) => string;
  readonly away: (feet: number, bearing: string) => string;
  readonly system: System;
}

export function wordsIn(template: HTMLTemplateElement): Words {
  const say = pageWords(template);
  const { units, timeZone = 'UTC' } = template.dataset;
  const own: System = units === 'metric' ? 'metric' : 'us';
  const locale = pageLocale();
  const times = { timeZone, locale };

  const both = (write: (system: System) => string): string =>
    say('both', { own: write(own), other: write(own === 'us' ? 'metric' : 'us') });
  const quantity = (value: number, unit: UnitId, system: System): string =>
    writeQuantity(value, unit, { system, locale }, (shown) => say(`unit.${shown}`));
  const distance = (feet: number): string =>
    both((system) => {
      const { value, unit } = toldDistance(feet, system, own);
      return quantity(value, unit, system);
    });
  return {
    say,
    distance,
    system: own,
    flow: (gpm) => both((system) => quantity(gpm, 'gpm', system)),
    instant: (at, asOf) => say('instant', instantParts(at, times, asOf)),
    date: (date) => dateWords(date, locale),
    away: (feet, bearing) => say('away', { distance: distance(feet), direction: say(`bearing.${bearing}`) }),
  };
}
