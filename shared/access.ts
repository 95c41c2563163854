import { problem, type Problem } from './problems/problem.ts';
import { mayDo, type Member } from './roles.ts';
import type { StrikeState } from './strikes/state.ts';
import type { FactKind } from './submissions/kinds.ts';
import { formOf, readersOf, writersOf, type Submission } from './submissions/submission.ts';

/** Kinds that only the server writes, as the outcome of something asked of it; nobody may state one, or correct one. */
export const serverWritten: readonly FactKind[] = ['packet-frozen', 'letter-sent', 'erasure'];

/** Why this person may not write this submission; empty when they may. */
export function writingProblems(member: Member, submission: Submission): Problem[] {
  const { kind } = formOf(submission);
  const problems: Problem[] = [];
  if (!mayDo(member, writersOf(submission)))
    problems.push(problem('role-may-not-write', 'kind', { kind, roles: writersOf(submission).join(', ') }));
  if (serverWritten.includes(kind)) problems.push(problem('server-writes-this', 'kind', { kind }));
  // A trial is kept out of totals and public pages, so who may mark one may also hide a fact.
  if (submission.test === true && !mayDo(member, ['manager']))
    problems.push(problem('test-needs-manager', 'test'));
  return problems;
}

/** Whether this person may read facts of this kind back whole. */
export const mayRead = (member: Member, kind: FactKind): boolean => mayDo(member, readersOf(kind));

/**
 * A strike as this person may see it. Who may not read what the desk records does not learn that there is any: neither
 * its ids, nor how many, nor when.
 */
export function strikeAsSeenBy(member: Member, strike: StrikeState): StrikeState {
  const { ofField, cause, ...seen } = strike;
  if (mayRead(member, 'party')) return cause === undefined ? seen : { ...seen, cause };
  return {
    ...seen,
    partyIds: [],
    submissionIds: ofField?.submissionIds ?? [],
    lastRecordedAt: ofField?.lastRecordedAt ?? strike.since,
  };
}
