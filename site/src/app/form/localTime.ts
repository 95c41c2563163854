import { Temporal } from 'temporal-polyfill';

/**
 * Times are typed in the utility's zone and stored as UTC instants. A typed time is `2026-03-04T02:10`, with seconds
 * where it has them; in the hour that a clock change repeats, the offset that was meant follows it (`@-05:00`).
 */
export type LocalTime =
  | { readonly ok: true; readonly instant: string }
  | {
      readonly ok: false;
      readonly code: 'time-incomplete' | 'time-skipped' | 'time-twice';
      /** For `time-twice`: the offsets to choose from, earlier instant first. */
      readonly offsets?: readonly string[];
    };

/** What the browser's control leaves when only a part of date and time was given. */
export const incompleteTime = '?';

function readPlain(text: string): Temporal.PlainDateTime | null {
  try {
    return Temporal.PlainDateTime.from(text);
  } catch {
    return null;
  }
}

/** The two instants of a local time; the same one twice where the clock shows it once. */
function bothInstants(
  plain: Temporal.PlainDateTime,
  zone: string,
): [Temporal.ZonedDateTime, Temporal.ZonedDateTime] {
  return [
    plain.toZonedDateTime(zone, { disambiguation: 'earlier' }),
    plain.toZonedDateTime(zone, { disambiguation: 'later' }),
  ];
}

const utc = (zoned: Temporal.ZonedDateTime): string => new Date(zoned.epochMilliseconds).toISOString();

/** Reads a typed time. A time that the clock skipped or showed twice is not guessed. */
export function readLocalTime(typed: string, zone: string): LocalTime {
  const [text = '', offset] = typed.split('@');
  const plain = text.includes('T') ? readPlain(text) : null;
  if (!plain) return { ok: false, code: 'time-incomplete' };
  const [earlier, later] = bothInstants(plain, zone);
  if (!earlier.toPlainDateTime().equals(plain)) return { ok: false, code: 'time-skipped' };
  if (earlier.equals(later)) return { ok: true, instant: utc(earlier) };
  const chosen = [earlier, later].find((zoned) => zoned.offset === offset);
  return chosen
    ? { ok: true, instant: utc(chosen) }
    : { ok: false, code: 'time-twice', offsets: [earlier.offset, later.offset] };
}

/** The typed form of an instant: to the minute, or finer where the instant is finer. Reading it back is exact. */
export function writeLocalTime(instant: string, zone: string): string {
  const zoned = Temporal.Instant.from(instant).toZonedDateTimeISO(zone);
  const plain = zoned.toPlainDateTime();
  const fine = zoned.millisecond > 0 ? 'millisecond' : zoned.second > 0 ? 'second' : 'minute';
  const text = plain.toString({ smallestUnit: fine });
  const [earlier, later] = bothInstants(plain, zone);
  return earlier.equals(later) ? text : `${text}@${zoned.offset}`;
}

/** Now, to the minute, as it would be typed. */
export function localMinute(now: Date, zone: string): string {
  return writeLocalTime(new Date(Math.floor(now.getTime() / 60_000) * 60_000).toISOString(), zone);
}

/** Today's date in the zone, `2026-03-04`. */
export function localDay(now: Date, zone: string): string {
  return Temporal.Instant.from(now.toISOString()).toZonedDateTimeISO(zone).toPlainDate().toString();
}
