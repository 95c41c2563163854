import { foldClaim, openedTwice } from '../claims/state.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { ofKind } from '../submissions/effective.ts';
import type { Subject } from '../submissions/envelope.ts';
import type { ClaimCase } from './case.ts';

const sameClaim = (a: Subject, b: Subject): boolean =>
  a.type === 'claim' && b.type === 'claim' && a.claimId === b.claimId;

/** What stands in the way of issuing a packet, apart from its money: empty when it may be frozen. A preview always may. */
export function freezeProblems({
  claim,
  strike,
  all,
}: Pick<ClaimCase, 'claim' | 'strike' | 'all'>): Problem[] {
  const problems: Problem[] = [];
  if (strike.returnedAt === null)
    problems.push(problem('strike-not-closed', '', { strikeId: strike.strikeId }));
  if (claim.fact.body.payer.name === null) problems.push(problem('payer-not-known', 'payer.name'));
  const own = all.filter(({ fact }) => sameClaim(fact.subject, claim.fact.subject));
  problems.push(...openedTwice(own));
  // What a closed claim left unpaid may be asked of others by now.
  if (foldClaim('', own)?.life.closed) problems.push(problem('claim-is-closed'));
  const { partyId } = claim.fact.body;
  const ofStrike = ofKind(all, 'party').some(
    ({ fact: { submissionId, subject } }) =>
      submissionId === partyId && subject.type === 'strike' && strike.memberIds.includes(subject.strikeId),
  );
  if (partyId !== null && !ofStrike) problems.push(problem('party-not-of-strike', 'partyId', { partyId }));
  return problems;
}

/**
 * The instant that a packet's dates come from. It is never before what the packet tells of, whatever a server's clock
 * says: for a preview the latest record, so that the same records give the same preview.
 */
export function asOfRecords(
  recorded: readonly { readonly recordedAt: string }[],
  now: string | null = null,
): string {
  const latest = recorded.reduce(
    (at, item) => (Date.parse(item.recordedAt) > Date.parse(at) ? item.recordedAt : at),
    recorded[0]?.recordedAt ?? now ?? '',
  );
  return now !== null && Date.parse(now) > Date.parse(latest) ? now : latest;
}
