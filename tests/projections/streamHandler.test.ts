import type { DynamoDBRecord, DynamoDBStreamEvent } from 'aws-lambda';
import { describe, expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { fact, onClaim, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { acceptAll, world } from './support.ts';

/**
 * A record as DynamoDB Streams hands it to Lambda. Shape: AWS Lambda Developer Guide, "Using AWS Lambda with Amazon
 * DynamoDB", example event; here with keys only.
 */
function record(sequence: number, stream: string, entry: string): DynamoDBRecord {
  return {
    eventID: `event-${sequence}`,
    eventName: 'INSERT',
    eventVersion: '1.1',
    eventSource: 'aws:dynamodb',
    awsRegion: 'us-east-1',
    eventSourceARN:
      'arn:aws:dynamodb:us-east-1:111122223333:table/submissions/stream/2026-01-01T00:00:00.000',
    dynamodb: {
      ApproximateCreationDateTime: 1_772_589_600,
      Keys: { stream: { S: stream }, entry: { S: entry } },
      SequenceNumber: `${1_000_000 + sequence}`,
      SizeBytes: 120,
      StreamViewType: 'KEYS_ONLY',
    },
  };
}
const event = (...Records: DynamoDBRecord[]): DynamoDBStreamEvent => ({ Records });

function handlerOver(project: (stream: string) => Promise<void>) {
  const logged: LogEntry[] = [];
  return { handle: createStreamHandler({ project, log: (entry) => logged.push(entry) }), logged };
}

describe('stream of the submissions table', () => {
  it('projects each ledger stream of a batch once, and says that nothing failed', async () => {
    const projected: string[] = [];
    const { handle } = handlerOver(async (stream) => void projected.push(stream));
    const answer = await handle(
      event(
        record(1, 'strike:a', uuid(1)),
        record(2, 'hydrant:H 1', uuid(2)),
        record(3, 'strike:a', `corrects:${uuid(1)}`),
        record(4, 'utility', uuid(3)),
      ),
    );
    expect(answer).toEqual({ batchItemFailures: [] });
    expect(projected).toEqual(['strike:a', 'hydrant:H 1', 'utility']);
  });

  it('answers the first record of each stream that failed; the others are done', async () => {
    const projected: string[] = [];
    const { handle, logged } = handlerOver(async (stream) => {
      if (stream === 'strike:b') throw new StoreUnavailable('a message with a name in it');
      projected.push(stream);
    });
    const answer = await handle(
      event(
        record(1, 'strike:a', uuid(1)),
        record(2, 'strike:b', uuid(2)),
        record(3, 'strike:b', uuid(3)),
        record(4, 'claim:c', uuid(4)),
      ),
    );
    expect(answer).toEqual({ batchItemFailures: [{ itemIdentifier: '1000002' }] });
    expect(projected).toEqual(['strike:a', 'claim:c']);
    expect(logged).toMatchObject([
      { level: 'error', event: 'projection-failed', stream: 'strike:b', errorName: 'StoreUnavailable' },
    ]);
    expect(JSON.stringify(logged)).not.toContain('name in it');
  });

  it('a record it cannot read fails by itself and ends in the failure queue', async () => {
    const { handle } = handlerOver(async () => undefined);
    const poison = { ...record(7, 'x', 'y'), dynamodb: { SequenceNumber: '1000007' } };
    expect(await handle(event(record(6, 'strike:a', uuid(1)), poison))).toEqual({
      batchItemFailures: [{ itemIdentifier: '1000007' }],
    });
    // Without a number the empty identifier stands for the whole batch (same guide, "Reporting batch item failures").
    expect(await handle(event({ eventName: 'INSERT' }))).toEqual({
      batchItemFailures: [{ itemIdentifier: '' }],
    });
    const one = world();
    const real = handlerOver((stream) => projectStream(one, stream));
    expect(await real.handle(event(record(8, 'nonsense', uuid(1))))).toEqual({
      batchItemFailures: [{ itemIdentifier: '1000008' }],
    });
  });

  it('records that come twice, out of order, or for facts of an older batch end the same', async () => {
    const one = world();
    const submissions = [
      fact('strike', 101, onStrike(1), { hydrantId: 'A' }),
      fact('strike', 102, onStrike(2), { hydrantId: 'A' }),
      fact('link', 103, onStrike(2), { sameAsStrikeId: uuid(1) }),
      fact('outage', 104, onHydrant('A')),
      fact('claim-opened', 105, onClaim(1)),
    ];
    await acceptAll(one, submissions);
    const records = submissions.map((submission, index) =>
      record(index + 1, streamOfSubmission(submission), submission.submissionId),
    );
    const { handle } = handlerOver((stream) => projectStream(one, stream));
    for (const batch of [records.slice(2).reverse(), records, records.slice(0, 1)])
      expect(await handle(event(...batch))).toEqual({ batchItemFailures: [] });
    expect((await rebuild(one, { write: false })).differences).toEqual([]);
    expect(streamOf(onStrike(1))).toBe(streamOfSubmission(submissions[0]!));
  });
});
