import type { Member } from '../../shared/roles.ts';
import { problem } from '../../shared/problems/problem.ts';
import type { Stream } from '../../shared/submissions/envelope.ts';
import { formOf, streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { refuse } from '../http/refused.ts';
import { describeError, type Log } from '../log/log.ts';
import type { Acceptance, Ledger } from '../stores/ledger/ledger.ts';
import type { Unique } from '../stores/unique/unique.ts';

/** A fact that the ledger has just taken in. */
export interface Appended {
  readonly stream: Stream;
  readonly submission: Submission;
}
/**
 * What follows a fact. On AWS nothing: the table's stream does it. On one machine the local runner projects and
 * publishes here. Whichever it is, no handler knows.
 */
export type AfterAppend = (appended: Appended) => Promise<void>;

export interface AppendDeps {
  readonly ledger: Ledger;
  readonly unique: Unique;
  readonly afterAppend: AfterAppend;
  readonly now: () => Date;
  readonly log: Log;
}

type Taken = Extract<Acceptance, { outcome: 'accepted' | 'repeat' }>;

/**
 * The one way into the ledger for a checked submission, whether a person sent it or the server made it. A trial takes no
 * claim's number and no edition's name, which a real one may need. Answers
 * `accepted` or `repeat`; refuses with `clash`, `already-corrected` or `taken`.
 */
export async function append(deps: AppendDeps, submission: Submission, member: Member): Promise<Taken> {
  if (submission.test !== true) {
    await takeClaimNumber(deps.unique, submission);
    await takeEdition(deps.unique, submission);
  }
  const acceptance = await deps.ledger.accept(submission, {
    recordedAt: deps.now().toISOString(),
    deliveredBy: submission.person.personId === member.personId ? null : member.personId,
  });
  switch (acceptance.outcome) {
    case 'clash':
      return refuse('clash', problem('id-reused', acceptance.field, { recordedAt: acceptance.recordedAt }), {
        extra: { field: acceptance.field },
      });
    case 'already-corrected':
      return refuse(
        'already-corrected',
        problem('already-corrected', 'body.targetId', { by: acceptance.by }),
        {
          extra: { by: acceptance.by },
        },
      );
    case 'accepted':
      await follow(deps, { stream: streamOfSubmission(submission), submission });
      return acceptance;
    case 'repeat':
      return acceptance;
  }
}

/** Accepted is accepted: when what follows fails it is logged and tried again elsewhere, and the answer stays the same. */
async function follow(deps: AppendDeps, appended: Appended): Promise<void> {
  try {
    await deps.afterAppend(appended);
  } catch (error) {
    deps.log({
      level: 'error',
      event: 'after-append-failed',
      kind: appended.submission.kind,
      submissionId: appended.submission.submissionId,
      ...describeError(error),
    });
  }
}

/** A claim's number is the claim's alone. Taken before the fact is stored; a retry of the same claim finds it its own. */
async function takeClaimNumber(unique: Unique, submission: Submission): Promise<void> {
  if (formOf(submission).kind !== 'claim-opened' || submission.subject.type !== 'claim') return;
  const isCorrection = submission.kind === 'correction';
  const body = isCorrection ? submission.body.replacement : (submission.body as Record<string, unknown>);
  const claimNumber = body?.['claimNumber'];
  if (typeof claimNumber !== 'string') return;
  const { taken } = await unique.take('claim-number', claimNumber, submission.subject.claimId);
  if (!taken)
    refuse(
      'taken',
      problem('claim-number-taken', isCorrection ? 'body.replacement.claimNumber' : 'body.claimNumber', {
        claimNumber,
      }),
    );
}

/** Two managers who send one edition id at the same moment: the second is refused, not both recorded. */
async function takeEdition(unique: Unique, submission: Submission): Promise<void> {
  if (submission.kind !== 'rate-book') return;
  const { editionId } = submission.body;
  const { taken } = await unique.take('rate-book-edition', editionId, submission.submissionId);
  if (!taken) refuse('taken', problem('edition-taken', 'body.editionId', { editionId }));
}
