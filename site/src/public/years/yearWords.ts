import type { PublicYear } from '../../../../shared/yearly/schema.ts';
import { localeTags } from '../../../../shared/words/locales.ts';
import { hoursWords, type Reader } from '../reader.ts';

export const yearPath = (year: number): string => `years/${String(year)}/`;

export const yearName = ({ say }: Reader, { year, over }: PublicYear): string =>
  say(over ? 'years.year' : 'years.year.so-far', { year: String(year) });

/** How long hydrants were out; none of them back yet is said. */
export const outageLength = (reader: Reader, hours: number | null): string =>
  hours === null ? reader.say('years.length.none') : hoursWords(reader, hours);

export const moneyWords = (reader: Reader, dollars: number | null): string =>
  dollars === null ? reader.say('years.money.kept') : reader.say('years.money.dollars', { amount: dollars });

/** `January` to `December`. */
export function monthNames({ locale }: Reader): readonly string[] {
  const format = new Intl.DateTimeFormat(localeTags[locale], {
    month: 'long',
    timeZone: 'UTC',
  });
  return Array.from({ length: 12 }, (_, month) => format.format(new Date(Date.UTC(2026, month, 1))));
}
