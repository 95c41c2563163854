import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { clockSettings, type ClockRule } from '../../shared/clocks/settings.ts';
import { lastDay, workCalendar } from '../../shared/clocks/count.ts';
import { localDate } from '../../shared/costs/days.ts';
import type { HolidayRule } from '../../shared/time/holidays.ts';

/** The federal holidays of 5 U.S.C. 6103(a), as rules. */
const date = (name: string, month: number, day: number): HolidayRule => ({
  by: 'date',
  name,
  month,
  day,
  observed: true,
});
const nth = (name: string, month: number, weekday: number, which: 1 | 2 | 3 | 4 | -1): HolidayRule => ({
  by: 'weekday',
  name,
  month,
  weekday,
  nth: which,
});
const federal: HolidayRule[] = [
  date('New Year', 1, 1),
  nth('King', 1, 1, 3),
  nth('Washington', 2, 1, 3),
  nth('Memorial', 5, 1, -1),
  date('Juneteenth', 6, 19),
  date('Independence', 7, 4),
  nth('Labor', 9, 1, 1),
  nth('Columbus', 10, 1, 2),
  date('Veterans', 11, 11),
  nth('Thanksgiving', 11, 4, 4),
  date('Christmas', 12, 25),
];
const calendar = workCalendar(clockSettings.parse({ rules: [], holidays: federal }));
const count = (from: string, n: number, unit: ClockRule['unit'], ifNotWorking: ClockRule['ifNotWorking']) =>
  lastDay(from, { count: n, unit, ifNotWorking }, calendar);
const rows = (file: string): string[][] =>
  readFileSync(join(import.meta.dirname, '../fixtures/clocks', file), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

describe('published examples', () => {
  // Fed. R. Civ. P. 6(a), Committee Notes on Rules – 2009 Amendment, subdivision (a)(5): a period that ends on Saturday,
  // 1 September 2007 runs to Tuesday, 4 September, because Monday the 3rd is Labor Day. (From memory; a reprint of the
  // same note under Fed. R. App. P. 26 was seen.) The thirtieth day before it is 2 August.
  it('the thirtieth day on the Saturday before Labor Day runs to the Tuesday', () => {
    expect(count('2007-08-02', 30, 'calendar-days', 'next-working-day')).toBe('2007-09-04');
  });
  // The same note, for a period counted backwards that reaches the same Saturday: Friday, 31 August.
  it('a last day that may not run on falls back to the Friday', () => {
    expect(count('2007-08-02', 30, 'calendar-days', 'day-before')).toBe('2007-08-31');
  });
  // The same notes, subdivision (a)(1), on the former rule that left weekends out of short periods (Miltimore Sales v.
  // Int'l Rectifier, 412 F.3d 685): ten working days and fourteen calendar days from one day usually end together.
  it('ten working days end with fourteen calendar days where no holiday lies between', () => {
    expect(count('2007-08-06', 10, 'working-days', 'stays')).toBe('2007-08-20');
    expect(count('2007-08-06', 14, 'calendar-days', 'next-working-day')).toBe('2007-08-20');
  });
  // A public lesson on Rule 6(a)(1) (seen): from Thursday, 18 June 2026, three days end on Sunday the 21st, and so on
  // Monday the 22nd; the holiday of the 19th between is counted.
  it('a holiday between is counted, a Sunday at the end is not', () => {
    expect(count('2026-06-18', 3, 'calendar-days', 'next-working-day')).toBe('2026-06-22');
  });
  // N.Y. Gen. Constr. Law § 30 (text seen): months end on the day of the same number, or with the month that has none.
  it('a month from the 31st of January ends with February', () => {
    expect(count('2027-01-31', 1, 'months', 'stays')).toBe('2027-02-28');
    expect(count('2028-01-31', 1, 'months', 'stays')).toBe('2028-02-29');
  });
});

describe('against datetime, dateutil and numpy (tests/fixtures/clocks/make_dates.py)', () => {
  it('4,000 periods end on the same day', () => {
    const all = rows('dates.csv');
    expect(all).toHaveLength(4000);
    const other = all.filter(
      ([from = '', n = '', unit = '', rule = '', expected]) =>
        count(from, Number(n), unit as ClockRule['unit'], rule as ClockRule['ifNotWorking']) !== expected,
    );
    expect(other).toEqual([]);
  });

  it('600 instants around clock changes, leap days and year ends are on the same day', () => {
    const all = rows('days.csv');
    expect(all).toHaveLength(600);
    expect(
      all.filter(([instant = '', zone = '', expected]) => localDate(instant, zone) !== expected),
    ).toEqual([]);
  });
});
