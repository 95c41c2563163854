import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTableNames, startDynamodb } from '../../infra/local/dynamodb.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { openDynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { fact, onStrike } from '../support/submissions.ts';
import { serve, type Served } from './support/child.ts';
import { ports } from '../support/ports.ts';

const PORT = ports.killed;
const HOW_MANY = 500;
let folder: string;
let server: Served | undefined;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hsl-killed-'));
});
afterEach(async () => {
  await server?.kill().catch(() => undefined);
  await rm(folder, { recursive: true, force: true });
});

// Fifty strikes on twenty-five hydrants, ten submissions each, so that streams and neighbourhoods are shared.
const submissions = Array.from({ length: HOW_MANY }, (_, index) => {
  const strike = 1000 + (index % 50);
  const hydrantId = `H-${index % 25}`;
  return index < 50
    ? fact('strike', index + 1, onStrike(strike), { hydrantId, photos: [] })
    : fact('expected-return', index + 1, onStrike(strike), { outageId: null });
});

const post = ({ origin, tokens }: Served, submission: object): Promise<Response | null> =>
  fetch(`${origin}/api/submissions`, {
    method: 'POST',
    headers: { authorization: `Bearer ${tokens.crew}`, 'content-type': 'application/json' },
    body: JSON.stringify(submission),
  }).catch(() => null);

/** Sends every submission, eight at a time, again and again until each was answered; as a phone's outbox does. */
async function sendAll(
  onAccepted: (count: number) => void,
  current: () => Served,
): Promise<Map<string, number>> {
  const accepted = new Map<string, number>();
  const waiting = [...submissions];
  const send = async (): Promise<void> => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const response = await post(current(), next);
      if (response?.status === 201) {
        accepted.set(next.submissionId, (accepted.get(next.submissionId) ?? 0) + 1);
        onAccepted(accepted.size);
      } else if (response === null || response.status === 503) {
        waiting.push(next);
        await new Promise((resolve) => setTimeout(resolve, 100));
      } else if (response.status !== 200)
        throw new Error(`answered ${response.status}: ${await response.text()}`);
    }
  };
  await Promise.all(Array.from({ length: 8 }, send));
  return accepted;
}

/** Looks through the embedded store alone, with no server of ours in between. */
async function look(): Promise<{ ids: string[]; differences: number }> {
  const store = await startDynamodb({ folder: join(folder, 'dynamodb'), port: 0 });
  try {
    const stores = openDynamodbStores({ endpoint: store.endpoint, tableNames: localTableNames });
    const ids: string[] = [];
    for await (const page of stores.ledger.readAll())
      ids.push(...page.map(({ submission }) => submission.submissionId));
    const { differences } = await rebuild(
      { ...stores, hydrantType: async () => 'unknown' },
      { write: false },
    );
    return { ids, differences: differences.length };
  } finally {
    await store.stop();
  }
}

describe('a server killed in the middle of 500 submissions', () => {
  it('and started again has each of them exactly once when all are sent again, and every projection right', async () => {
    server = await serve(folder, PORT);
    let kills = 0;
    const restart = async (): Promise<void> => {
      kills += 1;
      await server?.kill();
      server = await serve(folder, PORT);
      expect(server.replayed).toBe(true);
    };
    const restarts: Promise<void>[] = [];
    const accepted = await sendAll(
      (count) => {
        if (count === 150 || count === 320) restarts.push(restart());
      },
      () => server!,
    );
    await Promise.all(restarts);
    expect(kills).toBe(2);
    // An accepted submission whose answer was lost in a kill is answered as a repeat; none is accepted twice.
    expect([...accepted.values()].every((times) => times === 1)).toBe(true);
    expect(await server.close()).toBe(0);

    const { ids, differences } = await look();
    expect(ids.length).toBe(HOW_MANY);
    expect(new Set(ids)).toEqual(new Set(submissions.map(({ submissionId }) => submissionId)));
    expect(differences).toBe(0);
  }, 120_000);

  it('has lost nothing it had accepted, and the next start makes good what was not projected, with nothing sent again', async () => {
    server = await serve(folder, PORT);
    const alive = server;
    const accepted: string[] = [];
    // All at once, so that many are accepted and few are projected when the first answers come.
    await Promise.all(
      submissions.slice(0, 120).map(async (submission) => {
        const response = await post(alive, submission);
        if (response?.status !== 201) return;
        accepted.push(submission.submissionId);
        if (accepted.length === 20) await alive.kill();
      }),
    );
    const before = await look();
    expect(before.differences).toBeGreaterThan(0);

    server = await serve(folder, PORT);
    expect(server.replayed).toBe(true);
    expect(await server.close()).toBe(0);
    const after = await look();
    expect(after.ids).toEqual(expect.arrayContaining(accepted));
    expect(after.differences).toBe(0);
    // Closed in order, it has nothing to make good.
    server = await serve(folder, PORT);
    expect(server.replayed).toBe(false);
    await server.close();
  }, 120_000);
});
