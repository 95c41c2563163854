import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClaimNow } from '../../functions/records/claimNow.ts';
import type { ClaimLife } from '../../shared/claims/life.ts';
import type { ClaimMoney } from '../../shared/payments/money.ts';
import { sampleBodies } from '../support/sampleBodies.ts';
import { storesOnDynalite, type OpenedStores } from '../support/stores.ts';
import { fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

/** A claim as the desk reads it, from tables over HTTP: one strike, two claims, a cheque marked as full. All of it is invented. */
let opened: OpenedStores;
let world: World;
const ask = async (number: number) =>
  (await world.ask(`/api/claims/${uuid(number)}`, 'clerk')).body as unknown as ClaimNow & {
    life: ClaimLife;
    money: ClaimMoney;
  };

beforeAll(async () => {
  opened = await storesOnDynalite();
  world = await testWorld({ stores: opened.stores, now: () => new Date('2026-06-01T12:00:00Z') });
  const body = { ...sampleBodies['claim-opened'], strikeId: uuid(1), partyId: null };
  const day = { deposited: 'deposited' as const, lines: [], jointPayee: 'The county' };
  // Only the server writes a packet, so those go in below the API.
  for (const [number, claim, demandCents] of [
    [4, 2, 1000_00],
    [14, 3, 500_00],
  ] as const)
    await world.stores.ledger.accept(
      fact('packet-frozen', number, onClaim(claim), { revision: 1, demandCents }),
      {
        recordedAt: '2026-03-10T12:00:00Z',
        deliveredBy: null,
      },
    );
  for (const one of [
    fact('strike', 1, onStrike(1), {
      ...sampleBodies.strike,
      hydrantId: 'Q-100',
      struckAt: '2026-03-02T12:00:00Z',
    }),
    fact('claim-opened', 2, onClaim(2), { ...body, claimNumber: '2026-0001' }),
    fact('claim-opened', 3, onClaim(3), { ...body, claimNumber: '2026-0002', payerKind: 'own-policy' }),
    fact('demand-sent', 5, onClaim(2), { revision: 1, sentOn: '2026-03-11', amountCents: 1000_00 }),
    fact('claim-acknowledged', 6, onClaim(2), { receivedOn: '2026-03-14', by: 'Desk 4', reference: 'X-118' }),
    fact('adjuster-assigned', 7, onClaim(2), {
      assignedOn: '2026-03-16',
      company: 'Invented Mutual',
      adjuster: { name: 'Ann Example', email: null, phone: '555-0142', reference: null },
    }),
    fact('line-disputed', 8, onClaim(2), { saidOn: '2026-03-30' }),
    fact('payment-received', 9, onClaim(2), {
      ...day,
      receivedOn: '2026-04-20',
      amountCents: 850_00,
      marked: 'full',
    }),
    fact('payment-plan', 10, onClaim(2), {
      agreedOn: '2026-05-02',
      instalments: [{ dueOn: '2026-05-31', amountCents: 150_00 }],
    }),
  ])
    expect((await world.submit('manager', one)).status).toBe(201);
}, 60_000);
afterAll(() => opened.close());

describe('GET /api/claims/{claimId}', () => {
  it('says its life as of today, its money, and who is written to', async () => {
    const { life, money, contact } = await ask(2);
    expect(life).toMatchObject({
      standing: 'plan',
      also: ['packet-issued', 'demand-sent', 'acknowledged', 'disputed', 'part-paid'],
      flags: ['plan-missed'],
      firstDemand: { on: '2026-03-11', amountCents: 1000_00 },
    });
    expect(money).toMatchObject({ askedCents: 1000_00, paidCents: 850_00, balanceCents: 150_00 });
    expect(money.entries[0]).toMatchObject({ kind: 'payment', jointPayee: 'The county' });
    expect(contact).toMatchObject({
      reference: 'X-118',
      adjuster: { name: 'Ann Example', company: 'Invented Mutual', since: '2026-03-16' },
    });
  });

  it('cautions of a payment marked as full, in the language that is asked for', async () => {
    const { cautions } = await ask(2);
    expect(cautions).toMatchObject([{ submissionId: uuid(9), held: false, disputed: true }]);
    expect(cautions[0]!.sentences.join(' ')).toContain('UCC 3-311');
    const spanish = await world.ask(`/api/claims/${uuid(2)}`, 'clerk', {
      headers: { 'accept-language': 'es' },
    });
    expect(JSON.stringify(spanish.body['cautions'])).toContain('Este pago');
  });

  it('says what it may ask beside the other claim, and that together they ask too much', async () => {
    // Nothing was repaired, so the statement comes to nothing: all that is asked is too much, all that came is overpaid.
    const { shares } = await ask(2);
    expect(shares).toMatchObject({ totalCents: 0, mayAskCents: 0, dueCents: 0, overpaidCents: 850_00 });
    expect(shares!.problems.map(({ code }) => code)).toEqual(['claims-above-statement', 'strike-overpaid']);
    expect(shares!.problems[0]!.message).not.toContain('[');
  });

  it('keeps a claim that is argued over at length', async () => {
    // 60 lines of 4,000 letters three times, drawn so that they do not compress; a row of the store holds 400 KiB.
    const bytes = (index: number): Buffer =>
      Buffer.concat(
        Array.from({ length: 94 }, (_, at) => createHash('sha256').update(`${index} ${at}`).digest()),
      );
    const lines = Array.from({ length: 60 }, (_, index) => ({
      lineId: `labor-${index}`,
      reason: 'hours' as const,
      disputedCents: 1,
      words: bytes(index).toString('base64').slice(0, 4000),
    }));
    for (const number of [40, 41, 42])
      expect(
        (
          await world.submit(
            'clerk',
            fact('line-disputed', number, onClaim(3), {
              saidOn: '2026-04-01',
              lines: lines.map((line) => ({
                ...line,
                words: `${number}${line.words}`.slice(0, 3960),
              })),
            }),
          )
        ).status,
      ).toBe(201);
    const kept = (await world.stores.projections.get<ClaimNow['claim']>('claim', uuid(3)))!.value;
    expect(kept.life.disputes).toHaveLength(180);
    expect((await ask(3)).life.disputes[0]!.words).toHaveLength(3960);
  });

  it('leaves nothing personal in what is kept for reading', async () => {
    const kept = JSON.stringify((await world.stores.projections.get('claim', uuid(2)))!.value);
    for (const personal of ['Ann Example', '555-0142', 'X-118', 'Desk 4'])
      expect(kept).not.toContain(personal);
  });
});

it('the ledger for finance, over the same tables', async () => {
  const answer = await world.apps.records.request('/api/ledger?from=2026-03-11&to=2026-04-20', {
    headers: { authorization: `Bearer ${await world.issuer.tokenFor('clerk')}` },
  });
  const rows = (await answer.text()).trim().split('\r\n').slice(1);
  expect(rows.map((row) => row.split(',').slice(5, 10))).toEqual([
    ['demand', 'receivable', '', '1000.00', ''],
    ['demand', 'recovery', '', '', '1000.00'],
    ['payment', 'cash', '', '850.00', ''],
    ['payment', 'receivable', '', '', '850.00'],
  ]);
  // A trial is nobody’s money.
  const whole = async () =>
    (
      await world.apps.records.request('/api/ledger', {
        headers: { authorization: `Bearer ${await world.issuer.tokenFor('clerk')}` },
      })
    ).text();
  const before = await whole();
  const trial = {
    ...fact('payment-received', 30, onClaim(2), { receivedOn: '2026-04-21', amountCents: 77_00, lines: [] }),
    test: true as const,
  };
  expect((await world.submit('manager', trial)).status).toBe(201);
  expect(await whole()).toBe(before);
  expect(before).not.toContain('77.00');
  const { events, history } = (await ask(2)) as unknown as Record<string, unknown[]>;
  // Nor is it said beside what was, where nobody could tell it from that.
  expect(JSON.stringify([events, history])).not.toContain(uuid(30));
  const bad = await world.ask('/api/ledger?from=2026-04-20&to=2026-03-11', 'clerk');
  expect([bad.status, bad.body.problems?.[0]]).toMatchObject([
    422,
    { path: 'to', code: 'ledger-ends-before-start' },
  ]);
});
