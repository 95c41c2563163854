import { problem, type Problem } from '../problems/problem.ts';
import type { PayRules } from './book/labor.ts';
import { weekdayOf, type LocalDate } from './days.ts';
import { msOfHours } from './hours.ts';
import type { LaborPiece } from './payTime.ts';
import { weekOf } from './timeClasses.ts';
import type { Work } from './work.ts';

type Week = NonNullable<PayRules['week']>;

const keyOf = ({ startsOn, overHours, multiplier }: Week): string =>
  [startsOn, overHours, multiplier].join('\u0000');

/** What an hour is paid at before the week is looked at. */
const ownMultiplier = ({ own }: LaborPiece): number => Number(own?.multiplier ?? '1');

/** Hours from the payroll of one worker, by the first day of the week. Of two that differ the fewer count. */
function hoursBefore(
  workerId: string,
  weeks: readonly Week[],
  { weekHours }: Work,
  problems: Problem[],
): Map<LocalDate, number> {
  const before = new Map<LocalDate, number>();
  const mine = weekHours.filter((entry) => entry.workerId === workerId);
  for (const { weekStartsOn, hours } of mine) {
    if (!weeks.some(({ startsOn }) => weekdayOf(weekStartsOn) === startsOn)) {
      problems.push(problem('week-hours-other-week', '', { workerId, weekStartsOn }));
      continue;
    }
    const ms = msOfHours(hours);
    const known = before.get(weekStartsOn);
    before.set(weekStartsOn, known === undefined ? ms : Math.min(known, ms));
  }
  for (const [weekStartsOn, ms] of before) {
    const said = mine.filter((entry) => entry.weekStartsOn === weekStartsOn);
    const fewest = said.find(({ hours }) => msOfHours(hours) === ms);
    if (said.some(({ hours }) => msOfHours(hours) !== ms))
      problems.push(problem('week-hours-twice', '', { workerId, weekStartsOn, hours: fewest?.hours ?? '' }));
  }
  return before;
}

/**
 * One worker's pieces, in the order of time, with what lies past the hours of the fixed week paid at the week's
 * multiplier. All hours worked count towards the week (29 CFR 778.221(b) counts 43, not the 44 paid); an hour that is
 * paid at the week's multiplier or more because of when it was worked is credited hour for hour (29 CFR 778.201 to
 * .203), so it neither is raised again nor pushes another past the limit. Multipliers are never multiplied together.
 */
export function withWeekOvertime(
  workerId: string,
  pieces: readonly LaborPiece[],
  work: Work,
  problems: Problem[],
): LaborPiece[] {
  const weeks = new Map<string, Week>();
  for (const { rules } of pieces) if (rules?.week) weeks.set(keyOf(rules.week), rules.week);
  if (weeks.size === 0) return [...pieces];

  const before = hoursBefore(workerId, [...weeks.values()], work, problems);
  const counted = new Map<string, number>();
  const place = (key: string, week: Week, { fromMs }: LaborPiece): { at: string; ms: number } => {
    const start = weekOf(fromMs, week.startsOn, work.timeZone);
    const at = `${key}\u0000${start}`;
    return { at, ms: counted.get(at) ?? before.get(start) ?? 0 };
  };
  return pieces.flatMap((piece): LaborPiece[] => {
    const own = ownMultiplier(piece);
    const week = piece.rules?.week ?? null;
    let leftMs = piece.ms;
    if (week && own < Number(week.multiplier))
      leftMs = Math.max(0, msOfHours(week.overHours) - place(keyOf(week), week, piece).ms);
    for (const [key, other] of weeks) {
      if (own >= Number(other.multiplier)) continue;
      const { at, ms } = place(key, other, piece);
      counted.set(at, ms + piece.ms);
    }
    if (!week || leftMs >= piece.ms) return [piece];
    const edge = piece.fromMs + leftMs;
    const past: LaborPiece = {
      ...piece,
      fromMs: edge,
      ms: piece.toMs - edge,
      time: { as: 'week-overtime', multiplier: week.multiplier },
    };
    return leftMs === 0 ? [past] : [{ ...piece, toMs: edge, ms: leftMs }, past];
  });
}
