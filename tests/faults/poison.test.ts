import type { DynamoDBRecord } from 'aws-lambda';
import { beforeAll, describe, expect, it } from 'vitest';
import { runDispatch } from '../../functions/dispatchSend/run.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import { dispatchWorld, streamRecord } from '../support/dispatchWorld.ts';
import { fact, onStrike } from '../support/submissions.ts';
import { followShard, type Invoke } from './support/eventSource.ts';
import { mappingOf, resources } from './support/mappings.ts';
import { recordOf, sequenceNumber } from './support/records.ts';

/** Records that nothing can be made of, in the middle of others, with the settings that the template has. */
const streams = 60;
const poisoned = [0, 7, 31, 32, 59];
const records = Array.from({ length: streams }, (_, index) =>
  recordOf(fact('strike', index + 1, onStrike(index + 1)), index),
);
const nameOf = ({ dynamodb }: DynamoDBRecord): string => dynamodb!.Keys!['stream']!.S!;
const bad = new Set(poisoned.map((index) => nameOf(records[index]!)));
const numbers = (queued: readonly (readonly DynamoDBRecord[])[]): string[] =>
  queued.flat().map(({ dynamodb }) => dynamodb!.SequenceNumber!);

// Made once, and not within the time of whichever test is first.
beforeAll(() => void resources(), 120_000);

describe.each([
  ['the rest of a reported batch comes again whole', false],
  ['the rest of a reported batch is parted', true],
])('a record that is poison, where %s', (_, partsReported) => {
  it('ends in the queue after a bounded number of tries, and the rest goes on, in order', async () => {
    const projected: string[] = [];
    const tries = new Map<string, number>();
    const logged: LogEntry[] = [];
    const handle = createStreamHandler({
      project: async (stream) => {
        tries.set(stream, (tries.get(stream) ?? 0) + 1);
        if (bad.has(stream)) throw new Error('nothing can be made of it');
        projected.push(stream);
      },
      log: (entry) => void logged.push(entry),
    });
    const { queued } = await followShard(records, mappingOf('project'), handle, partsReported);
    for (const index of poisoned) expect(numbers(queued)).toContain(sequenceNumber(index));
    // Everything else was done, and for the first time in the order of the stream.
    const first = [...new Set(projected)];
    expect(first).toEqual(records.map(nameOf).filter((name) => !bad.has(name)));
    // One first try, and the retries that are set for each batch that it stands in.
    for (const name of bad)
      expect(tries.get(name)).toBeLessThanOrEqual((mappingOf('project').MaximumRetryAttempts + 1) * 6);
    expect(new Set(logged.map(({ event }) => event))).toEqual(new Set(['projection-failed']));
  });

  it('that kills the function in the middle of its batch stands alone in the queue', async () => {
    const done = new Set<string>();
    const invoke: Invoke = async ({ Records }) => {
      for (const record of Records) {
        // What ran out of time says nothing of those before it either.
        if (bad.has(nameOf(record))) throw new Error('Task timed out after 300.00 seconds');
        done.add(nameOf(record));
      }
      return { batchItemFailures: [] };
    };
    const { queued } = await followShard(records, mappingOf('project'), invoke, partsReported);
    expect(numbers(queued)).toEqual(poisoned.map(sequenceNumber));
    expect(done.size).toBe(streams - bad.size);
  });
});

it('without parting, what stands beside poison that kills would be lost with it: the setting is needed', async () => {
  const invoke: Invoke = async ({ Records }) => {
    if (Records.some((record) => bad.has(nameOf(record)))) throw new Error('Task timed out');
    return { batchItemFailures: [] };
  };
  const whole = { ...mappingOf('project'), BisectBatchOnFunctionError: false };
  const { queued } = await followShard(records, whole, invoke);
  expect(queued.flat().length).toBeGreaterThan(poisoned.length);
});

describe('the messages to dispatch', () => {
  it('of other hydrants are made and sent beside one of which none can be made', async () => {
    const world = dispatchWorld({ now: () => new Date('2026-03-04T02:30:00Z') });
    const struck = [1, 2, 3].map((number) =>
      fact('strike', number, onStrike(number), { hydrantId: `H-${number}` }),
    );
    await world.accept(...struck);
    const items = world.take();
    const { current } = world.deps;
    const hydrant = current.hydrant.bind(current);
    Object.assign(current, {
      hydrant: async (hydrantId: string) => {
        if (hydrantId === 'H-2') throw new Error('nothing can be made of it');
        return hydrant(hydrantId);
      },
    });
    const invoke: Invoke = ({ Records }) => runDispatch(world.deps, Records);
    const { queued } = await followShard(items.map(streamRecord), mappingOf('dispatchSend'), invoke);
    const keys = queued.flat().map(({ dynamodb }) => dynamodb!.Keys!['key']!.S);
    expect(keys).toContain('H-2');
    const texts = world.went.map(({ text }) => text).join('\n');
    expect(texts).toContain('H-1');
    expect(texts).toContain('H-3');
    expect(new Set(world.went.map(({ text, to }) => to + text)).size).toBe(world.went.length);
    expect(JSON.stringify(world.logged)).not.toContain('nothing can be made');
    expect(world.logged.some(({ event }) => event === 'dispatch-message-not-made')).toBe(true);
  });
});
