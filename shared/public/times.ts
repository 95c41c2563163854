import { localeTags, type Locale } from '../words/locales.ts';

/** How instants are written for the public: in the utility's time zone, by a 24-hour clock as dispatch writes them. */
export interface TimeReader {
  readonly timeZone: string;
  readonly locale: Locale;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function write(
  instant: string,
  { timeZone, locale }: TimeReader,
  options: Intl.DateTimeFormatOptions,
): string {
  const key = JSON.stringify([timeZone, locale, options]);
  let format = formats.get(key);
  if (!format) {
    format = new Intl.DateTimeFormat(localeTags[locale], { timeZone, ...options });
    formats.set(key, format);
  }
  return format.format(new Date(instant));
}

const clock = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;

/** `14:05` */
export const timeOfDay = (instant: string, reader: TimeReader): string => write(instant, reader, clock);

/** `Wed, Mar 4` or `mié, 4 mar`; with the year when it is not the year of `asOf`. */
export function dayOf(instant: string, reader: TimeReader, asOf: string): string {
  const year = (at: string): string => write(at, reader, { year: 'numeric' });
  const short = { weekday: 'short', month: 'short', day: 'numeric' } as const;
  return write(instant, reader, year(instant) === year(asOf) ? short : { ...short, year: 'numeric' });
}

/** `Mar 4, 2026`, for a date that stands in a list of years. */
export const dateOf = (instant: string, reader: TimeReader): string =>
  write(instant, reader, { month: 'short', day: 'numeric', year: 'numeric' });

/** A calendar date, which has no zone, written the same way. */
export const dateWords = (date: string, locale: Locale): string =>
  dateOf(`${date}T12:00:00Z`, { timeZone: 'UTC', locale });

/** The zone's short name at that instant: `CST` in winter, `CDT` in summer. */
export function zoneName(instant: string, reader: TimeReader): string {
  const key = JSON.stringify([reader.timeZone, 'zone']);
  let format = formats.get(key);
  if (!format) {
    // English in both languages: the Spanish data spell some zones as offsets, and signs on the street say CST.
    format = new Intl.DateTimeFormat('en-US', { timeZone: reader.timeZone, timeZoneName: 'short' });
    formats.set(key, format);
  }
  return format.formatToParts(new Date(instant)).find(({ type }) => type === 'timeZoneName')?.value ?? '';
}

/** What an instant is said with (`public.instant` in the catalogue), as a reader sees it on the day `asOf`. */
export const instantParts = (
  instant: string,
  reader: TimeReader,
  asOf: string,
): { readonly day: string; readonly time: string; readonly zone: string } => ({
  day: dayOf(instant, reader, asOf),
  time: timeOfDay(instant, reader),
  zone: zoneName(instant, reader),
});

/** Calendar date of an instant in a time zone, `2026-03-04`. */
export function localDate(instant: string, timeZone: string): string {
  const key = JSON.stringify([timeZone, 'date']);
  let format = formats.get(key);
  if (!format) {
    // Canada's English writes ISO 8601 dates.
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    });
    formats.set(key, format);
  }
  return format.format(new Date(instant));
}
