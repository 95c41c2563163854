import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { HydrantStatus } from '../../../../shared/outages/hydrantStatus.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';

/** One strike with everything that was said of it, as the server answers it to whoever may see it. */
export interface StrikeAnswer {
  readonly strike: StrikeState;
  readonly history: readonly HistoryEntry[];
  /** What was recorded from the hydrant's own page since, and bears on it; an answer kept from before has none. */
  readonly ofHydrant?: readonly Recorded[];
  /** Of the hydrant's own stream and its other strikes what hold points are judged by; an answer of before has none. */
  readonly around?: readonly Recorded[];
  readonly hydrant: Hydrant | null;
  readonly status: HydrantStatus | null;
  readonly evidence: Readonly<Record<string, 'awaited' | 'arrived'>>;
  readonly problems: readonly Problem[];
  readonly possibleDuplicates: readonly string[];
  readonly claims?: readonly ClaimState[];
}
