import { valveClosed, type HydrantStatus } from '../outages/hydrantStatus.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { PublicSnapshot } from './snapshot.ts';

/** An outage that was published as open and of which the state now read says nothing, neither open nor ended. */
export interface Vanished {
  readonly outageId: string;
  readonly hydrantId: string | null;
  readonly cause: string;
}

/**
 * Reasons not to replace the page that stands (design decision 13): a fault in what was read must not look like good
 * news. An inventory that is gone or empty is such a fault; a deployment that never had one is not.
 */
export function inventoryProblems(
  previous: PublicSnapshot | null,
  inventory: { readonly serving: number } | null,
): readonly Problem[] {
  if (inventory === null)
    return previous === null || previous.inventory === null
      ? []
      : [problem('inventory-vanished', 'inventory')];
  return inventory.serving === 0 ? [problem('inventory-empty', 'inventory.hydrants')] : [];
}

/**
 * Outages of the standing page that the state no longer knows. A strike joined into another counts as known. What is
 * left was either withdrawn by a correction, which the ledger can tell, or lost, which must stop the publication.
 */
export function vanishedOutages(
  previous: PublicSnapshot | null,
  statuses: readonly HydrantStatus[],
  strikes: readonly StrikeState[],
): readonly Vanished[] {
  if (!previous) return [];
  const known = new Set([
    ...statuses.flatMap(({ open, past }) => [...open, ...past].map(({ outageId }) => outageId)),
    ...strikes.flatMap(({ strikeId, memberIds }) => [strikeId, ...memberIds]),
  ]);
  return previous.outOfService.flatMap(({ hydrantId, outages }) =>
    outages
      // A closed valve is no record of an outage: it ends, without a trace, when the valve is recorded open.
      .filter(({ outageId, cause }) => !known.has(outageId) && cause !== valveClosed)
      .map(({ outageId, cause }) => ({ outageId, hydrantId, cause })),
  );
}

/** Hydrants at whose address a page may stand although nothing is recorded of them any more. */
export function withdrawnPages(
  standing: { readonly hydrants: readonly string[]; readonly others: readonly string[] },
  hydrants: readonly string[],
): readonly string[] {
  const now = new Set(hydrants);
  return [...new Set([...standing.hydrants, ...standing.others])]
    .filter((hydrantId) => !now.has(hydrantId))
    .toSorted();
}
