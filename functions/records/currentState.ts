import type { ClaimState } from '../../shared/claims/state.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { partitions, type Partition } from '../../shared/projections/items.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { CurrentState } from './current.ts';

/** The current state as the projector keeps it. */
export function currentState(projections: ProjectionStore): CurrentState {
  const all = async <T>(partition: Partition): Promise<readonly T[]> =>
    (await projections.list<T>(partition)).map(({ value }) => value);
  const one = async <T>(partition: Partition, key: string): Promise<T | null> =>
    (await projections.get<T>(partition, key))?.value ?? null;
  return {
    strikes: () => all<StrikeState>(partitions.strike),
    strike: async (strikeId) => {
      const joined = await one<{ readonly strikeId: string }>(partitions.joined, strikeId);
      return one<StrikeState>(partitions.strike, joined?.strikeId ?? strikeId);
    },
    hydrants: () => all<HydrantStatus>(partitions.hydrant),
    hydrant: (hydrantId) => one<HydrantStatus>(partitions.hydrant, hydrantId),
    claims: () => all<ClaimState>(partitions.claim),
    claim: (claimId) => one<ClaimState>(partitions.claim, claimId),
  };
}
