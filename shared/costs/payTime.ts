import type { PayRules } from './book/labor.ts';
import { splitByDay, type LocalDate } from './days.ts';
import { editionOn, type EditionFound } from './editions.ts';
import type { Piece } from './hours.ts';
import type { RateBookEdition } from './rateBook.ts';
import { less, type Span, type Stretch } from './stretches.ts';
import { segmentsOf, type TimeAs } from './timeClasses.ts';

/** Time of one worker in which everything is the same: the day, the rates, the pay rules, what it counts as. */
export interface LaborPiece extends Piece {
  readonly laborClass: string;
  readonly found: EditionFound;
  /** Null for a class without pay rules: every hour at the hourly rate. */
  readonly rules: PayRules | null;
  /** What it counts as by the day alone; null without pay rules. */
  readonly own: TimeAs | null;
  /** What it is paid as, once the hours of the week are counted. */
  readonly time: TimeAs | null;
  /** In the rate of a machine that the worker operated: counted as worked, and not billed as labour. */
  readonly held: boolean;
}

/** Editions looked up once for each day. */
export function editionFinder(editions: readonly RateBookEdition[]): (date: LocalDate) => EditionFound {
  const found = new Map<LocalDate, EditionFound>();
  return (date) => {
    let edition = found.get(date);
    if (!edition) found.set(date, (edition = editionOn(date, editions)));
    return edition;
  };
}

function rulesFor(edition: RateBookEdition | null, laborClass: string): PayRules | null {
  const id = edition?.labor.find((item) => item.laborClass === laborClass)?.payRulesId;
  if (id === undefined) return null;
  const rules = edition?.payRules?.find(({ payRulesId }) => payRulesId === id);
  // The schema of an edition holds that it is there.
  if (!rules) throw new Error(`pay rules ${id} are not in the edition`);
  return rules;
}

/**
 * One worker's stretches (each moment once, breaks taken out) as pieces in the order of time: cut at midnight, at each
 * edge of working hours, and where a machine's rate holds the operator. Clock time that ran, not dial time, so that a
 * night of a clock change has the hours it had.
 */
export function laborPieces(
  stretches: readonly Stretch[],
  held: readonly Span[],
  editionFor: (date: LocalDate) => EditionFound,
  timeZone: string,
): LaborPiece[] {
  const free = held.length === 0 ? stretches : less(stretches, held);
  const inRate = held.length === 0 ? [] : less(stretches, free);
  return [
    ...free.flatMap((stretch) => piecesOfStretch(stretch, false, editionFor, timeZone)),
    ...inRate.flatMap((stretch) => piecesOfStretch(stretch, true, editionFor, timeZone)),
  ].sort((a, b) => a.fromMs - b.fromMs);
}

function piecesOfStretch(
  { fromMs, toMs, as: laborClass, submissionId }: Stretch,
  held: boolean,
  editionFor: (date: LocalDate) => EditionFound,
  timeZone: string,
): LaborPiece[] {
  return splitByDay(fromMs, toMs, timeZone).flatMap((slice): LaborPiece[] => {
    const found = editionFor(slice.date);
    const rules = rulesFor(found.edition, laborClass);
    const piece = (from: number, to: number, own: TimeAs | null): LaborPiece => ({
      date: slice.date,
      fromMs: from,
      toMs: to,
      ms: to - from,
      submissionId,
      laborClass,
      found,
      rules,
      own,
      time: own,
      held,
    });
    if (!rules) return [piece(slice.fromMs, slice.toMs, null)];
    return segmentsOf(rules, slice.day, timeZone).flatMap((segment) => {
      const from = Math.max(segment.fromMs, slice.fromMs);
      const to = Math.min(segment.toMs, slice.toMs);
      return from < to ? [piece(from, to, { as: segment.as, multiplier: segment.multiplier })] : [];
    });
  });
}
