import type { DynamoDBRecord } from 'aws-lambda';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingerprint } from '../../functions/project/fingerprint.ts';
import { projectStream } from '../../functions/project/project.ts';
import { createProjector } from '../../functions/project/projector.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn } from '../../functions/stores/dynamodb/stores.ts';
import type { Table } from '../../functions/stores/dynamodb/table.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { TableName } from '../../shared/deployment/tables.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { delivery, world, type World } from '../projections/support.ts';
import { randomSubmissions } from '../support/randomSubmissions.ts';
import { followShard, type Invoke, type Mapping } from './support/eventSource.ts';
import { flakyTable, type Luck } from './support/flakyTable.ts';
import { recordOf } from './support/records.ts';

/**
 * Facts accepted over a bad line, and their stream records delivered late, twice, in part, again from an earlier place,
 * by a function that is killed in the middle: what is kept then is what an in-order replay keeps, to the byte. Where a
 * delivery was given up, a queue and the marks say so, and the repair of the handbook ends there too.
 */
const hashOf = async ({ projections }: World): Promise<string> => (await fingerprint(projections)).sha256;

/** What becomes of one invocation: killed before, in the middle of, or after its work, as at its time limit. */
type End = 'fine' | 'killed-before' | 'killed-halfway' | 'killed-after';

const weighted = <T extends string>(fine: T, weight: number, others: readonly T[]): fc.Arbitrary<T> =>
  fc.oneof({ arbitrary: fc.constant(fine), weight }, { arbitrary: fc.constantFrom(...others), weight: 1 });

const mapping: Mapping = {
  BatchSize: 4,
  // Fewer than ours, so that the queue is seen as well.
  MaximumRetryAttempts: 1,
  BisectBatchOnFunctionError: true,
  FunctionResponseTypes: ['ReportBatchItemFailures'],
};

const drawn = randomSubmissions(14).chain((made) =>
  fc.record({
    order: fc.shuffledSubarray([...made], { minLength: made.length, maxLength: made.length }),
    /** After how many facts the streams are followed again. */
    every: fc.integer({ min: 1, max: 6 }),
    shards: fc.integer({ min: 1, max: 3 }),
    partsReported: fc.boolean(),
    /** How far before its place a shard is read again: its iterator was lost. */
    again: fc.infiniteStream(fc.nat(3)),
    luck: fc.infiniteStream(weighted<Luck>('fine', 60, ['fails', 'lands-unanswered', 'sent-twice'])),
    ends: fc.infiniteStream(weighted<End>('fine', 8, ['killed-before', 'killed-halfway', 'killed-after'])),
  }),
);
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const next = <T>(from: Iterator<T, unknown>): T => from.next().value as T;

/** A phone keeps a report until it was confirmed. */
async function handIn({ ledger }: World, submission: Submission): Promise<void> {
  for (;;)
    try {
      await ledger.accept(submission, delivery);
      return;
    } catch (error) {
      if (!(error instanceof StoreUnavailable)) throw error;
    }
}

async function live({ order, every, shards, partsReported, again, luck, ends }: Drawn) {
  const tables = new Map<TableName, Table>();
  const tableOf = (name: TableName): Table => tables.get(name) ?? tables.set(name, memoryTable()).get(name)!;
  const sound = world(storesOn(tableOf));
  const flaky = world(storesOn((name) => flakyTable(tableOf(name), () => next(luck))));

  const handle = createStreamHandler({ ...createProjector(flaky), log: () => undefined });
  const invoke: Invoke = async (event) => {
    const end = next(ends);
    if (end === 'killed-before') throw new Error('timed out');
    const half = Math.floor(event.Records.length / 2);
    const answer = await handle(end === 'killed-halfway' ? { Records: event.Records.slice(0, half) } : event);
    if (end !== 'fine') throw new Error('timed out');
    return answer;
  };

  const shardOf = (submission: Submission): number =>
    Buffer.from(streamOfSubmission(submission)).reduce((sum, byte) => sum + byte, 0) % shards;
  const records = Array.from({ length: shards }, (): DynamoDBRecord[] => []);
  const done = records.map(() => 0);
  const queued: (readonly DynamoDBRecord[])[] = [];
  for (let at = 0; at < order.length; at += every) {
    for (const [index, submission] of order.slice(at, at + every).entries()) {
      await handIn(flaky, submission);
      records[shardOf(submission)]!.push(recordOf(submission, at + index));
    }
    // The shards of a stream are followed at the same time.
    await Promise.all(
      records.map(async (shard, number) => {
        const from = Math.max(0, done[number]! - next(again));
        const followed = await followShard(shard.slice(from), mapping, invoke, partsReported);
        done[number] = shard.length;
        queued.push(...followed.queued);
      }),
    );
  }
  return { sound, queued };
}

/** The same facts, each projected as soon as it was taken, by a store that never fails. */
async function inOrder(order: readonly Submission[]): Promise<World> {
  const one = world();
  for (const submission of order) {
    await one.ledger.accept(submission, delivery);
    await projectStream(one, streamOfSubmission(submission));
  }
  return one;
}

describe('however its deliveries fail, repeat and interleave', { timeout: 240_000 }, () => {
  it('what is kept is what an in-order replay keeps, or a queue and the page say that it is not', async () => {
    let clean = 0;
    let given = 0;
    await fc.assert(
      fc.asyncProperty(drawn, async (run) => {
        const { sound, queued } = await live(run);
        const replayed = await hashOf(await inOrder(run.order));
        const same = (await hashOf(sound)) === replayed;
        if (queued.length === 0) {
          expect(same).toBe(true);
          expect(await sound.unprojected.list()).toEqual([]);
          clean += 1;
          return;
        }
        given += 1;
        // Never wrong in silence: the marks from which the public page knows what it lacks are still there.
        if (!same) expect(await sound.unprojected.list()).not.toEqual([]);
        // "npm run rebuild -- --write", as the handbook says of that queue.
        expect((await rebuild(sound, { write: true })).left).toEqual([]);
        expect(await hashOf(sound)).toBe(replayed);
        expect(await sound.unprojected.list()).toEqual([]);
      }),
      { numRuns: 300 },
    );
    // Both ends were seen.
    expect(clean).toBeGreaterThan(20);
    expect(given).toBeGreaterThan(5);
  });
});
