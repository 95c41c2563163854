import { randomUUID } from 'node:crypto';
import { streamOfSubmission } from '../../../shared/submissions/submission.ts';
import { TooLarge } from '../faults.ts';
import type { Unprojected } from '../unprojected/unprojected.ts';
import type { Ledger } from './ledger.ts';

/**
 * A ledger that marks every fact as not yet projected, before it takes it in (docs/decisions/0220). When the attempt
 * added no fact its own mark goes again; when it failed the mark stays, because the fact may stand all the same. A trial has
 * no mark: no page shows it, so none lacks it.
 */
export function markedLedger(ledger: Ledger, unprojected: Unprojected): Ledger {
  return {
    ...ledger,
    async accept(submission, delivery) {
      if (submission.test === true) return ledger.accept(submission, delivery);
      const mark = {
        stream: streamOfSubmission(submission),
        submissionId: submission.submissionId,
        recordedAt: delivery.recordedAt,
        attempt: randomUUID(),
      };
      await unprojected.add(mark);
      const acceptance = await ledger.accept(submission, delivery).catch(async (error: unknown) => {
        if (error instanceof TooLarge) await unprojected.remove([mark]);
        throw error;
      });
      if (acceptance.outcome !== 'accepted') await unprojected.remove([mark]);
      return acceptance;
    },
  };
}
