import type { Submission } from './submission.ts';

/** A submission as the ledger holds it: what was sent, and what the server adds once, on accepting. */
export interface Recorded<S extends Submission = Submission> {
  readonly submission: S;
  /** The server's clock when the first copy was accepted. A repeat does not change it. */
  readonly recordedAt: string;
  /** Who delivered it, when that is not the person who wrote it (a shared truck tablet); else null. */
  readonly deliveredBy: string | null;
  /** True when its personal fields were erased by a lawful purge; those fields then read null. */
  readonly erased: boolean;
}
