import type { FigureRow } from '../claimFigures/row.ts';
import type { PublicYear } from './schema.ts';

/**
 * A sum of fewer claims tells what somebody was billed, or paid. Five distinct units: what the Deutsche Bundesbank's
 * research data centre asks of any figure that leaves it (its package sdcLog, `sdc_descriptives`); the labour statistics
 * below are content with three.
 */
export const LEAST_CLAIMS = 5;
/**
 * So does a sum of which one claim is nearly all: the others, adding what they know, get close to it. The "80/3 rule" of
 * the Quarterly Census of Employment and Wages: withheld where one firm is 80 % of a cell (Indiana Business Research
 * Center, InContext, July-August 2008).
 */
export const MOST_OF_ONE = 0.8;
const ROUND_TO_CENTS = 100_000;

/**
 * What a year's claims were billed and brought in, or null where it must be kept (docs/decisions/0223). `over`: a year
 * that is not over has no sums, because each payment would be read off the next publication.
 */
export function sumsOf(rows: readonly FigureRow[], over: boolean): PublicYear['money'] {
  const billed = rows.filter(({ firstDemandOn }) => firstDemandOn !== null);
  return {
    billedDollars: over ? tellable(billed.map(({ askedCents }) => askedCents)) : null,
    recoveredDollars: over ? tellable(billed.map(({ recoveredCents }) => recoveredCents)) : null,
  };
}

function tellable(cents: readonly number[]): number | null {
  const parts = cents.filter((part) => part > 0);
  const total = parts.reduce((sum, part) => sum + part, 0);
  if (parts.length < LEAST_CLAIMS || Math.max(...parts) > total * MOST_OF_ONE) return null;
  return (Math.round(total / ROUND_TO_CENTS) * ROUND_TO_CENTS) / 100;
}
