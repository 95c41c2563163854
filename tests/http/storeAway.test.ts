import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { localTableNames, startDynamodb, type EmbeddedDynamodb } from '../../infra/local/dynamodb.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { fact, onStrike } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';
import { ports } from '../support/ports.ts';

/** The embedded store is pulled away under the running handlers, over HTTP, and put back. */
const PORT = ports.storeAway;
let folder: string;
let store: EmbeddedDynamodb | null;
let world: World;
const put = async () => (store = await startDynamodb({ folder, port: PORT }));
const pullAway = async () => {
  await store?.stop();
  store = null;
};
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hsl-away-'));
  const { endpoint } = await put();
  // Fewer and shorter tries than in service, where a blip of seconds is waited out.
  const client = dynamodbClient(endpoint, {
    maxAttempts: 2,
    connectionTimeoutMs: 300,
    requestTimeoutMs: 1000,
  });
  world = await testWorld({ stores: dynamodbStores(client, localTableNames) });
});
afterAll(async () => {
  await pullAway();
  await rm(folder, { recursive: true, force: true });
});

describe('a store that is pulled away', () => {
  const strikes = Array.from({ length: 12 }, (_, index) =>
    fact('strike', index + 1, onStrike(index + 1), { hydrantId: `H-${index}` }),
  );

  it('is answered with 503 and try again, on every route that needs it, and loses nothing', async () => {
    for (const strike of strikes.slice(0, 6)) expect((await world.submit('crew', strike)).status).toBe(201);
    await pullAway();

    for (const strike of strikes.slice(6)) {
      const answer = await world.submit('crew', strike);
      expect([
        answer.status,
        answer.headers.get('retry-after'),
        answer.body.problems.map(({ code }) => code),
      ]).toEqual([503, '5', ['try-again']]);
    }
    const uploads = {
      subject: strikes[0]!.subject,
      submissionId: strikes[0]!.submissionId,
      sha256: 'a'.repeat(64),
    };
    expect((await world.ask('/api/evidence/uploads', 'crew', { body: uploads })).status).toBe(503);
    for (const path of [
      '/api/strikes',
      `/api/strikes/${strikes[0]!.submissionId}`,
      '/api/hydrants?find=H',
      '/api/models',
      '/api/job-codes',
      '/api/claims',
      `/api/evidence/${'a'.repeat(64)}`,
    ])
      expect([path, (await world.ask(path, 'manager')).status]).toEqual([path, 503]);
    expect(await world.ask('/api/health', null)).toMatchObject({
      status: 503,
      body: { status: 'failing', checks: { arithmetic: true, store: false } },
    });
    // What needs no store still answers.
    expect((await world.ask('/api/utility', null)).status).toBe(200);

    await put();
    for (const strike of strikes.slice(6)) expect((await world.submit('crew', strike)).status).toBe(201);
    for (const strike of strikes) expect((await world.submit('crew', strike)).status).toBe(200);
    for (const strike of strikes)
      expect(await world.stores.ledger.readStream(streamOf(strike.subject))).toHaveLength(1);
    expect((await world.ask('/api/strikes', 'crew')).body['strikes']).toHaveLength(12);
  });

  it('that comes back in the middle of a burst has each of them once', async () => {
    const burst = Array.from({ length: 60 }, (_, index) =>
      fact('strike', 500 + index, onStrike(500 + index), { hydrantId: `B-${index % 7}` }),
    );
    const answered = new Map<string, number>();
    const waiting = [...burst];
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const { status } = await world.submit('crew', next);
        if (status === 503) waiting.push(next);
        else answered.set(next.submissionId, status);
      }
    };
    const outage = (async () => {
      await new Promise((resolve) => setTimeout(resolve, 60));
      await pullAway();
      await new Promise((resolve) => setTimeout(resolve, 400));
      await put();
    })();
    await Promise.all([work(), work(), work(), work(), outage]);
    expect(answered.size).toBe(60);
    expect([...answered.values()].every((status) => status === 201 || status === 200)).toBe(true);
    for (const { subject } of burst)
      expect(await world.stores.ledger.readStream(streamOf(subject))).toHaveLength(1);
  });
});
