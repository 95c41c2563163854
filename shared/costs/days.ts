import { Temporal } from 'temporal-polyfill';

/** A calendar day in the utility's time zone, `YYYY-MM-DD`. */
export type LocalDate = string;

/** The day of an instant in a time zone. */
export function localDate(instant: string, timeZone: string): LocalDate {
  return dayAt(Date.parse(instant), timeZone).date;
}

/** No stretch of work is longer; one that is, is a slip of the pen and is not billed. */
export const LONGEST_STRETCH_MS = 31 * 24 * 3_600_000;

interface Day {
  readonly date: LocalDate;
  readonly fromMs: number;
  /** The first moment of the next day. */
  readonly toMs: number;
}

/** The last day looked up in each zone: work of one job falls on few days, and each look-up costs much. */
const lastDay = new Map<string, Day>();

function dayAt(ms: number, timeZone: string): Day {
  const known = lastDay.get(timeZone);
  if (known && ms >= known.fromMs && ms < known.toMs) return known;
  const plain = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone).toPlainDate();
  const day: Day = {
    date: plain.toString(),
    fromMs: plain.toZonedDateTime({ timeZone }).epochMilliseconds,
    toMs: plain.add({ days: 1 }).toZonedDateTime({ timeZone }).epochMilliseconds,
  };
  lastDay.set(timeZone, day);
  return day;
}

/**
 * An interval cut at each local midnight: how long it lasted on each day, by the clock that ran and not the one that
 * was changed. An hour worked twice in autumn counts twice; the hour that spring skips is not worked.
 *
 * @throws RangeError for an interval longer than `LONGEST_STRETCH_MS`, which the caller refuses first.
 */
export function splitByDay(
  fromMs: number,
  toMs: number,
  timeZone: string,
): { date: LocalDate; ms: number }[] {
  if (toMs - fromMs > LONGEST_STRETCH_MS) throw new RangeError('interval longer than a month');
  const days: { date: LocalDate; ms: number }[] = [];
  let at = fromMs;
  while (at < toMs) {
    const day = dayAt(at, timeZone);
    const until = Math.min(day.toMs, toMs);
    days.push({ date: day.date, ms: until - at });
    at = until;
  }
  return days;
}
