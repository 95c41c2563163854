import { holidayOn } from '../time/holidays.ts';
import type { PayRules } from './book/labor.ts';
import { clockAt, dayAt, weekStart, type Day, type LocalDate } from './days.ts';
import type { TimeClass } from './line.ts';

/** What a moment counts as, and what the hourly rate is multiplied by for it. */
export interface TimeAs {
  readonly as: TimeClass;
  readonly multiplier: string;
}

/** A part of a day in which every moment counts as the same. */
export interface Segment extends TimeAs {
  readonly fromMs: number;
  readonly toMs: number;
}

const MOST_KEPT = 2000;
const known = new WeakMap<PayRules, Map<string, readonly Segment[]>>();

/**
 * A local day by the pay rules, whole, in order. Working hours are from the first moment at which the clock shows their
 * edges. Multipliers never pile up: outside working hours on a holiday the higher of the two counts.
 */
export function segmentsOf(rules: PayRules, day: Day, timeZone: string): readonly Segment[] {
  let days = known.get(rules);
  if (!days || days.size > MOST_KEPT) known.set(rules, (days = new Map<string, readonly Segment[]>()));
  const key = `${timeZone}\u0000${day.date}`;
  const found = days.get(key);
  if (found) return found;
  const segments = makeSegments(rules, day, timeZone);
  days.set(key, segments);
  return segments;
}

function makeSegments(rules: PayRules, day: Day, timeZone: string): Segment[] {
  const holiday = rules.holiday !== null && holidayOn(day.date, rules.holidays) ? rules.holiday : null;
  const { otherHours } = rules;
  const outside: TimeAs =
    holiday && Number(holiday.multiplier) >= Number(otherHours.multiplier)
      ? { as: 'holiday', multiplier: holiday.multiplier }
      : { as: 'other-hours', multiplier: otherHours.multiplier };
  const inside: TimeAs = holiday
    ? { as: 'holiday', multiplier: holiday.multiplier }
    : { as: 'working-hours', multiplier: '1' };

  const working = rules.workingHours
    .filter(({ days }) => days.includes(day.weekday))
    .map(({ from, to }) => ({
      fromMs: clockAt(day, from, timeZone),
      toMs: clockAt(day, to, timeZone),
    }))
    .sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
  const segments: Segment[] = [];
  let at = day.fromMs;
  const add = (untilMs: number, time: TimeAs): void => {
    const toMs = Math.min(untilMs, day.toMs);
    if (toMs <= at) return;
    segments.push({ fromMs: at, toMs, ...time });
    at = toMs;
  };
  for (const { fromMs, toMs } of working) {
    add(fromMs, outside);
    add(toMs, inside);
  }
  add(day.toMs, outside);
  return segments;
}

/** What a single moment counts as. */
export function timeAt(rules: PayRules, ms: number, timeZone: string): TimeAs {
  const segments = segmentsOf(rules, dayAt(ms, timeZone), timeZone);
  const found = segments.find(({ fromMs, toMs }) => ms >= fromMs && ms < toMs);
  if (!found) throw new RangeError('a day has a moment that counts as nothing');
  return found;
}

/** The first day of the fixed week of a moment. */
export const weekOf = (ms: number, startsOn: number, timeZone: string): LocalDate =>
  weekStart(dayAt(ms, timeZone), startsOn);
