import { daysBetween } from '../time/daysBetween.ts';
import type { FigureRow } from './row.ts';

/** Days since the demand, both ends of a class within it; the usual classes of a receivables ledger. */
export const ageClasses = [
  { code: '0-30', from: 0, to: 30 },
  { code: '31-60', from: 31, to: 60 },
  { code: '61-90', from: 61, to: 90 },
  { code: 'over-90', from: 91, to: null },
] as const;
export type AgeClass = (typeof ageClasses)[number]['code'];

export interface Aged {
  readonly code: AgeClass;
  readonly claims: readonly {
    readonly claimId: string;
    readonly claimNumber: string;
    readonly days: number;
  }[];
  readonly balanceCents: number;
}

/**
 * Balances by the days since their first demand. A closed claim, one that nobody was asked for, and one with nothing
 * left are in no class; a demand dated after `today` counts as of today. Oldest first within a class.
 */
export function ageing(rows: readonly FigureRow[], today: string): readonly Aged[] {
  const open = rows
    .filter((row) => row.firstDemandOn !== null && row.balanceCents > 0 && !row.closed)
    .map((row) => ({ row, days: Math.max(0, daysBetween(row.firstDemandOn ?? today, today)) }))
    .sort((a, b) => b.days - a.days || (a.row.claimNumber < b.row.claimNumber ? -1 : 1));
  return ageClasses.map(({ code, from, to }) => {
    const inClass = open.filter(({ days }) => days >= from && (to === null || days <= to));
    return {
      code,
      claims: inClass.map(({ row: { claimId, claimNumber }, days }) => ({ claimId, claimNumber, days })),
      balanceCents: inClass.reduce((sum, { row }) => sum + row.balanceCents, 0),
    };
  });
}
