import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { HydrantStatus } from '../../../../shared/outages/hydrantStatus.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';

/** One strike with everything that was said of it, as the server answers it to whoever may see it. */
export interface StrikeAnswer {
  readonly strike: StrikeState;
  readonly history: readonly HistoryEntry[];
  readonly hydrant: Hydrant | null;
  readonly status: HydrantStatus | null;
  readonly evidence: Readonly<Record<string, 'awaited' | 'arrived'>>;
  readonly problems: readonly Problem[];
  readonly possibleDuplicates: readonly string[];
  readonly claims?: readonly ClaimState[];
}
