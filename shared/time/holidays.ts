import { Temporal } from 'temporal-polyfill';
import * as z from 'zod';

/** ISO 8601 day of the week: 1 is Monday, 7 is Sunday. */
export const weekday = z.int().min(1).max(7);
const month = z.int().min(1).max(12);
const name = z.string().trim().min(1).max(80);

/**
 * A holiday by rule, so that no list has to be typed each year: a day of a month, the nth weekday of a month (−1 is
 * the last), or one date that will not come again. `observed` moves a Saturday to the Friday before and a Sunday to the
 * Monday after, as 5 U.S.C. 6103(b) does for federal holidays; a utility's own agreement may not.
 */
export const holidayRule = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('date'), name, month, day: z.int().min(1).max(31), observed: z.boolean() }),
  z.strictObject({
    by: z.literal('weekday'),
    name,
    month,
    weekday,
    nth: z.union([z.int().min(1).max(5), z.literal(-1)]),
  }),
  z.strictObject({ by: z.literal('once'), name, on: z.iso.date() }),
]);
export type HolidayRule = z.infer<typeof holidayRule>;

const SATURDAY = 6;
const SUNDAY = 7;

/** The day a rule falls on in a year, with its observance; null when that year has no such day (a fifth Monday, 29 February). */
function dayIn(year: number, rule: HolidayRule): Temporal.PlainDate | null {
  if (rule.by === 'once') {
    const on = Temporal.PlainDate.from(rule.on);
    return on.year === year ? on : null;
  }
  const first = Temporal.PlainDate.from({ year, month: rule.month, day: 1 });
  if (rule.by === 'date') {
    if (rule.day > first.daysInMonth) return null;
    const on = first.with({ day: rule.day });
    if (!rule.observed) return on;
    if (on.dayOfWeek === SATURDAY) return on.subtract({ days: 1 });
    if (on.dayOfWeek === SUNDAY) return on.add({ days: 1 });
    return on;
  }
  if (rule.nth === -1) {
    const last = first.with({ day: first.daysInMonth });
    return last.subtract({ days: (last.dayOfWeek - rule.weekday + 7) % 7 });
  }
  const day = 1 + ((rule.weekday - first.dayOfWeek + 7) % 7) + (rule.nth - 1) * 7;
  return day > first.daysInMonth ? null : first.with({ day });
}

/**
 * The holiday a calendar day (`YYYY-MM-DD`) is, by the rules, or null. New Year's Day that falls on a Saturday is
 * observed on the last day of the year before.
 */
export function holidayOn(date: string, rules: readonly HolidayRule[]): HolidayRule | null {
  const day = Temporal.PlainDate.from(date);
  return (
    rules.find((rule) => [day.year, day.year + 1].some((year) => dayIn(year, rule)?.equals(day) ?? false)) ??
    null
  );
}

/** Every day of a year that is a holiday by the rules: for asking of many days what `holidayOn` says of one. */
export function holidaysIn(year: number, rules: readonly HolidayRule[]): ReadonlySet<string> {
  const days = [year, year + 1].flatMap((of) => rules.map((rule) => dayIn(of, rule)));
  return new Set(days.flatMap((day) => (day !== null && day.year === year ? [day.toString()] : [])));
}
