import { Temporal } from 'temporal-polyfill';

/** A calendar day in the utility's time zone, `YYYY-MM-DD`. */
export type LocalDate = string;

/** The day of an instant in a time zone. */
export function localDate(instant: string, timeZone: string): LocalDate {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

/** No stretch of work is longer; one that is, is a slip of the pen and is not billed. */
export const LONGEST_STRETCH_MS = 31 * 24 * 3_600_000;

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
    const day = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(timeZone).toPlainDate();
    const nextMs = day.add({ days: 1 }).toZonedDateTime({ timeZone }).epochMilliseconds;
    const until = Math.min(nextMs, toMs);
    days.push({ date: day.toString(), ms: until - at });
    at = until;
  }
  return days;
}
