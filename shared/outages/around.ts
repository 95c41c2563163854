import { effectiveFacts, type Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { withoutTrials } from '../submissions/trials.ts';

/** Valves turned and water let in, of whatever time: a valve that was shut for an earlier job may be shut still. */
const tellsOfWater = ({ fact: { kind, body } }: Effective): boolean =>
  kind === 'valve-operation' ||
  kind === 'return-to-service' ||
  (kind === 'repair' && body.steps.some(({ step }) => step === 'refilled-slowly'));
/** What an open outage is judged by beside them: when it began, how far it was opened, which reports are one strike. */
const ofOpen: readonly FactKind[] = ['strike', 'link', 'repair', 'outage'];

/**
 * Of everything recorded in a hydrant's own stream and in those of its strikes, what its hold points and its returns are
 * judged by, with the corrections that led to what stands. Trials, and what was withdrawn, are left out.
 *
 * @param openIds ids of the outages that are open, every id that a strike goes by among them
 */
export function bearingOnHolds(
  recorded: readonly Recorded[],
  openIds: ReadonlySet<string>,
): readonly Recorded[] {
  const isOpen = ({ fact: { kind, subject, submissionId } }: Effective): boolean =>
    ofOpen.includes(kind) && openIds.has(subject.type === 'strike' ? subject.strikeId : submissionId);
  const wanted = new Set(
    effectiveFacts(withoutTrials(recorded))
      .facts.filter((item) => tellsOfWater(item) || isOpen(item))
      .flatMap(({ fact, corrections }) => [
        fact.submissionId,
        ...corrections.map(({ submission }) => submission.submissionId),
      ]),
  );
  return recorded.filter(({ submission }) => wanted.has(submission.submissionId));
}
