import type { DynamoDBBatchResponse, DynamoDBRecord, DynamoDBStreamEvent } from 'aws-lambda';
import { tables } from '../../shared/deployment/tables.ts';
import type { Stream } from '../../shared/submissions/envelope.ts';
import { describeError, type Log } from '../log/log.ts';

export interface StreamHandlerDeps {
  readonly project: (stream: Stream) => Promise<void>;
  readonly log: Log;
}

export type StreamHandler = (event: DynamoDBStreamEvent) => Promise<DynamoDBBatchResponse>;

/**
 * Projects what a batch of the submissions table's stream has touched: each ledger stream once, however many of its
 * facts are in the batch. A ledger stream that fails is answered by its first record, so that the service delivers
 * again from there; the others are done and doing them twice is harmless. A record that names no stream fails too,
 * and ends in the failure queue.
 */
export function createStreamHandler({ project, log }: StreamHandlerDeps): StreamHandler {
  return async ({ Records: records }) => {
    const failed: string[] = [];
    for (const [stream, [first]] of Map.groupBy(records, streamOfRecord)) {
      if (first === undefined) continue;
      try {
        if (stream === null) throw new Error('a stream record without a key');
        await project(stream);
      } catch (error) {
        // The stream's name holds ids and nothing personal.
        log({ level: 'error', event: 'projection-failed', stream: stream ?? '', ...describeError(error) });
        failed.push(sequenceNumberOf(first));
      }
    }
    return { batchItemFailures: failed.map((itemIdentifier) => ({ itemIdentifier })) };
  };
}

const streamOfRecord = ({ dynamodb }: DynamoDBRecord): Stream | null =>
  dynamodb?.Keys?.[tables.submissions.partitionKey]?.S ?? null;

/** An empty identifier tells the service that the whole batch failed, which is what a record without a number means. */
const sequenceNumberOf = ({ dynamodb }: DynamoDBRecord): string => dynamodb?.SequenceNumber ?? '';
