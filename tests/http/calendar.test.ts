import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { sha256, testWorld, type World } from './support/world.ts';
import { newEntry } from '../../shared/digest/outbox.ts';

/** The demo utility (New York) at noon UTC of 4 March 2026 with one claim; rules are the demo's invented ones. */
let world: World;
let now = new Date('2026-04-22T16:00:00Z');
beforeAll(async () => {
  world = await testWorld({ now: () => now });
  for (const one of [
    fact('strike', 9, onStrike(9)),
    fact('claim-opened', 1, onClaim(1), { strikeId: uuid(9), claimNumber: '2026-0007' }),
    fact('demand-sent', 10, onClaim(1), { sentOn: '2026-04-01', to: 'Ann Example' }),
  ])
    expect((await world.submit('manager', one)).status).toBe(201);
  // The server alone writes packets.
  const packet = fact('packet-frozen', 8, onClaim(1));
  await world.stores.ledger.accept(packet, { recordedAt: now.toISOString(), deliveredBy: null });
  // A trial is in no list.
  const trial = fact('demand-sent', 30, onClaim(1), { sentOn: '2026-04-01' }, { test: true });
  expect((await world.submit('manager', trial)).status).toBe(201);
});

const idsOf = (list: unknown) =>
  (list as { id: string; dueOn: string }[]).map(({ id, dueOn }) => `${dueOn} ${id}`);

describe('GET /api/deadlines', () => {
  it('leads with what is overdue and due, by day', async () => {
    const { status, body } = await world.ask('/api/deadlines', 'clerk');
    expect(status).toBe(200);
    expect(body['today']).toBe('2026-04-22');
    const groups = body['groups'] as Record<string, unknown>;
    expect(Object.fromEntries(Object.entries(groups).map(([name, list]) => [name, idsOf(list)]))).toEqual({
      overdue: [`2026-04-16 acknowledge-by:${uuid(10)}`],
      today: [`2026-04-22 follow-up-by:${uuid(10)}`],
      week: [],
      // 1 May is a Friday; 3 March 2029 a Saturday, and so the Friday before.
      later: [`2026-05-01 answer-by:${uuid(10)}`, '2029-03-02 limitation'],
      records: [],
    });
    expect(body['notSet']).toEqual([]);
    expect((groups['today'] as object[])[0]).toMatchObject({
      claimNumber: '2026-0007',
      claimId: uuid(1),
      state: 'due-today',
    });
  });

  it('ends where it is asked to, but never leaves out a date to sue that is being warned of', async () => {
    const { body } = await world.ask('/api/deadlines?until=2026-04-25', 'clerk');
    expect(idsOf((body['groups'] as Record<string, unknown>)['later'])).toEqual([]);
    now = new Date('2028-03-03T17:00:00Z');
    const far = await world.ask('/api/deadlines?until=2028-03-05', 'clerk');
    now = new Date('2026-04-22T16:00:00Z');
    expect(idsOf((far.body['groups'] as Record<string, unknown>)['later'])).toEqual([
      '2029-03-02 limitation',
    ]);
  });

  it.each(['tomorrow', '2026-02-30', ''])('refuses until=%s and names the field', async (until) => {
    const { status, body } = await world.ask(`/api/deadlines?until=${until}`, 'clerk');
    expect([status, body.problems[0]?.path, body.problems[0]?.code]).toEqual([422, 'until', 'format-date']);
  });

  it('says which letters could not be delivered', async () => {
    const mail = { to: 'c@example.com', subject: 's', text: 't' };
    await world.stores.outbox.add({
      ...newEntry('2026-04-21', 'c-301', mail, now),
      state: 'dead',
      tries: 5,
      why: 'x',
    });
    const { body } = await world.ask('/api/deadlines', 'clerk');
    expect(body['undelivered']).toEqual([
      { day: '2026-04-21', personId: 'c-301', state: 'dead', tries: 5, why: 'x' },
    ]);
  });

  it('is the desk’s alone', async () => {
    for (const [role, status] of [
      ['crew', 403],
      [null, 401],
    ] as const)
      for (const path of ['/api/deadlines', `/api/claims/${uuid(1)}/deadlines`, '/api/calendar'])
        expect((await world.ask(path, role)).status, path).toBe(status);
  });
});

