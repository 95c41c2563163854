import { describe, expect, it } from 'vitest';
import { holidayOn, type HolidayRule } from '../../../shared/time/holidays.ts';

/** The eleven legal public holidays of 5 U.S.C. 6103(a), with the observance of 6103(b) and E.O. 11582. */
const federal: readonly HolidayRule[] = [
  { by: 'date', name: "New Year's Day", month: 1, day: 1, observed: true },
  { by: 'weekday', name: 'Birthday of Martin Luther King, Jr.', month: 1, weekday: 1, nth: 3 },
  { by: 'weekday', name: "Washington's Birthday", month: 2, weekday: 1, nth: 3 },
  { by: 'weekday', name: 'Memorial Day', month: 5, weekday: 1, nth: -1 },
  { by: 'date', name: 'Juneteenth', month: 6, day: 19, observed: true },
  { by: 'date', name: 'Independence Day', month: 7, day: 4, observed: true },
  { by: 'weekday', name: 'Labor Day', month: 9, weekday: 1, nth: 1 },
  { by: 'weekday', name: 'Columbus Day', month: 10, weekday: 1, nth: 2 },
  { by: 'date', name: 'Veterans Day', month: 11, day: 11, observed: true },
  { by: 'weekday', name: 'Thanksgiving Day', month: 11, weekday: 4, nth: 4 },
  { by: 'date', name: 'Christmas Day', month: 12, day: 25, observed: true },
];

const holidaysOf = (year: number): string[] => {
  const dates: string[] = [];
  for (let at = Date.UTC(year, 0, 1); at < Date.UTC(year + 1, 0, 1); at += 86_400_000) {
    const date = new Date(at).toISOString().slice(0, 10);
    if (holidayOn(date, federal)) dates.push(date.slice(5));
  }
  return dates;
};

describe('federal holidays fall where OPM says they are observed (dates from memory)', () => {
  it.each([
    // New Year's Day of 2022, a Saturday, was observed on Friday, 31 December 2021.
    [2021, '01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31'],
    [2022, '01-17 02-21 05-30 06-20 07-04 09-05 10-10 11-11 11-24 12-26'],
    [2023, '01-02 01-16 02-20 05-29 06-19 07-04 09-04 10-09 11-10 11-23 12-25'],
    [2024, '01-01 01-15 02-19 05-27 06-19 07-04 09-02 10-14 11-11 11-28 12-25'],
    [2025, '01-01 01-20 02-17 05-26 06-19 07-04 09-01 10-13 11-11 11-27 12-25'],
    [2026, '01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25'],
    [2027, '01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31'],
  ])('%i', (year, dates) => {
    expect(holidaysOf(year).join(' ')).toBe(dates);
  });
});

describe('rules of a utility’s own', () => {
  it('a date that is not moved stays on its day (common practice, no source)', () => {
    const rules: HolidayRule[] = [
      { by: 'date', name: 'Independence Day', month: 7, day: 4, observed: false },
    ];
    expect(holidayOn('2026-07-04', rules)?.name).toBe('Independence Day');
    expect(holidayOn('2026-07-03', rules)).toBeNull();
  });

  it('a day that comes once', () => {
    const rules: HolidayRule[] = [{ by: 'once', name: 'Day of mourning', on: '2025-01-09' }];
    expect(holidayOn('2025-01-09', rules)?.name).toBe('Day of mourning');
    expect(holidayOn('2026-01-09', rules)).toBeNull();
  });

  it('a fifth Monday or a 29 February only where the year has one', () => {
    const rules: HolidayRule[] = [
      { by: 'weekday', name: 'Fifth Monday', month: 3, weekday: 1, nth: 5 },
      { by: 'date', name: 'Leap day', month: 2, day: 29, observed: false },
    ];
    // March 2026 has Mondays on 2, 9, 16, 23 and 30; March 2027 on 1, 8, 15, 22 and 29; March 2025 none past the 31st.
    expect(holidayOn('2026-03-30', rules)?.name).toBe('Fifth Monday');
    expect(holidayOn('2028-03-27', rules)).toBeNull();
    expect(holidayOn('2028-02-29', rules)?.name).toBe('Leap day');
    expect(holidayOn('2026-03-01', rules)).toBeNull();
  });
});
