import type { ClaimState } from '../../shared/claims/state.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';

/** The state of the utility as it was last computed from the ledger. */
export interface CurrentState {
  strikes(): Promise<readonly StrikeState[]>;
  /** A strike by any id it has had: links join several into one. */
  strike(strikeId: string): Promise<StrikeState | null>;
  hydrants(): Promise<readonly HydrantStatus[]>;
  /** Null for a hydrant of which nothing was ever recorded: as far as anyone knows it is in service. */
  hydrant(hydrantId: string): Promise<HydrantStatus | null>;
  claims(): Promise<readonly ClaimState[]>;
  claim(claimId: string): Promise<ClaimState | null>;
}