describe('GET /api/claims/{claimId}/deadlines', () => {
  it('gives every date of the claim, also those that are done', async () => {
    const acknowledged = fact('claim-acknowledged', 11, onClaim(1), { receivedOn: '2026-04-14' });
    expect((await world.submit('clerk', acknowledged)).status).toBe(201);
    const { body } = await world.ask(`/api/claims/${uuid(1)}/deadlines`, 'clerk');
    expect(
      (body['deadlines'] as { id: string; state: string }[]).map(
        ({ id, state }) => `${id.split(':')[0]} ${state}`,
      ),
    ).toEqual(['acknowledge-by met', 'follow-up-by met', 'answer-by running', 'limitation running']);
  });
  it('of no claim is none', async () => {
    expect((await world.ask(`/api/claims/${uuid(99)}/deadlines`, 'clerk')).status).toBe(404);
  });
});

describe('a private calendar', () => {
  const make = async (role: 'clerk' | 'manager', headers = {}) => {
    const { status, body } = await world.ask('/api/calendar', role, { body: { action: 'make' }, headers });
    expect(status).toBe(201);
    return body['path'] as string;
  };

  it('is read by whoever has the address, with no sign-in, and kept nowhere on the way', async () => {
    const path = await make('clerk');
    // 256 bits in base64url (RFC 4648): 43 characters.
    expect(path).toMatch(/^\/api\/calendar\/[\w-]{43}\.ics$/);
    const { status, headers, body } = await world.ask(path, null);
    expect(status).toBe(200);
    expect(headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    expect(headers.get('cache-control')).toBe('no-store');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    const text = body['text'] as string;
    const summaries = new ICAL.Component(ICAL.parse(text) as never)
      .getAllSubcomponents('vevent')
      .map((event) => event.getFirstPropertyValue('summary'));
    expect(summaries).toContain('2026-0007: Answer by the payer');
    expect(text).not.toMatch(/Ann Example|A caller/);
  });

  it('is kept as a hash only, and its address in no log', async () => {
    const path = await make('clerk');
    const token = path.slice('/api/calendar/'.length, -'.ics'.length);
    const personId = (await world.ask('/api/me', 'clerk')).body['personId'] as string;
    const kept = await world.stores.calendars.ofPerson(personId);
    expect(kept?.tokenSha256).toBe(sha256(Buffer.from(token)));
    expect(JSON.stringify(kept)).not.toContain(token);
    expect(JSON.stringify(world.logged)).not.toContain(token);
  });

  it('of one person is one address: a new one revokes the old, and two made at once are two', async () => {
    const old = await make('clerk');
    const next = await make('clerk');
    expect(next).not.toBe(old);
    expect((await world.ask(old, null)).status).toBe(404);
    expect((await world.ask(next, null)).status).toBe(200);
    const [of, others] = [await make('clerk'), await make('manager')];
    expect((await world.ask(of, null)).status).toBe(200);
    expect((await world.ask(others, null)).status).toBe(200);
  });

  it('ends when it is revoked', async () => {
    const path = await make('clerk');
    expect((await world.ask('/api/calendar', 'clerk')).body['madeAt']).toBe('2026-04-22T16:00:00.000Z');
    const revoke = () => world.ask('/api/calendar', 'clerk', { body: { action: 'revoke' } });
    expect((await revoke()).body['revoked']).toBe(true);
    const gone = await world.ask(path, null);
    expect([gone.status, gone.body.problems[0]?.code]).toEqual([404, 'no-such-calendar']);
    expect((await revoke()).body['revoked']).toBe(false);
    expect((await world.ask('/api/calendar', 'clerk')).body['madeAt']).toBeNull();
  });

  it('of somebody who has left is revoked by a manager, and by no other clerk', async () => {
    const path = await make('clerk');
    const personId = (await world.ask('/api/me', 'clerk')).body['personId'];
    const managerId = (await world.ask('/api/me', 'manager')).body['personId'];
    const by = (role: 'clerk' | 'manager', whose: unknown) =>
      world.ask('/api/calendar', role, { body: { action: 'revoke', personId: whose } });
    expect((await by('clerk', managerId)).status).toBe(403);
    expect((await world.ask(path, null)).status).toBe(200);
    expect((await by('manager', personId)).body['revoked']).toBe(true);
    expect((await world.ask(path, null)).status).toBe(404);
  });

  it.each(['x.ics', `${'A'.repeat(43)}.ics`, 'A'.repeat(43), `${'A'.repeat(44)}.ics`, '..%2F..%2Fetc.ics'])(
    'at %s is none',
    async (file) => {
      expect((await world.ask(`/api/calendar/${file}`, null)).status).toBe(404);
    },
  );

  it('is in the language it was made in', async () => {
    const path = await make('clerk', { 'accept-language': 'es' });
    expect((await world.ask(path, null)).body['text']).toContain('Respuesta del pagador');
  });

  it.each([[{}], [{ action: 'read' }], [{ action: 'make', personId: 'x' }]])('refuses %j', async (body) => {
    expect((await world.ask('/api/calendar', 'clerk', { body })).status).toBe(422);
  });
});
