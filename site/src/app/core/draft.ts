import type { Subject } from '../../../../shared/submissions/envelope.ts';
import type { Values } from '../form/nodes.ts';

/** A form that is being filled in: what was typed, as typed, under the id that the submission will have. */
export interface Draft {
  readonly submissionId: string;
  readonly kind: string;
  readonly subject: Subject;
  readonly authorId: string;
  readonly openedAt: string;
  /** False until something was typed: such a draft is not worth keeping. */
  readonly touched: boolean;
  readonly values: Values;
  /** When it was last changed, epoch milliseconds; of two readings of one draft the later stands. Left out by those of before. */
  readonly changedAt?: number;
  /** Set when this form corrects a recorded submission. */
  readonly corrects?: {
    readonly targetId: string;
    readonly occurredAt: string;
    readonly reason: string;
    readonly withdraw: boolean;
    /** The hydrant that the corrected report named; left out where it names none by its kind. */
    readonly hydrantId?: string | null;
  };
  /** What is recorded already and this is about: a new strike has no id here, because nothing is known of it yet. */
  readonly about: {
    readonly hydrantId: string | null;
    readonly strikeId: string | null;
    /** The claim that it was opened from, to go back to; left out where it was none. */
    readonly claimId?: string;
  };
}
