import type { LocalDate } from './days.ts';
import { msOfHours, type Extra, type Piece } from './hours.ts';
import { distinctSorted, groupBy, spell } from './line.ts';
import type { RateBookEdition } from './rateBook.ts';
import { spread, stepped } from './steps.ts';
import { merged } from './stretches.ts';

type Rate = RateBookEdition['machines'][number];

const sumMs = (items: readonly { readonly ms: number }[]): number =>
  items.reduce((total, { ms }) => total + ms, 0);

/** A piece with the unbroken run it is part of. */
interface OfRun extends Piece {
  readonly run: number;
  /** The day on which the run began. */
  readonly began: LocalDate;
}

function withRuns(pieces: readonly Piece[]): OfRun[] {
  const sorted = [...pieces].sort((a, b) => a.fromMs - b.fromMs);
  const runs = merged(sorted);
  const began = runs.map(({ fromMs }) => sorted.find((piece) => piece.fromMs === fromMs)?.date ?? '');
  let run = 0;
  return sorted.map((piece) => {
    while (run < runs.length - 1 && (runs[run]?.toMs ?? Infinity) <= piece.fromMs) run += 1;
    return { ...piece, run, began: began[run] ?? '' };
  });
}

/**
 * What a machine's rate adds to its time in use: steps of each unbroken run or each day, then the minimum of each day of
 * use. A run past midnight counts to the day on which it began, so that one job of a night has one minimum.
 */
export function machineExtras(pieces: readonly Piece[], { minimumHours, increment }: Rate): Extra[] {
  if (minimumHours === undefined && increment === undefined) return [];
  const used = withRuns(pieces);
  const extras: (Extra & { readonly began: LocalDate })[] = [];
  if (increment)
    for (const [, unit] of groupBy(used, ({ run, date }) => (increment.of === 'day' ? date : String(run)))) {
      const { ms, why } = stepped(sumMs(unit), increment);
      for (const { piece, ms: part } of spread(unit, ms))
        extras.push({
          date: piece.date,
          began: piece.began,
          submissionId: piece.submissionId,
          unitMs: unit[0].fromMs,
          ms: part,
          why,
        });
    }
  if (minimumHours !== undefined) {
    const minimumMs = msOfHours(minimumHours);
    for (const [began, day] of groupBy(used, (piece) => piece.began)) {
      const paidMs = sumMs(day) + sumMs(extras.filter((extra) => extra.began === began));
      if (paidMs >= minimumMs) continue;
      extras.push({
        date: began,
        began,
        submissionId: day[0].submissionId,
        unitMs: day.at(-1)?.fromMs ?? 0,
        ms: minimumMs - paidMs,
        why: `(${spell(paidMs)} < ${spell(minimumMs)})`,
      });
    }
  }
  return extras.map(({ began: _began, ...extra }) => extra);
}

/** Time standing by, parted into what is billed and what is not, and why not. */
export interface StandingBy {
  readonly billed: readonly Piece[];
  /** On days on which the machine was not in use for more than half of the working day (FEMA IS-1000). */
  readonly underHalf: readonly Piece[];
  /** On days that are billed whole. */
  readonly inDay: readonly Piece[];
}

export function standingBy(used: readonly Piece[], stood: readonly Piece[], rate: Rate): StandingBy {
  const usedMs = (date: LocalDate): number => sumMs(used.filter((piece) => piece.date === date));
  const inDay = (piece: Piece): boolean => rate.unit === 'day' && usedMs(piece.date) > 0;
  const ofHours = rate.standbyOnlyIfUsedOverHalfOfHours;
  const underHalf = (piece: Piece): boolean =>
    ofHours !== undefined && usedMs(piece.date) * 2 <= msOfHours(ofHours);
  const rest = stood.filter((piece) => !inDay(piece));
  return {
    inDay: stood.filter(inDay),
    underHalf: rest.filter(underHalf),
    billed: rest.filter((piece) => !underHalf(piece)),
  };
}

/** How long pieces lasted, on which days, and who says so, for a note. */
export const toldOf = (pieces: readonly Piece[]): { time: string; dates: string; path: string } => ({
  time: spell(sumMs(pieces)),
  dates: distinctSorted(pieces.map(({ date }) => date)).join(', '),
  path: distinctSorted(pieces.map(({ submissionId }) => submissionId)).join(' '),
});
