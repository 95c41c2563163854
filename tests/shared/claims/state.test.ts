import { describe, expect, it } from 'vitest';
import { foldClaim } from '../../../shared/claims/state.ts';
import { freezeProblems } from '../../../shared/packet/ready.ts';
import { effectiveFacts, ofKind } from '../../../shared/submissions/effective.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { sayProblem } from '../../../shared/words/index.ts';
import { fact, onClaim, onStrike, recorded, uuid } from '../../support/submissions.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';

/** What a claim's own records say that cannot all be so. Rules of this project; no outside source. */
const CLAIM = 200;
const opened = fact('claim-opened', 1, onClaim(CLAIM), { strikeId: uuid(100), partyId: null });
const packet = fact('packet-frozen', 2, onClaim(CLAIM), { revision: 1, demandCents: 500_00 });
const sent = (change: Record<string, unknown> = {}) =>
  fact('demand-sent', 3, onClaim(CLAIM), {
    revision: 1,
    amountCents: 500_00,
    sentOn: '2026-03-04',
    ...change,
  });
const claimOf = (submissions: readonly Submission[]) => {
  const { facts } = effectiveFacts(
    submissions.map((submission) => ({ ...recorded(submission), recordedAt: '2026-03-04T18:00:00Z' })),
  );
  return { facts, claim: foldClaim(uuid(CLAIM), facts)! };
};

describe('a demand that was sent', () => {
  it('bills the claim when it is of a packet, of its amount, and not of a day to come', () => {
    expect(claimOf([opened, packet, sent()]).claim).toMatchObject({ stage: 'billed', problems: [] });
    // It is already 5 March where the day begins first.
    expect(claimOf([opened, packet, sent({ sentOn: '2026-03-05' })]).claim.problems).toEqual([]);
  });

  it.each([
    [{ revision: 9 }, 'demand-without-packet'],
    [{ amountCents: 500_01 }, 'demand-of-other-amount'],
    [{ sentOn: '2026-03-06' }, 'demand-sent-later-than-recorded'],
    [{ sentOn: '9999-01-01' }, 'demand-sent-later-than-recorded'],
  ])('does not when it is %o', (change, code) => {
    const demand = sent(change);
    const { claim } = claimOf([opened, packet, demand]);
    expect(claim).toMatchObject({ stage: 'frozen', problems: [{ code, path: demand.submissionId }] });
    expect(claim.demands).toHaveLength(1);
    for (const locale of ['en', 'es'] as const)
      expect(sayProblem(locale, claim.problems[0]!)).not.toContain(code);
  });
});

describe('what a claim names', () => {
  const strike = {
    strikeId: uuid(100),
    memberIds: [uuid(100)],
    returnedAt: '2026-03-04T12:00:00Z',
  } as unknown as StrikeState;
  const problemsOf = (...submissions: readonly Submission[]) => {
    const { facts } = claimOf(submissions);
    const claim = ofKind(facts, 'claim-opened')[0]!;
    return freezeProblems({ claim, strike, all: facts }).map(({ code }) => code);
  };

  it('a party of its strike, and not of another', () => {
    const party = fact('party', 4, onStrike(100), {});
    const other = fact('party', 5, onStrike(101), {});
    const against = (partyId: string) => fact('claim-opened', 1, onClaim(CLAIM), { ...opened.body, partyId });
    expect(problemsOf(against(party.submissionId), party, other)).toEqual([]);
    expect(problemsOf(against(other.submissionId), party, other)).toEqual(['party-not-of-strike']);
  });

  it('one strike: an opening that names another is a problem of the claim and of its packet', () => {
    const again = fact('claim-opened', 6, onClaim(CLAIM), {
      ...opened.body,
      strikeId: uuid(101),
    });
    const { claim } = claimOf([opened, again]);
    expect(claim.strikeId).toBe(uuid(100));
    expect(claim.problems).toMatchObject([
      { code: 'claim-opened-for-two-strikes', path: again.submissionId },
    ]);
    expect(problemsOf(opened, again)).toEqual(['claim-opened-for-two-strikes']);
    const renamed = fact('claim-opened', 7, onClaim(CLAIM), {
      ...opened.body,
      claimNumber: '2026-9999',
    });
    expect(claimOf([opened, renamed]).claim.problems).toMatchObject([{ code: 'claim-opened-twice' }]);
    // The same words again are no contradiction.
    expect(
      claimOf([opened, fact('claim-opened', 8, onClaim(CLAIM), opened.body as never)]).claim.problems,
    ).toEqual([]);
  });
});
