import { expect, it } from 'vitest';
import type { AnsweredObjection } from '../../shared/audit/objections.ts';
import { claimWithCorrectedBreach } from '../support/correctedBreach.ts';
import { demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';

type Answer = AnsweredObjection & { readonly message: string; readonly answeredBy: string };

it('GET objections reads the claim as an insurer would, in words, with what was said to each', async () => {
  const claim = demoClaim((teller, { claimId }) => {
    teller.tell('objection-answer', { type: 'claim', claimId }, 900, {
      objection: 'no-inspection-before',
      answer: 'overruled',
      reason: 'The sheets of that year were lost in the flood.',
    });
  });
  const world = await packetWorld(claim);
  const { status, body } = await world.ask(`/api/claims/${claim.claimId}/objections`);
  expect(status).toBe(200);
  const objections = body.objections as Answer[];
  expect(objections.length).toBeGreaterThan(0);
  for (const { message, answeredBy, atStakeCents } of objections) {
    expect(message).not.toMatch(/^\[|\{/);
    expect(answeredBy).not.toMatch(/^\[|\{/);
    expect(atStakeCents).toBeGreaterThanOrEqual(0);
  }
  const stakes = objections.map(({ atStakeCents }) => atStakeCents);
  expect(stakes).toEqual([...stakes].sort((a, b) => b - a));
  const answered = objections.find(({ rule }) => rule === 'no-inspection-before');
  if (answered) expect(answered.answered).toMatchObject({ answer: 'overruled' });
});

it('is not for crews', async () => {
  const claim = demoClaim();
  const world = await packetWorld(claim);
  expect((await world.ask(`/api/claims/${claim.claimId}/objections`, { role: 'crew' })).status).toBe(403);
});

it('counts a breach that stands, and not one that was corrected', async () => {
  const corrected = claimWithCorrectedBreach();
  const standing = {
    ...corrected,
    submissions: corrected.submissions.filter(
      (item) => item.kind !== 'correction' || item.body.targetKind !== 'repair',
    ),
  };
  const rulesOf = async (claim: typeof corrected): Promise<string[]> => {
    const { body } = await (await packetWorld(claim)).ask(`/api/claims/${claim.claimId}/objections`);
    return (body.objections as Answer[]).map(({ rule }) => rule);
  };
  expect(await rulesOf(standing)).toContain('repair-before-isolation');
  expect(await rulesOf(corrected)).not.toContain('repair-before-isolation');
});
