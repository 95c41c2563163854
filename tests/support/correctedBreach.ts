import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { demoClaim, type DemoClaim } from './demoClaim.ts';

/** Written as colleagues write to each other: two people of the demo's roll, one by the first name alone. */
export const breachReason =
  'Odalys Brennick drained it at 6:50.\nTobin forgot to tick it; nozzle left open to mark it';

/**
 * The demo's claim with a repair that was first recorded without its drained barrel, and then corrected to what the
 * demo says, or withdrawn.
 */
export function claimWithCorrectedBreach(withdrawn = false): DemoClaim {
  let target = '';
  const claim = demoClaim((teller, { strikeId }) => {
    const { submission } = teller.told.find(
      ({ submission: { kind, subject } }) =>
        kind === 'repair' && subject.type === 'strike' && subject.strikeId === strikeId,
    )!;
    target = submission.submissionId;
    teller.correct(
      target,
      'repair',
      submission.subject,
      250,
      breachReason,
      withdrawn ? null : submission.body,
    );
  });
  const undrained = (body: BodyOf<'repair'>): BodyOf<'repair'> => ({
    ...body,
    steps: body.steps.filter(({ step }) => step !== 'drained'),
  });
  return {
    ...claim,
    submissions: claim.submissions.map((submission): Submission =>
      submission.kind === 'repair' && submission.submissionId === target
        ? { ...submission, body: undrained(submission.body) }
        : submission,
    ),
  };
}
