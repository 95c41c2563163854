import { beforeAll, describe, expect, it } from 'vitest';
import type { ClaimFigures } from '../../shared/claimFigures/figures.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import { sampleBodies } from '../support/sampleBodies.ts';
import { fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

/** One strike with two claims; the first was demanded and paid short. Only the server writes a packet, so it goes in below. */
let world: World;
beforeAll(async () => {
  world = await testWorld({ now: () => new Date('2026-06-01T12:00:00Z') });
  const claimBody = { ...sampleBodies['claim-opened'], strikeId: uuid(1) };
  const issued = fact('packet-frozen', 4, onClaim(2), { revision: 1, demandCents: 1000_00 });
  await world.stores.ledger.accept(issued, { recordedAt: '2026-03-10T12:00:00Z', deliveredBy: null });
  for (const one of [
    fact('strike', 1, onStrike(1), {
      ...sampleBodies.strike,
      hydrantId: 'Q-100',
      struckAt: '2026-03-01T12:00:00Z',
    }),
    fact('party', 9, onStrike(1), { cause: 'deliberate' }),
    fact('claim-opened', 2, onClaim(2), { ...claimBody, claimNumber: '2026-0001' }),
    fact('claim-opened', 3, onClaim(3), { ...claimBody, claimNumber: '2026-0002' }),
    fact('demand-sent', 5, onClaim(2), { revision: 1, sentOn: '2026-03-11', amountCents: 1000_00 }),
    fact('payment-received', 6, onClaim(2), {
      receivedOn: '2026-04-20',
      amountCents: 850_00,
      deposited: 'deposited',
      marked: 'part',
      lines: [{ lineId: 'labor-1', paidCents: 0, shortCents: 150_00, reason: 'hours', words: 'Too many' }],
    }),
  ])
    expect((await world.submit('manager', one)).status).toBe(201);
});

describe('a claim after its packet, over HTTP', () => {
  it('says its money, its life, the other claims of the strike and its events', async () => {
    const { body } = await world.ask(`/api/claims/${uuid(2)}`, 'clerk');
    const claim = body['claim'] as ClaimState;
    expect(claim.money).toMatchObject({ askedCents: 1000_00, paidCents: 850_00, balanceCents: 150_00 });
    expect(claim.life.standing).toBe('part-paid');
    expect((body['others'] as ClaimState[]).map(({ claimNumber }) => claimNumber)).toEqual(['2026-0002']);
    expect((body['events'] as unknown[]).length).toBe(4);
  });

  it('is counted', async () => {
    const { body } = await world.ask('/api/claim-figures', 'clerk');
    const figures = body as unknown as ClaimFigures;
    expect(figures.whole).toMatchObject({ claims: 1, billedCents: 1000_00, recoveredCents: 850_00 });
    expect(figures.by.cause.map(({ group }) => group)).toEqual(['deliberate']);
    // 11 March to 1 June 2026 are 82 days (Python: date(2026, 6, 1) - date(2026, 3, 11)).
    expect(figures.ageing.filter(({ claims }) => claims.length > 0)).toMatchObject([
      { code: '61-90', claims: [{ days: 82 }], balanceCents: 150_00 },
    ]);
    expect(figures.lost).toMatchObject([{ reason: 'hours', cents: 150_00 }]);
  });

  it('goes to finance as CSV, without anybody’s name', async () => {
    const token = await world.issuer.tokenFor('clerk');
    const ask = (query: string) =>
      world.apps.records.request(`/api/ledger${query}`, {
        headers: { authorization: `Bearer ${token}` },
      });
    const answer = await ask('');
    expect([answer.status, answer.headers.get('content-type')]).toEqual([
      200,
      'text/csv; charset=utf-8; header=present',
    ]);
    const text = await answer.text();
    expect(
      text
        .split('\r\n')
        .slice(1, 5)
        .map((row) => row.split(',').slice(0, 2).join(' ')),
    ).toEqual([
      '2026-03-11 2026-0001',
      '2026-03-11 2026-0001',
      '2026-04-20 2026-0001',
      '2026-04-20 2026-0001',
    ]);
    const { from, reference } = sampleBodies['payment-received'];
    for (const personal of [from, reference]) expect(text).not.toContain(personal);
    expect((await ask('?from=2026-04-01')).status).toBe(200);
    expect((await ask('?from=soon')).status).toBe(422);
  });

  it('says the same of a claim that was kept before its life was told', async () => {
    const { projections } = world.stores;
    const before = await world.ask('/api/claim-figures', 'clerk');
    const kept = (await projections.get<Record<string, unknown>>('claim', uuid(2)))!;
    const { life: _life, money: _money, ...older } = kept.value;
    expect(await projections.put('claim', uuid(2), older, kept.version)).toBe(true);
    expect((await world.ask('/api/claim-figures', 'clerk')).body).toEqual(before.body);
    const { body } = await world.ask('/api/claims', 'clerk');
    const claim = (body['claims'] as ClaimState[]).find(({ claimId }) => claimId === uuid(2))!;
    expect([claim.life.standing, claim.money.balanceCents]).toEqual(['part-paid', 150_00]);
  });

  it('is the desk’s alone', async () => {
    for (const path of ['/api/claim-figures', '/api/ledger', `/api/claims/${uuid(2)}`])
      expect((await world.ask(path, 'crew')).status).toBe(403);
  });
});
