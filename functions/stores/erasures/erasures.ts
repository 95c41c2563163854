import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Fact } from '../../../shared/submissions/submission.ts';

export type RecordedErasure = Recorded<Fact<'erasure'>>;

/**
 * Every erasure of personal fields, kept apart from the tables. The ledger has the same facts, but a table that is
 * brought back from before an erasure has neither the fact nor the gap that it tells of; this list says what must go
 * again. Append-only; a store that cannot answer throws `StoreUnavailable`.
 */
export interface Erasures {
  /** Idempotent. Throws for one that `list` could not read again. */
  add(erasure: RecordedErasure): Promise<void>;
  list(): Promise<readonly RecordedErasure[]>;
}
