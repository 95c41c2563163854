import type { PublicYear } from '../../../../shared/yearly/schema.ts';
import type { Reader } from '../reader.ts';

export const yearPath = (year: number): string => `years/${String(year)}/`;

export const yearName = ({ say }: Reader, { year, over }: PublicYear): string =>
  say(over ? 'years.year' : 'years.year.so-far', { year: String(year) });

/** Whole hours as a person would say them. Beyond two days the hours are noise. */
export function hoursWords({ say }: Reader, hours: number | null): string {
  if (hours === null) return say('years.length.none');
  if (hours < 1) return say('years.length.short');
  const days = Math.floor(hours / 24);
  return say('years.length', { days, hours: days >= 2 ? 0 : hours % 24 }).trim();
}

export const moneyWords = (reader: Reader, dollars: number | null): string =>
  dollars === null ? reader.say('years.money.kept') : reader.say('years.money.dollars', { amount: dollars });

/** `January` to `December`. */
export function monthNames({ locale }: Reader): readonly string[] {
  const format = new Intl.DateTimeFormat(locale === 'es' ? 'es-US' : 'en-US', {
    month: 'long',
    timeZone: 'UTC',
  });
  return Array.from({ length: 12 }, (_, month) => format.format(new Date(Date.UTC(2026, month, 1))));
}
