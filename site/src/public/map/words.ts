import { convert } from '../../../../shared/units/convert.ts';
import type { System } from '../../../../shared/units/units.ts';
import { dateWords, dayOf, timeOfDay, zoneName } from '../../../../shared/public/times.ts';
import type { Locale } from '../../../../shared/words/locales.ts';
import { paced } from '../paced.ts';
import { pageWords, type Say } from '../pageWords.ts';

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

const FEET_PER_MILE = 5280;

export function wordsIn(template: HTMLTemplateElement): Words {
  const say = pageWords(template);
  const { units, timeZone = 'UTC' } = template.dataset;
  const own: System = units === 'metric' ? 'metric' : 'us';
  const locale: Locale = document.documentElement.lang === 'es' ? 'es' : 'en';
  const times = { timeZone, locale };
  // As shared/units/format.ts writes numbers: one country, one way, in both languages.
  const number = (value: number, decimals: number): string =>
    new Intl.NumberFormat(`${locale}-US`, { maximumFractionDigits: decimals, useGrouping: 'always' }).format(
      value,
    );

  const both = (write: (system: System) => string): string =>
    say('both', { own: write(own), other: write(own === 'us' ? 'metric' : 'us') });
  const distance = (feet: number): string =>
    both((system) => {
      const [shown, unit] = system === 'us' ? (['mi', 'mi'] as const) : (['km', 'km'] as const);
      if (feet >= FEET_PER_MILE)
        return `${number(convert(feet / FEET_PER_MILE, 'mi', shown), 1)} ${say(`unit.${unit}`)}`;
      return `${number(paced(feet, system, own), 0)} ${say(system === 'us' ? 'unit.ft' : 'unit.m')}`;
    });
  return {
    say,
    distance,
    system: own,
    flow: (gpm) =>
      both((system) =>
        system === 'us'
          ? `${number(gpm, 0)} ${say('unit.gpm')}`
          : `${number(convert(gpm, 'gpm', 'L/min'), 0)} ${say('unit.L/min')}`,
      ),
    instant: (at, asOf) =>
      say('instant', { day: dayOf(at, times, asOf), time: timeOfDay(at, times), zone: zoneName(at, times) }),
    date: (date) => dateWords(date, locale),
    away: (feet, bearing) => say('away', { distance: distance(feet), direction: say(`bearing.${bearing}`) }),
  };
}
