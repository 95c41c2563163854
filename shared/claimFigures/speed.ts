import { daysBetween } from '../time/daysBetween.ts';
import type { FigureRow } from './row.ts';

/** Days between two events over several claims: how many, the quartiles, the longest. */
export interface Span {
  readonly claims: number;
  readonly lowerQuartileDays: number | null;
  readonly medianDays: number | null;
  readonly upperQuartileDays: number | null;
  readonly longestDays: number | null;
}

/**
 * Quantile by linear interpolation between order statistics, (n − 1)p + 1 (Hyndman and Fan 1996, definition 7, the
 * default of R and NumPy). `sorted` ascending and not empty.
 */
function quantile(sorted: readonly number[], p: number): number {
  const at = (sorted.length - 1) * p;
  const low = sorted[Math.floor(at)] ?? 0;
  const high = sorted[Math.ceil(at)] ?? low;
  return low + (high - low) * (at - Math.floor(at));
}

function span(days: readonly number[]): Span {
  const sorted = [...days].sort((a, b) => a - b);
  if (sorted.length === 0)
    return {
      claims: 0,
      lowerQuartileDays: null,
      medianDays: null,
      upperQuartileDays: null,
      longestDays: null,
    };
  return {
    claims: sorted.length,
    lowerQuartileDays: quantile(sorted, 0.25),
    medianDays: quantile(sorted, 0.5),
    upperQuartileDays: quantile(sorted, 0.75),
    longestDays: sorted.at(-1) ?? null,
  };
}

/** How long it took from the strike to the first demand, from there to the money, and in all. Claims still open are not in it. */
export function speed(rows: readonly FigureRow[]): {
  readonly strikeToDemand: Span;
  readonly demandToPaid: Span;
  readonly strikeToPaid: Span;
} {
  const days = (from: (row: FigureRow) => string | null, to: (row: FigureRow) => string | null): number[] =>
    rows.flatMap((row) => {
      const [a, b] = [from(row), to(row)];
      return a === null || b === null ? [] : [daysBetween(a, b)];
    });
  return {
    strikeToDemand: span(
      days(
        ({ struckOn }) => struckOn,
        ({ firstDemandOn }) => firstDemandOn,
      ),
    ),
    demandToPaid: span(
      days(
        ({ firstDemandOn }) => firstDemandOn,
        ({ paidOn }) => paidOn,
      ),
    ),
    strikeToPaid: span(
      days(
        ({ struckOn }) => struckOn,
        ({ paidOn }) => paidOn,
      ),
    ),
  };
}
