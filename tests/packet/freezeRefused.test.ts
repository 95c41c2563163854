import { beforeAll, describe, expect, it } from 'vitest';
import type { Submission } from '../../shared/submissions/submission.ts';
import { demoClaim, twoDemoClaims, type DemoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { total, part, changes, together, type World } from './freezing.ts';

describe('what may not be frozen', () => {
  let world: World;
  beforeAll(async () => {
    world = await packetWorld(demoClaim());
  });

  it('more than the statement', async () => {
    expect(await world.packet({ mode: 'freeze', demandCents: total + 1 })).toMatchObject({
      status: 422,
      body: {
        problems: [{ code: 'demand-above-statement', path: 'demandCents', params: { leftCents: total } }],
      },
    });
  });

  it('a claim that does not exist, or by a crew', async () => {
    expect((await world.packet({ mode: 'freeze' }, '01a1bb07-9a00-701a-8c32-6b6fc0543d1a')).status).toBe(404);
    expect(
      (
        await world.ask(`/api/claims/${demoClaim().claimId}/packet`, {
          role: 'crew',
          body: { mode: 'freeze' },
        })
      ).status,
    ).toBe(403);
    expect((await world.ask(`/api/claims/${demoClaim().claimId}/statement`, { role: 'crew' })).status).toBe(
      403,
    );
  });

  it('anything but a freeze or a preview', async () => {
    expect(await world.packet({ mode: 'send' })).toMatchObject({
      status: 422,
      body: { problems: [{ path: 'mode' }] },
    });
  });

  it('a strike that is not closed, a claim on nobody, an incomplete statement: all said at once; a preview is', async () => {
    const whole = demoClaim();
    const returns = whole.submissions.filter(
      ({ kind, subject }) =>
        kind === 'return-to-service' && subject.type === 'strike' && subject.strikeId === whole.strikeId,
    );
    expect(returns).toHaveLength(1);
    const open: DemoClaim = {
      ...whole,
      submissions: whole.submissions.flatMap((submission): Submission[] => {
        if (submission === returns[0]) return [];
        if (submission.kind === 'claim-opened')
          return [
            { ...submission, body: { ...submission.body, payer: { ...submission.body.payer, name: null } } },
          ];
        return submission.kind === 'rate-book'
          ? [{ ...submission, body: { ...submission.body, labor: [] } }]
          : [submission];
      }),
    };
    const other = await packetWorld(open);
    const refused = await other.packet({ mode: 'freeze' });
    expect(refused.status).toBe(422);
    expect(refused.body.problems.map(({ code }: { code: string }) => code)).toEqual([
      'strike-not-closed',
      'payer-not-known',
      'statement-incomplete',
    ]);
    const preview = await other.packet({ mode: 'preview' });
    expect(preview).toMatchObject({ status: 200, body: { revision: null } });
    expect(preview.body.problems).toHaveLength(3);
    expect(preview.body.problems[0].message).toContain('not closed');
    expect(await other.issued()).toEqual([]);
  });
});

describe('several claims of one strike never demand more than its statement', () => {
  async function twoClaims(): Promise<{ world: World; second: string }> {
    const { secondClaimId: second, ...claim } = twoDemoClaims();
    return { world: await packetWorld(claim), second };
  }

  it('the second gets what the first leaves', async () => {
    const { world, second } = await twoClaims();
    await world.packet({ mode: 'freeze', demandCents: part });
    expect((await world.packet({ mode: 'freeze' }, second)).body).toMatchObject({
      revision: 1,
      demandCents: total - part,
    });
    expect((await world.packet({ mode: 'freeze', demandCents: part + 1, changes })).body).toMatchObject({
      problems: [{ code: 'demand-above-statement', params: { leftCents: part, claims: '2026-0009' } }],
    });
  });

  it('nothing is left when the first demands it all', async () => {
    const { world, second } = await twoClaims();
    await world.packet({ mode: 'freeze' });
    expect((await world.packet({ mode: 'freeze' }, second)).body).toMatchObject({
      problems: [{ code: 'nothing-left-to-demand', params: { claims: '2026-0001' } }],
    });
  });

  it('at the same moment: together no more than the statement, whoever wins', async () => {
    const { world, second } = await twoClaims();
    const deps = together(world.deps, 2, 'demand:');
    const freeze = (claimId?: string) => world.packet({ mode: 'freeze' }, claimId, deps);
    const answers = await Promise.all([freeze(), freeze(second)]);
    const demanded = answers.reduce(
      (sum, { status, body }) => sum + (status === 200 ? Number(body.demandCents) : 0),
      0,
    );
    expect(demanded).toBeLessThanOrEqual(total);
    // Each saw the other's word and took its own back; asked again one after the other, the first gets it all.
    expect((await freeze()).body).toMatchObject({ revision: 1, demandCents: total });
    expect((await freeze(second)).body.problems).toMatchObject([{ code: 'nothing-left-to-demand' }]);
  });
});
