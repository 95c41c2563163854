import { Temporal } from 'temporal-polyfill';
import type { LocalDate } from '../costs/days.ts';
import { holidaysIn } from '../time/holidays.ts';
import type { ClockRule, ClockSettings } from './settings.ts';

/** Which days are worked. The holidays of a year are found once, because rules cost much to ask day by day. */
export interface WorkCalendar {
  readonly isWorking: (date: LocalDate) => boolean;
}

const calendars = new WeakMap<object, WorkCalendar>();

export function workCalendar(settings: Pick<ClockSettings, 'holidays' | 'workWeek'>): WorkCalendar {
  const known = calendars.get(settings);
  if (known) return known;
  const years = new Map<number, ReadonlySet<LocalDate>>();
  const calendar: WorkCalendar = {
    isWorking(date) {
      const { year, dayOfWeek } = Temporal.PlainDate.from(date);
      if (!settings.workWeek.includes(dayOfWeek)) return false;
      let holidays = years.get(year);
      if (!holidays) years.set(year, (holidays = holidaysIn(year, settings.holidays)));
      return !holidays.has(date);
    },
  };
  calendars.set(settings, calendar);
  return calendar;
}

/** A day later or, with a negative number, earlier. */
export const addDays = (date: LocalDate, days: number): LocalDate =>
  Temporal.PlainDate.from(date).add({ days }).toString();

/** The first working day on or after (`step` 1) or on or before (`step` −1) a day. */
function workingDay(date: LocalDate, step: 1 | -1, { isWorking }: WorkCalendar): LocalDate {
  let day = date;
  // The settings leave a working day in every year, so this ends.
  while (!isWorking(day)) day = addDays(day, step);
  return day;
}

/**
 * The last day of a period that an event starts: its own day is not counted, the last one is, as Fed. R. Civ. P.
 * 6(a)(1) has it. Calendar days count every day between; working days only those; months and years end on the day of the
 * same number, or on the month's last day when it has none (N.Y. Gen. Constr. Law § 30). When the last day is not worked
 * it stays, moves to the next working day (Rule 6(a)(1)(C)), or to the one before.
 *
 * @param from the day of the event, in the utility's time zone
 */
export function lastDay(
  from: LocalDate,
  { count, unit, ifNotWorking }: Pick<ClockRule, 'count' | 'unit' | 'ifNotWorking'>,
  calendar: WorkCalendar,
): LocalDate {
  const end = counted(from, count, unit, calendar);
  if (ifNotWorking === 'stays') return end;
  return workingDay(end, ifNotWorking === 'next-working-day' ? 1 : -1, calendar);
}

function counted(from: LocalDate, count: number, unit: ClockRule['unit'], calendar: WorkCalendar): LocalDate {
  const start = Temporal.PlainDate.from(from);
  switch (unit) {
    case 'calendar-days':
      return start.add({ days: count }).toString();
    case 'months':
      return start.add({ months: count }).toString();
    case 'years':
      return start.add({ years: count }).toString();
    case 'working-days': {
      let day = from;
      for (let left = count; left > 0; left -= 1) day = workingDay(addDays(day, 1), 1, calendar);
      return day;
    }
  }
}
