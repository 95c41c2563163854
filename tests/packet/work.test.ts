import { expect, it } from 'vitest';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { statementOf } from '../../shared/costs/statement.ts';
import type { Work } from '../../shared/costs/work.ts';
import { demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';

const strikeIdOf = ({ submissions, claimId }: ReturnType<typeof demoClaim>): string =>
  submissions.flatMap(({ kind, subject, body }) =>
    kind === 'claim-opened' && subject.type === 'claim' && subject.claimId === claimId
      ? [(body as { strikeId: string }).strikeId]
      : [],
  )[0] ?? '';

it('GET work gives what the statement is made from: with the rates in force it makes the claim’s own', async () => {
  const claim = demoClaim();
  const world = await packetWorld(claim);
  const { status, body } = await world.ask(`/api/strikes/${strikeIdOf(claim)}/work`);
  expect(status).toBe(200);
  const statement = await world.ask(`/api/claims/${claim.claimId}/statement`);
  expect(JSON.parse(JSON.stringify(statementOf(body.work as Work, demoRateBooks)))).toEqual(statement.body);
});

it('is not for crews, and an unknown strike is said to be unknown', async () => {
  const claim = demoClaim();
  const world = await packetWorld(claim);
  expect((await world.ask(`/api/strikes/${strikeIdOf(claim)}/work`, { role: 'crew' })).status).toBe(403);
  const unknown = await world.ask('/api/strikes/0190a000-0000-7000-8000-000000000000/work');
  expect(unknown).toMatchObject({ status: 404, body: { problems: [{ code: 'no-such-strike' }] } });
});
