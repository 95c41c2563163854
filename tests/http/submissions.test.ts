import { beforeEach, describe, expect, it } from 'vitest';
import { memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { kinds, factKinds } from '../../shared/submissions/kinds.ts';
import { formOf, type Submission } from '../../shared/submissions/submission.ts';
import { roles } from '../../shared/roles.ts';
import { serverWritten } from '../../shared/access.ts';
import { correction, fact, onClaim, onHydrant, onStrike, onUtility, uuid } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

let world: World;
beforeEach(async () => {
  world = await testWorld();
});
const strike = fact('strike', 1, onStrike(100));
const stored = async () => world.stores.ledger.readStream(streamOf(onStrike(100)));

describe('POST /api/submissions', () => {
  it('accepts once, answers a repeat with the first answer, and names the field of a clash', async () => {
    const first = await world.submit('crew', strike);
    expect([first.status, first.body]).toEqual([
      201,
      { submissionId: strike.submissionId, outcome: 'accepted', recordedAt: '2026-03-04T12:00:00.000Z' },
    ]);
    const again = await world.submit('crew', strike);
    expect([again.status, again.body]).toEqual([200, { ...first.body, outcome: 'repeat' }]);
    const other = await world.submit('crew', { ...strike, body: { ...strike.body, note: 'Something else' } });
    expect(other).toMatchObject({
      status: 409,
      body: {
        type: '/problems/clash',
        field: 'body.note',
        problems: [{ code: 'id-reused', path: 'body.note' }],
      },
    });
    expect(await stored()).toHaveLength(1);
    expect((await stored())[0]?.submission).toEqual(strike);
  });

  it('records who delivered it when that is not its author', async () => {
    await world.submit('crew', strike);
    expect((await stored())[0]?.deliveredBy).toBe('crew-1');
    await world.submit('crew', fact('strike', 2, onStrike(100), {}, { person: { personId: 'crew-1' } }));
    expect((await stored())[1]?.deliveredBy).toBeNull();
  });

  it('refuses a second correction of the same target and says which one stands', async () => {
    await world.submit('crew', strike);
    const one = correction(2, strike, { ...strike.body, note: 'First' });
    expect((await world.submit('crew', one)).status).toBe(201);
    const two = await world.submit('crew', correction(3, strike, { ...strike.body, note: 'Second' }));
    expect(two).toMatchObject({
      status: 409,
      body: {
        type: '/problems/already-corrected',
        by: one.submissionId,
        problems: [{ path: 'body.targetId' }],
      },
    });
    expect((await world.submit('crew', correction(4, one, { ...strike.body, note: 'Third' }))).status).toBe(
      201,
    );
  });

  it('names every problem at once, in the language asked for, and stores nothing', async () => {
    const bad = {
      ...strike,
      extra: 1,
      sentAt: 'yesterday',
      body: { ...strike.body, found: { ...strike.body.found, jetHeightIn: -3 }, photos: 'none' },
    };
    const answer = await world.submit('crew', bad, { 'accept-language': 'es' });
    expect(answer.status).toBe(422);
    expect(answer.body.problems.map(({ path }) => path).sort()).toEqual([
      'body.found.jetHeightIn',
      'body.photos',
      'extra',
      'sentAt',
    ]);
    expect(answer.body.problems.find(({ path }) => path === 'sentAt')?.message).toMatch(/UTC/);
    expect(answer.body.title).toBe('Hay campos que revisar');
    expect(await stored()).toEqual([]);
  });

  it('takes a claim number for one claim only', async () => {
    const opened = fact('claim-opened', 5, onClaim(200), { claimNumber: '2026-0042' });
    expect((await world.submit('clerk', opened)).status).toBe(201);
    expect((await world.submit('clerk', opened)).status).toBe(200);
    const same = fact('claim-opened', 6, onClaim(201), { claimNumber: '2026-0042' });
    expect(await world.submit('clerk', same)).toMatchObject({
      status: 409,
      body: {
        problems: [
          { code: 'claim-number-taken', path: 'body.claimNumber', params: { claimNumber: '2026-0042' } },
        ],
      },
    });
    expect(await world.stores.ledger.readStream(streamOf(onClaim(201)))).toEqual([]);
    // A correction that changes the number takes the new one too.
    const free = fact('claim-opened', 7, onClaim(201), { claimNumber: '2026-0043' });
    await world.submit('clerk', free);
    expect(
      await world.submit('clerk', correction(8, free, { ...free.body, claimNumber: '2026-0042' })),
    ).toMatchObject({ status: 409, body: { problems: [{ path: 'body.replacement.claimNumber' }] } });
    expect(
      (await world.submit('clerk', correction(9, free, { ...free.body, claimNumber: '2026-0044' }))).status,
    ).toBe(201);
  });

  it('answers accepted although what follows fails, and logs it without a word of the content', async () => {
    world = await testWorld({
      afterAppend: async ({ submission }) => {
        throw new Error(`cannot project ${JSON.stringify(submission.body)}`);
      },
    });
    expect((await world.submit('crew', strike)).status).toBe(201);
    expect(world.logged).toMatchObject([
      { event: 'after-append-failed', submissionId: strike.submissionId, kind: 'strike' },
    ]);
    expect(JSON.stringify(world.logged)).not.toContain('caller');
    expect(await stored()).toHaveLength(1);
  });

  it('is followed once, by what was accepted: a repeat and a clash write nothing', async () => {
    const followed: string[] = [];
    world = await testWorld({
      afterAppend: async ({ stream, submission }) =>
        void followed.push(`${stream} ${submission.submissionId}`),
    });
    await world.submit('crew', strike);
    await world.submit('crew', strike);
    await world.submit('crew', { ...strike, sentAt: '2026-01-01T00:00:00Z' });
    expect(followed).toEqual([`${streamOf(strike.subject)} ${strike.submissionId}`]);
  });

  it('answers 503 while the store is away and accepts the same submission afterwards', async () => {
    const stores = memoryStores();
    let away = true;
    const ledger: typeof stores.ledger = {
      ...stores.ledger,
      accept: async (...args) => {
        if (away) throw new StoreUnavailable('gone');
        return stores.ledger.accept(...args);
      },
    };
    world = await testWorld({ stores: { ...stores, ledger } });
    const answer = await world.submit('crew', strike);
    expect([answer.status, answer.headers.get('retry-after'), answer.body.type]).toEqual([
      503,
      '5',
      '/problems/unavailable',
    ]);
    away = false;
    expect((await world.submit('crew', strike)).status).toBe(201);
  });
});

// Who may write what is the forms' own table; these sentences of the issue hold whatever it says: a clerk changes no
// field fact, crew touches no claim, only a manager the utility's own records.
describe('kind by role', () => {
  const subjectFor = {
    strike: onStrike(1),
    claim: onClaim(1),
    hydrant: onHydrant('H-1'),
    utility: onUtility,
  };
  const sample = (kind: (typeof factKinds)[number], number: number) => {
    const form = formOf(fact(kind, 0, onUtility));
    return fact(kind, number, subjectFor[form.subjects[0] as keyof typeof subjectFor]);
  };

  for (const [index, kind] of factKinds.entries())
    for (const role of roles) {
      const { writers } = formOf(fact(kind, 0, onUtility));
      const may = (writers as readonly string[]).includes(role) && !serverWritten.includes(kind);
      it(`${role} ${may ? 'writes' : 'does not write'} ${kind}, nor a correction of one otherwise`, async () => {
        const target = sample(kind, index + 1);
        const answer = await world.submit(role, target);
        expect([answer.status, may ? 'accepted' : answer.body.type]).toEqual(
          may ? [201, 'accepted'] : [403, '/problems/not-allowed'],
        );
        // An edition of the rate book is withdrawn and never edited: bills were made by it.
        const replacement = kind === 'rate-book' ? null : { ...target.body };
        const corrected = await world.submit(role, correction(index + 500, target, replacement));
        expect(corrected.status).toBe(may ? 201 : 403);
      });
    }

  const fieldFacts = [
    'strike',
    'repair',
    'flow-test',
    'return-to-service',
    'valve-operation',
    'outage',
    'inspection',
    'expected-return',
    'out-of-service-notice',
    'planned-work',
  ] as const;
  it('a clerk changes no field fact', async () => {
    for (const kind of fieldFacts)
      expect([kind, (await world.submit('clerk', sample(kind, 1))).status]).toEqual([kind, 403]);
  });
  it('crew touches no claim and no record of the utility', async () => {
    for (const kind of [
      'claim-opened',
      'demand-sent',
      'packet-frozen',
      'rate-book',
      'hydrant-model',
      'inventory-loaded',
    ] as const)
      expect([kind, (await world.submit('crew', sample(kind, 1))).status]).toEqual([kind, 403]);
  });
  it('only a manager edits a rate book, a model or an inventory', async () => {
    for (const kind of ['rate-book', 'hydrant-model', 'inventory-loaded'] as const)
      expect([kind, (await world.submit('clerk', sample(kind, 1))).status]).toEqual([kind, 403]);
  });
  it('nobody states or corrects a frozen packet: the server writes it', async () => {
    for (const role of roles)
      expect(
        (await world.submit(role, sample('packet-frozen', 1))).body.problems.map(({ code }) => code),
      ).toContain('server-writes-this');
  });
  it('who may not read what a correction aims at is not told what it is', async () => {
    const paper = fact('documents', 1, onStrike(100));
    expect((await world.submit('clerk', paper)).status).toBe(201);
    const disguised = {
      ...correction(3, fact('link', 2, onStrike(100)), null),
      body: { targetId: paper.submissionId, targetKind: 'repair', reason: 'x', replacement: null },
    };
    const { status, body } = await world.submit('crew', disguised);
    expect(status).toBe(422);
    expect(body.problems).toMatchObject([
      { code: 'correction-of-another', path: 'body.targetKind', params: { targetKind: 'repair' } },
    ]);
    expect(JSON.stringify(body)).not.toContain('documents');
  });
  it('a clerk cannot take the place of a crew’s correction by calling a strike something else', async () => {
    await world.submit('crew', strike);
    const link = fact('link', 2, onStrike(100));
    const disguised = {
      ...correction(3, link, null),
      body: { targetId: strike.submissionId, targetKind: 'link', reason: 'x', replacement: null },
    };
    expect(await world.submit('clerk', disguised)).toMatchObject({
      status: 422,
      body: {
        problems: [
          {
            code: 'correction-of-other-kind',
            path: 'body.targetKind',
            params: { targetKind: 'link', kind: 'strike' },
          },
        ],
      },
    });
    expect(
      (await world.submit('crew', correction(4, strike, { ...strike.body, note: 'Right' }))).status,
    ).toBe(201);
    // A correction that comes before its target waits for it.
    expect((await world.submit('crew', correction(6, fact('repair', 5, onStrike(100)), null))).status).toBe(
      201,
    );
  });
  it('only a manager marks a trial', async () => {
    const trial = { ...strike, test: true };
    expect(await world.submit('crew', trial)).toMatchObject({
      status: 403,
      body: { problems: [{ code: 'test-needs-manager', path: 'test' }] },
    });
    expect((await world.submit('manager', trial)).status).toBe(201);
  });
  it('a trial corrects nothing, and nothing corrects it', async () => {
    await world.submit('crew', strike);
    const trial = fact('strike', 20, onStrike(101), {}, { test: true });
    await world.submit('manager', trial);
    const problemsOf = async (submission: Submission) => {
      const { status, body } = await world.submit('manager', submission);
      return [status, body.problems?.map(({ code, path }) => `${code} ${path}`)];
    };
    expect(await problemsOf(correction(21, strike, null, { test: true }))).toEqual([
      422,
      ['correction-not-trial test'],
    ]);
    expect(await problemsOf(correction(22, trial, null))).toEqual([
      422,
      ['correction-of-trial body.targetId'],
    ]);
    // The place for the real one is still free.
    expect((await world.submit('crew', correction(23, strike, null))).status).toBe(201);
  });
  it('a trial takes no claim’s number and no edition’s name', async () => {
    const body = { claimNumber: '2026-0042' };
    const edition = fact('rate-book', 32, onUtility);
    expect(
      (await world.submit('manager', fact('claim-opened', 30, onClaim(300), body, { test: true }))).status,
    ).toBe(201);
    expect((await world.submit('clerk', fact('claim-opened', 31, onClaim(301), body))).status).toBe(201);
    expect((await world.submit('manager', { ...edition, test: true })).status).toBe(201);
    expect((await world.submit('manager', { ...edition, submissionId: uuid(33) })).body).toMatchObject({
      submissionId: uuid(33),
      outcome: 'accepted',
    });
  });
  it('covers every kind there is', () => {
    expect(kinds).toHaveLength(factKinds.length + 1);
    expect(uuid(1)).toMatch(/-7/);
  });
});
