import { describe, expect, it } from 'vitest';
import { demoCase, demoClaim, twoDemoClaims } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { fact, recorded } from '../support/submissions.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';

/** What becomes of one claim's demand when another of the same strike is paid, given up or closed; through the packets' API. */
const { statement } = demoCase(demoClaim());
const total = statement.totalCents;

async function twoClaims() {
  const { secondClaimId: second, ...claim } = twoDemoClaims();
  const world = await packetWorld(claim);
  let told = 0;
  const tell = async <K extends FactKind>(
    claimId: string,
    kind: K,
    body: Partial<BodyOf<K>>,
    more: { readonly test?: true } = {},
  ): Promise<void> => {
    told += 1;
    const made = { ...fact(kind, 900 + told, { type: 'claim', claimId }, body), ...more } as Submission;
    await world.hand([recorded(made, `2026-11-26T00:00:0${told}Z`)]);
  };
  return { world, first: claim.claimId, second, tell };
}
const day = '2026-11-26';
const pay = (amountCents: number): Partial<BodyOf<'payment-received'>> => ({
  receivedOn: day,
  amountCents,
  deposited: 'deposited',
  lines: [],
});

describe('the second claim may ask', () => {
  it.each([
    [
      'nothing while the first demands it all, paid or not',
      async ({ first, tell }) => tell(first, 'payment-received', pay(100_00)),
      null,
    ],
    [
      'everything once the first is closed without a payment',
      async ({ first, tell }) => tell(first, 'claim-closed', { closedOn: day, how: 'withdrawn' }),
      total,
    ],
    [
      'the rest once the first is closed and was paid in part',
      async ({ first, tell }) => {
        await tell(first, 'payment-received', pay(100_00));
        await tell(first, 'claim-closed', { closedOn: day });
      },
      total - 100_00,
    ],
    [
      'what was written off against the first',
      async ({ first, tell }) =>
        tell(first, 'written-off', { writtenOffOn: day, amountCents: 250_00, lostTo: null }),
      250_00,
    ],
    [
      'nothing by a trial',
      async ({ first, tell }) => tell(first, 'claim-closed', { closedOn: day }, { test: true }),
      null,
    ],
    [
      'nothing once the first is open again',
      async ({ first, tell }) => {
        await tell(first, 'claim-closed', { closedOn: day });
        await tell(first, 'claim-reopened', { reopenedOn: '2026-11-27' });
      },
      null,
    ],
  ] as readonly (readonly [
    string,
    (told: Awaited<ReturnType<typeof twoClaims>>) => Promise<void>,
    number | null,
  ])[])('%s', async (_what, happens, cents) => {
    const told = await twoClaims();
    expect((await told.world.packet({ mode: 'freeze' })).body).toMatchObject({ demandCents: total });
    await happens(told);
    const { status, body } = await told.world.packet({ mode: 'freeze' }, told.second);
    if (cents === null)
      expect(body.problems).toMatchObject([
        { code: 'nothing-left-to-demand', params: { claims: '2026-0001' } },
      ]);
    else expect({ status, cents: body.demandCents }).toEqual({ status: 200, cents });
  });
});

it('a payment on a claim that never demanded lowers what the other may ask', async () => {
  const { world, second, tell } = await twoClaims();
  await tell(second, 'payment-received', pay(300_00));
  expect((await world.packet({ mode: 'freeze' })).body).toMatchObject({ demandCents: total - 300_00 });
});

it('a closed claim gets no packet; opened again it gets what the other left', async () => {
  const { world, first, second, tell } = await twoClaims();
  await world.packet({ mode: 'freeze' });
  await tell(first, 'claim-closed', { closedOn: day, how: 'withdrawn' });
  expect((await world.packet({ mode: 'freeze', demandCents: total - 1_00 }, second)).status).toBe(200);
  const again = { mode: 'freeze', changes: 'Opened again', demandCents: 2_00 };
  expect(await world.packet(again)).toMatchObject({
    status: 422,
    body: { problems: expect.arrayContaining([expect.objectContaining({ code: 'claim-is-closed' })]) },
  });
  await tell(first, 'claim-reopened', { reopenedOn: '2026-11-27' });
  expect((await world.packet(again)).body).toMatchObject({
    problems: [{ code: 'demand-above-statement', params: { leftCents: 1_00, claims: '2026-0009' } }],
  });
  expect((await world.packet({ ...again, demandCents: 1_00 })).body).toMatchObject({
    revision: 2,
    demandCents: 1_00,
  });
});
