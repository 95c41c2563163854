import type { Reader } from '../../../../shared/units/format.ts';
import { say, type WordParams } from '../../../../shared/words/index.ts';
import { filled } from '../words/catalogues.ts';
import { useObservable } from './observable.ts';
import { preferences } from './preferences.ts';
import { utility } from './utility.ts';

export interface Wording extends Reader {
  readonly zone: string;
  readonly t: (key: string, params?: WordParams) => string;
  /** Date and time in the utility's zone, with the zone's name: `Mar 4, 2026, 2:10 AM EST`. */
  readonly when: (instant: string) => string;
  /** Time alone where the day is clear. */
  readonly clock: (instant: string) => string;
  /** A calendar day that has no time: `Mar 4, 2026`. */
  readonly day: (date: string) => string;
  readonly money: (cents: number) => string;
}

const formatLocales = { en: 'en-US', es: 'es-US' } as const;

/** Making one takes longer than a thousand uses of it, and a long list says a time in each line. */
const dateFormats = new Map<string, Intl.DateTimeFormat>();

function dateFormat(locale: Reader['locale'], options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`;
  const known = dateFormats.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(formatLocales[locale], options);
  dateFormats.set(key, made);
  return made;
}

/** Words, dates and money for the reader of this screen. */
export function useWords(): Wording {
  const { locale, units } = useObservable(preferences);
  // Words that were not here yet are drawn when they come.
  useObservable(filled);
  const zone = useObservable(utility)?.timeZone ?? 'UTC';
  return wording({ locale, system: units }, zone);
}

export function wording({ locale, system }: Reader, zone: string): Wording {
  const format = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat => dateFormat(locale, options);
  return {
    locale,
    system,
    zone,
    t: (key, params) => say(locale, key, params),
    when: (instant) =>
      format({
        timeZone: zone,
        year: 'numeric',
        month: 'short',
        day: 'numeric',
        hour: 'numeric',
        minute: '2-digit',
        timeZoneName: 'short',
      }).format(new Date(instant)),
    clock: (instant) =>
      format({ timeZone: zone, hour: 'numeric', minute: '2-digit', timeZoneName: 'short' }).format(
        new Date(instant),
      ),
    day: (date) =>
      format({ timeZone: 'UTC', year: 'numeric', month: 'short', day: 'numeric' }).format(
        new Date(`${date}T00:00:00Z`),
      ),
    money: (cents) =>
      new Intl.NumberFormat(formatLocales[locale], { style: 'currency', currency: 'USD' }).format(
        cents / 100,
      ),
  };
}
