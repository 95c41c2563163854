import type { ClaimState } from '../../shared/claims/state.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { CurrentState } from './current.ts';

/** The current state as the projector keeps it: one partition a kind, by id. */
export function currentState(projections: ProjectionStore): CurrentState {
  const all = async <T>(partition: string): Promise<readonly T[]> =>
    (await projections.list<T>(partition)).map(({ value }) => value);
  const one = async <T>(partition: string, key: string): Promise<T | null> =>
    (await projections.get<T>(partition, key))?.value ?? null;
  return {
    strikes: () => all<StrikeState>('strike'),
    strike: async (strikeId) =>
      (await one<StrikeState>('strike', strikeId)) ??
      // Joined into another, it goes by that one's id.
      (await all<StrikeState>('strike')).find(({ memberIds }) => memberIds.includes(strikeId)) ??
      null,
    hydrants: () => all<HydrantStatus>('hydrant'),
    hydrant: (hydrantId) => one<HydrantStatus>('hydrant', hydrantId),
    claims: () => all<ClaimState>('claim'),
    claim: (claimId) => one<ClaimState>('claim', claimId),
  };
}
