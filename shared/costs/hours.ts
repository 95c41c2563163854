import { problem, type Problem } from '../problems/problem.ts';
import { LONGEST_STRETCH_MS, splitByDay } from './days.ts';
import { distinctSorted, groupBy, spell } from './line.ts';
import { decimal, shownDecimal } from './money.ts';
import type { Stretch } from './stretches.ts';

export const HOUR_MS = 3_600_000;

/** Stretches short enough to be billed; the others are problems. */
export function billable(stretches: readonly Stretch[], item: string, problems: Problem[]): Stretch[] {
  return stretches.filter(({ fromMs, toMs, submissionId }) => {
    if (toMs - fromMs <= LONGEST_STRETCH_MS) return true;
    problems.push(problem('stretch-too-long', submissionId, { item }));
    return false;
  });
}

/** What a stretch lasted on one day of the utility's calendar. */
export interface Piece {
  readonly date: string;
  readonly ms: number;
  readonly submissionId: string;
}

const byDate = (pieces: readonly Piece[]): { date: string; ms: number }[] =>
  groupBy(pieces, ({ date }) => date).map(([date, of]) => ({
    date,
    ms: of.reduce((sum, { ms }) => sum + ms, 0),
  }));

/** What a line of hours says of its time, whoever or whatever worked. */
export function timeOf(pieces: readonly Piece[]): {
  readonly ms: number;
  readonly quantity: string;
  readonly days: { date: string; seconds: number }[];
  readonly submissionIds: string[];
  readonly spelled: string;
} {
  const days = byDate(pieces);
  const ms = days.reduce((sum, day) => sum + day.ms, 0);
  const total = spell(ms);
  return {
    ms,
    quantity: shownDecimal(decimal(ms), HOUR_MS, 4),
    days: days.map((day) => ({ date: day.date, seconds: day.ms / 1000 })),
    submissionIds: distinctSorted(pieces.map(({ submissionId }) => submissionId)),
    spelled: days.length > 1 ? `${days.map((day) => spell(day.ms)).join(' + ')} = ${total}` : total,
  };
}

export const piecesOf = (stretches: readonly Stretch[], timeZone: string): Piece[] =>
  stretches.flatMap(({ fromMs, toMs, submissionId }) =>
    splitByDay(fromMs, toMs, timeZone).map((day) => ({ ...day, submissionId })),
  );
