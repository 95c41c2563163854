import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { localTableNames, setCredentials } from '../../infra/local/dynamodb.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { killable, replayThroughCrash, type Killable } from '../support/killable.ts';
import { correction, fact, onHydrant, onStrike } from '../support/submissions.ts';
import { ports } from '../support/ports.ts';

const port = ports.crash;
let folder: string;
let server: Killable;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ledger-crash-'));
  server = killable(join(import.meta.dirname, '../support/dynaliteChild.ts'), [folder, String(port)]);
});
afterAll(async () => {
  await server.kill();
  await rm(folder, { recursive: true, force: true });
});

/** 500 submissions of a busy winter: 100 strikes with a party, a correction, a valve and an inspection each. */
function fiveHundred(): Submission[] {
  return Array.from({ length: 100 }, (_, index) => {
    const n = 1000 + index * 10;
    const strike = fact('strike', n, onStrike(n));
    const party = fact('party', n + 1, onStrike(n), { note: `Party ${n}` });
    return [
      strike,
      party,
      correction(n + 2, party, { ...party.body, note: `Corrected ${n}` }),
      fact('valve-operation', n + 3, onStrike(n)),
      fact('inspection', n + 4, onHydrant(`H-${n}`)),
    ];
  }).flat();
}

it(
  '500 submissions, the store killed in the middle and all replayed: each is there exactly once',
  { timeout: 120_000 },
  async () => {
    const endpoint = await server.start();
    setCredentials();
    const client = dynamodbClient(endpoint, {
      maxAttempts: 2,
      connectionTimeoutMs: 500,
      requestTimeoutMs: 5000,
    });
    const { ledger } = dynamodbStores(client, localTableNames);
    const items = fiveHundred();
    const { before, after } = await replayThroughCrash({
      items,
      send: (item) => ledger.accept(item, { recordedAt: new Date().toISOString(), deliveredBy: null }),
      server,
      parallel: 16,
      killAfter: 250,
    });

    // It did happen in the middle: some were answered, some were not.
    const unanswered = before.filter((answer) => answer === null).length;
    expect(unanswered).toBeGreaterThan(100);
    expect(before.filter((answer) => answer?.outcome === 'accepted').length).toBeGreaterThanOrEqual(250);
    after.forEach((answer, index) => {
      const earlier = before[index];
      // What was confirmed before the crash is a repeat with the first answer; the rest is new, or landed unseen.
      if (earlier?.outcome === 'accepted')
        expect(answer).toEqual({ outcome: 'repeat', recordedAt: earlier.recordedAt });
      else expect(['accepted', 'repeat']).toContain(answer.outcome);
    });

    const all: Recorded[] = [];
    for await (const page of ledger.readAll()) all.push(...page);
    const byId = (a: Submission, b: Submission): number => (a.submissionId < b.submissionId ? -1 : 1);
    expect(all.map(({ submission }) => submission).sort(byId)).toEqual([...items].sort(byId));
    expect(all.every(({ erased }) => !erased)).toBe(true);
    client.destroy();
  },
);
