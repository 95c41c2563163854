import type { Stream } from '../../../shared/submissions/envelope.ts';

/** Says that a fact may stand in the ledger and not yet in what is kept for reading. */
export interface Mark {
  readonly stream: Stream;
  readonly submissionId: string;
  /** The server's clock at the attempt, as the fact has it. */
  readonly recordedAt: string;
  /** Of two who hand in the same fact at once each has a mark of its own, so that neither takes away the other's. */
  readonly attempt: string;
}

/**
 * What is not known to be projected (docs/decisions/0220). A mark stands before its fact does and is taken away after
 * the fact was projected, so that a reader of projections who finds no mark misses no fact. A mark without a fact is
 * left by a process that ended in between, and means nothing.
 */
export interface Unprojected {
  add(mark: Mark): Promise<void>;
  /** Marks of one stream, or all there are; strongly consistent. */
  list(stream?: Stream): Promise<readonly Mark[]>;
  /** Idempotent. */
  remove(marks: readonly Mark[]): Promise<void>;
}
