import { problem, type Problem } from '../problems/problem.ts';
import { correctionKind, isFactKind, type FactKind } from './kinds.ts';
import type { Recorded } from './recorded.ts';
import type { Correction } from './submission.ts';

/**
 * Whether a correction says rightly what it corrects, as far as its stream already holds it. Its `targetKind` decides
 * who may write it, so a wrong one would let a clerk take the only place for a correction of a field fact. Empty while
 * the target has not arrived: facts come in any order, and a wrong kind then changes nothing. Of a target that this
 * person may not read (`mayRead`) nothing is said but that it is another. A correction is never a trial, and a trial never
 * corrected: the one would be seen by nobody and stand in the way of a real correction, the other would correct nothing.
 */
export function correctionProblems(
  correction: Correction,
  recorded: readonly Recorded[],
  mayRead: (kind: FactKind) => boolean,
): Problem[] {
  if (correction.test === true) return [problem('correction-not-trial', 'test')];
  const { targetId, targetKind } = correction.body;
  const target = recorded.find(({ submission }) => submission.submissionId === targetId)?.submission;
  if (!target) return [];
  if (target.test === true) return [problem('correction-of-trial', 'body.targetId')];
  const kind = target.kind === correctionKind ? target.body.targetKind : target.kind;
  if (kind === targetKind) return [];
  return isFactKind(kind) && mayRead(kind)
    ? [problem('correction-of-other-kind', 'body.targetKind', { targetKind, kind })]
    : [problem('correction-of-another', 'body.targetKind', { targetKind })];
}
