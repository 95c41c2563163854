import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { Unprojected } from '../stores/unprojected/unprojected.ts';

/** A projection that was written or removed, by its key. */
export interface KeptItem {
  readonly partition: string;
  readonly key: string;
}

/** What the projector stands on. */
export interface ProjectorDeps {
  readonly ledger: Ledger;
  readonly projections: ProjectionStore;
  readonly unprojected: Unprojected;
  /** The inventory's type of a hydrant; `unknown` for one it has not. A fault throws, and nothing is written. */
  readonly hydrantType: (hydrantId: string) => Promise<Hydrant['type']>;
  /**
   * Told what was just written. Never given on AWS, where the table's stream tells; the local runner wakes with it what
   * that stream would wake.
   */
  readonly kept?: (items: readonly KeptItem[]) => void;
  /** Waits before another try; an argument so that tests hold the time. */
  readonly pause?: (milliseconds: number) => Promise<void>;
}

/** Others kept writing the same items for as long as we tried. Nothing is lost: their readings are newer than ours. */
export class ProjectionContended extends Error {
  override readonly name = 'ProjectionContended';
}

/** Records that belong together are more than one projection may read. `npm run rebuild` has no such limit. */
export class NeighborhoodTooLarge extends Error {
  override readonly name = 'NeighborhoodTooLarge';
}

/** Runs `work` over items, at most `atOnce` at a time; the answers stand in the items' order. */
export async function inTurns<T, R>(
  items: readonly T[],
  work: (item: T) => Promise<R>,
  atOnce = 16,
): Promise<R[]> {
  const answers: R[] = [];
  for (let from = 0; from < items.length; from += atOnce)
    answers.push(...(await Promise.all(items.slice(from, from + atOnce).map(work))));
  return answers;
}
