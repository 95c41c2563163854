import type { Stream } from '../../../shared/submissions/envelope.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';

export interface Delivery {
  /** The server's clock, an argument so that tests and replays hold it. */
  readonly recordedAt: string;
  /** The signed-in person who delivered it, when not its author. */
  readonly deliveredBy: string | null;
}

/** What became of a submission. A repeat carries the first answer again. */
export type Acceptance =
  | { readonly outcome: 'accepted'; readonly recordedAt: string }
  | { readonly outcome: 'repeat'; readonly recordedAt: string }
  /** Same id, other content: `field` is the first path that differs. */
  | { readonly outcome: 'clash'; readonly field: string; readonly recordedAt: string }
  /** Another correction already stands on the same target. */
  | { readonly outcome: 'already-corrected'; readonly by: string };

/**
 * The record of facts. Append-only: nothing here changes or removes one, but `forget` erases personal fields.
 * One conditional put accepts a fact, so any DynamoDB-compatible store serves.
 * A store that cannot answer throws `StoreUnavailable`, a fact that a newer version wrote `UnreadableFact`; no method
 * answers empty, or in part, because of a fault.
 */
export interface Ledger {
  accept(submission: Submission, delivery: Delivery): Promise<Acceptance>;
  /** Every fact of a stream, strongly consistent, personal fields joined unless `personal: false`. */
  readStream(stream: Stream, options?: { readonly personal?: boolean }): Promise<readonly Recorded[]>;
  /** Every fact of the ledger, in pages; for rebuilds and exports, never for decisions. */
  readAll(options?: { readonly personal?: boolean }): AsyncIterable<readonly Recorded[]>;
  /**
   * The personal fields that are kept, by their path in the body, in pages: for looking somebody up. Some may be of a
   * submission that was never accepted, or that a correction replaced: read the stream before acting on one.
   */
  scanPersonal(): AsyncIterable<
    readonly { readonly stream: Stream; readonly fields: Readonly<Record<string, unknown>> }[]
  >;
  /** Erases the personal fields of one submission (a lawful purge, itself recorded elsewhere). Idempotent. */
  forget(stream: Stream, submissionId: string): Promise<void>;
}
