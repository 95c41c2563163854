import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { Delivery } from '../../functions/stores/ledger/ledger.ts';
import { localTableNames, startDynamodb, type EmbeddedDynamodb } from '../../infra/local/dynamodb.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { faultyProxy, type FaultyProxy } from '../support/faultyProxy.ts';
import { fact, onStrike } from '../support/submissions.ts';

/** The real SDK with its own retries, over a line that loses requests, loses answers, hangs and fails. */
const delivery: Delivery = { recordedAt: '2026-03-04T02:31:00.000Z', deliveredBy: null };
let server: EmbeddedDynamodb;
let proxy: FaultyProxy;
let stores: TableStores;
let used = 100;

beforeAll(async () => {
  server = await startDynamodb({ folder: null, port: 0 });
  proxy = await faultyProxy(server.endpoint);
  const client = dynamodbClient(proxy.endpoint, {
    maxAttempts: 3,
    connectionTimeoutMs: 1000,
    requestTimeoutMs: 1000,
  });
  stores = dynamodbStores(client, localTableNames);
});
beforeEach(() => {
  proxy.fate = () => 'pass';
});
afterAll(async () => {
  await proxy.close();
  await server.stop();
});

const fresh = () => fact('party', (used += 1), onStrike(used));

describe('a bad line', () => {
  it('loses the answer of a write that landed: the SDK tries again and the answer is "accepted"', async () => {
    // Its mark, its erasable row, itself.
    for (const lost of [1, 2, 3]) {
      const sent = fresh();
      let puts = 0;
      proxy.fate = (operation) => (operation === 'PutItem' && (puts += 1) === lost ? 'lose-answer' : 'pass');
      expect(await stores.ledger.accept(sent, delivery)).toMatchObject({ outcome: 'accepted' });
      expect(puts).toBe(4);
      expect(await stores.ledger.readStream(streamOf(sent.subject))).toMatchObject([{ submission: sent }]);
    }
  });

  it('loses a number that was taken: taking it again finds it our own', async () => {
    let puts = 0;
    proxy.fate = (operation) => (operation === 'PutItem' && (puts += 1) === 1 ? 'lose-answer' : 'pass');
    expect(await stores.unique.take('line', '1', 'us')).toEqual({ taken: true, owner: 'us' });
    expect(puts).toBe(2);
  });

  it('loses the answer of a projection: the writer is told it lost, and must read again', async () => {
    let puts = 0;
    proxy.fate = (operation) => (operation === 'PutItem' && (puts += 1) === 1 ? 'lose-answer' : 'pass');
    expect(await stores.projections.put('line', 'a', 'x', 0)).toBe(false);
    expect(await stores.projections.get('line', 'a')).toEqual({ value: 'x', version: 1 });
  });

  it.each(['lose-request', 'hang', 'fail-500'] as const)('%s once: nobody notices', async (fate) => {
    const sent = fresh();
    let requests = 0;
    proxy.fate = () => ((requests += 1) === 3 ? fate : 'pass');
    expect(await stores.ledger.accept(sent, delivery)).toMatchObject({ outcome: 'accepted' });
    expect(await stores.ledger.readStream(streamOf(sent.subject))).toMatchObject([{ submission: sent }]);
  });

  it.each(['lose-request', 'lose-answer', 'hang', 'fail-500'] as const)(
    '%s always: unavailable after three tries, within seconds',
    async (fate) => {
      const sent = fresh();
      let requests = 0;
      proxy.fate = () => {
        requests += 1;
        return fate;
      };
      const began = performance.now();
      await expect(stores.ledger.accept(sent, delivery)).rejects.toThrow(StoreUnavailable);
      expect(performance.now() - began).toBeLessThan(10_000);
      expect(requests).toBe(3);
      proxy.fate = () => 'pass';
      const { outcome } = await stores.ledger.accept(sent, delivery);
      expect(outcome).toBe('accepted');
    },
  );
});
