import { describe, expect, it } from 'vitest';
import { pastClaims } from '../../infra/local/demo/stories/pastClaims.ts';
import { tellLater, tellPastStrike } from '../../infra/local/demo/stories/tellPast.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { Teller } from '../../infra/local/demo/teller.ts';
import { standings } from '../../shared/claims/life.ts';
import { project } from '../../shared/projections/project.ts';
import { futureProblems } from '../../shared/submissions/futures.ts';
import { parseSubmission } from '../../shared/submissions/submission.ts';
import { fact } from '../support/submissions.ts';

const now = new Date('2026-11-25T14:00:00Z');

describe('the demo’s claims of the past year', () => {
  const teller = new Teller(now);
  const claims = pastClaims.map((claim) => ({ claim, ...tellPastStrike(teller, claim) }));
  const packets = claims.map(({ claimId }, index) =>
    fact(
      'packet-frozen',
      700 + index,
      { type: 'claim', claimId },
      { revision: 1, demandCents: 1000_00, frozenAt: now.toISOString() },
      { occurredAt: now.toISOString() },
    ),
  );
  for (const { claim, claimId } of claims)
    tellLater(teller, claim, claimId, { revision: 1, demandCents: 1000_00, laborLineId: 'labor-1' });
  const submissions = [...teller.told.map(({ submission }) => submission), ...packets];
  const projected = project(
    submissions.map((submission) => ({
      submission,
      recordedAt: now.toISOString(),
      deliveredBy: null,
      erased: false,
    })),
    () => 'dry-barrel',
  );

  it('are well formed', () => {
    for (const { submission } of teller.told)
      expect(parseSubmission(submission), submission.kind).toMatchObject({ ok: true });
    expect(projected.problems).toEqual([]);
  });

  it('stand in every way that a claim may, but for the one that is still open', () => {
    const found = new Set(projected.claims.map(({ life }) => life.standing));
    // A demand that nobody has answered is the demo's first claim, and the open one its second (stories/closed.ts).
    expect(standings.filter((standing) => !found.has(standing))).toEqual(['open', 'demand-sent']);
  });

  it('are questioned only where the story means it: money held and money paid too much', () => {
    const codes = projected.claims.flatMap(({ problems }) => problems.map(({ code }) => code));
    expect(codes.sort()).toEqual(['overpaid', 'payment-held']);
  });

  it.each(Array.from({ length: 24 }, (_, hour) => hour))(
    'tell no day that has not come yet, told at %i o’clock UTC',
    (hour) => {
      // In the evening the utility's day is not yet the next one of UTC; a day to come is refused.
      const at = new Teller(new Date(now.getTime() + hour * 3_600_000));
      for (const claim of pastClaims) {
        const { claimId } = tellPastStrike(at, claim);
        tellLater(at, claim, claimId, { revision: 1, demandCents: 1000_00, laborLineId: 'labor-1' });
      }
      expect(at.told.flatMap(({ submission }) => futureProblems(submission, demoUtility.timeZone))).toEqual(
        [],
      );
    },
  );

  it('are of hydrants that are back in service', () => {
    expect(projected.strikes.every(({ stage }) => stage === 'back')).toBe(true);
  });
});
