import { problem, type Problem } from '../problems/problem.ts';

export interface DemandQuestion {
  readonly statement: { readonly totalCents: number; readonly complete: boolean };
  /** What the other claims of the same strike demand by their latest frozen packet. */
  readonly others: readonly { readonly claimNumber: string; readonly demandCents: number }[];
  /** What this claim is to demand; left out or null: all that is left. */
  readonly askedCents?: number | null | undefined;
}

export type Demand =
  | { readonly ok: true; readonly demandCents: number }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * What a claim may demand. A strike may have several claims, one for each liable party; together they never demand
 * more than its statement, and an incomplete statement is not demanded at all.
 */
export function demandFor({ statement, others, askedCents }: DemandQuestion): Demand {
  const refused = (found: Problem): Demand => ({ ok: false, problems: [found] });
  if (!statement.complete) return refused(problem('statement-incomplete'));
  const demandedCents = others.reduce((sum, { demandCents }) => sum + demandCents, 0);
  const leftCents = statement.totalCents - demandedCents;
  const demanding = others.filter(({ demandCents }) => demandCents > 0).map(({ claimNumber }) => claimNumber);
  const claims = [...demanding].sort().join(', ');
  if (leftCents <= 0)
    return refused(
      demanding.length > 0 ? problem('nothing-left-to-demand', '', { claims }) : problem('nothing-to-demand'),
    );
  const demandCents = askedCents ?? leftCents;
  if (demandCents > leftCents)
    return refused(
      problem('demand-above-statement', 'demandCents', { leftCents, claims, others: demanding.length }),
    );
  return { ok: true, demandCents };
}
