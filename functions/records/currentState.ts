import type { ClaimState } from '../../shared/claims/state.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { partitions, projectionItems, type Partition } from '../../shared/projections/items.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { inTurns } from '../project/deps.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { CurrentState } from './current.ts';

/** A claim as it was kept before the claim's life was told. */
type ClaimOfBefore = Omit<ClaimState, 'life' | 'money'>;

interface CurrentDeps {
  readonly projections: ProjectionStore;
  readonly ledger: Ledger;
}

/**
 * The current state as the projector keeps it. A claim that was kept before its life was part of it is folded again from
 * the ledger, so that a deployment that was upgraded and not yet rebuilt is slower for a while and never wrong.
 */
export function currentState({ projections, ledger }: CurrentDeps): CurrentState {
  const all = async <T>(partition: Partition): Promise<readonly T[]> =>
    (await projections.list<T>(partition)).map(({ value }) => value);
  const one = async <T>(partition: Partition, key: string): Promise<T | null> =>
    (await projections.get<T>(partition, key))?.value ?? null;
  const whole = async (claim: ClaimState | ClaimOfBefore): Promise<ClaimState | null> => {
    if ('life' in claim) return claim;
    const { claimId } = claim;
    const recorded = await ledger.readStream(streamOf({ type: 'claim', claimId }), { personal: false });
    return (
      (projectionItems(recorded, () => 'unknown').find(
        ({ partition, key }) => partition === partitions.claim && key === claimId,
      )?.value as ClaimState | undefined) ?? null
    );
  };
  return {
    strikes: () => all<StrikeState>(partitions.strike),
    strike: async (strikeId) => {
      const joined = await one<{ readonly strikeId: string }>(partitions.joined, strikeId);
      return one<StrikeState>(partitions.strike, joined?.strikeId ?? strikeId);
    },
    hydrants: () => all<HydrantStatus>(partitions.hydrant),
    hydrant: (hydrantId) => one<HydrantStatus>(partitions.hydrant, hydrantId),
    claims: async () => {
      const kept = await all<ClaimState | ClaimOfBefore>(partitions.claim);
      return (await inTurns(kept, (claim) => whole(claim))).filter((claim) => claim !== null);
    },
    claim: async (claimId) => {
      const kept = await one<ClaimState | ClaimOfBefore>(partitions.claim, claimId);
      return kept && whole(kept);
    },
  };
}
