import { Temporal } from 'temporal-polyfill';

/** A calendar day in the utility's time zone, `YYYY-MM-DD`. */
export type LocalDate = string;

/** The day of an instant in a time zone. */
export function localDate(instant: string, timeZone: string): LocalDate {
  return dayAt(Date.parse(instant), timeZone).date;
}

/** No stretch of work is longer; one that is, is a slip of the pen and is not billed. */
export const LONGEST_STRETCH_MS = 31 * 24 * 3_600_000;

export interface Day {
  readonly date: LocalDate;
  readonly fromMs: number;
  /** The first moment of the next day. */
  readonly toMs: number;
  /** ISO 8601: 1 is Monday, 7 is Sunday. */
  readonly weekday: number;
}

const UTC_DAY_MS = 24 * 3_600_000;
/** Days kept at once; past that all are dropped, so that a server that runs for years holds no more. */
const MOST_KEPT = 5000;

/** Local days by zone and UTC day, because each look-up in the calendar costs much. */
const known = new Map<string, Map<number, Day[]>>();
let kept = 0;

/** The local day of a moment. */
export function dayAt(ms: number, timeZone: string): Day {
  let ofZone = known.get(timeZone);
  if (!ofZone || kept > MOST_KEPT) {
    if (kept > MOST_KEPT) known.clear();
    kept = kept > MOST_KEPT ? 0 : kept;
    ofZone = new Map();
    known.set(timeZone, ofZone);
  }
  const utcDay = Math.floor(ms / UTC_DAY_MS);
  let days = ofZone.get(utcDay);
  if (!days) ofZone.set(utcDay, (days = []));
  const found = days.find(({ fromMs, toMs }) => ms >= fromMs && ms < toMs);
  if (found) return found;
  const plain = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone).toPlainDate();
  const day: Day = {
    date: plain.toString(),
    fromMs: plain.toZonedDateTime({ timeZone }).epochMilliseconds,
    toMs: plain.add({ days: 1 }).toZonedDateTime({ timeZone }).epochMilliseconds,
    weekday: plain.dayOfWeek,
  };
  days.push(day);
  kept += 1;
  return day;
}

/**
 * The moment at which the clock first shows `HH:MM` on a day; `24:00` is the day's end. A time that the clock skips in
 * spring is taken as long after the change as it stands after it on the dial (2:30 becomes 3:30).
 */
export function clockAt({ date, toMs }: Day, clock: string, timeZone: string): number {
  if (clock === '24:00') return toMs;
  return Temporal.PlainDateTime.from(`${date}T${clock}`).toZonedDateTime(timeZone).epochMilliseconds;
}

/** The first day of the fixed week that a day lies in, for weeks that start on `startsOn` (1 is Monday). */
export function weekStart({ date, weekday }: Day, startsOn: number): LocalDate {
  const back = (weekday - startsOn + 7) % 7;
  return new Date(Date.parse(`${date}T00:00:00Z`) - back * UTC_DAY_MS).toISOString().slice(0, 10);
}

/** The day of the week of a calendar day, 1 is Monday. */
export const weekdayOf = (date: LocalDate): number => new Date(`${date}T00:00:00Z`).getUTCDay() || 7;

/** What of an interval lay on one local day. */
export interface DaySlice {
  readonly day: Day;
  readonly date: LocalDate;
  readonly fromMs: number;
  readonly toMs: number;
  readonly ms: number;
}

/**
 * An interval cut at each local midnight: how long it lasted on each day, by the clock that ran and not the one that
 * was changed. An hour worked twice in autumn counts twice; the hour that spring skips is not worked.
 *
 * @throws RangeError for an interval longer than `LONGEST_STRETCH_MS`, which the caller refuses first.
 */
export function splitByDay(fromMs: number, toMs: number, timeZone: string): DaySlice[] {
  if (toMs - fromMs > LONGEST_STRETCH_MS) throw new RangeError('interval longer than a month');
  const days: DaySlice[] = [];
  let at = fromMs;
  while (at < toMs) {
    const day = dayAt(at, timeZone);
    const until = Math.min(day.toMs, toMs);
    days.push({ day, date: day.date, fromMs: at, toMs: until, ms: until - at });
    at = until;
  }
  return days;
}
