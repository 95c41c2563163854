import type { DynamoDBBatchResponse, DynamoDBRecord, DynamoDBStreamEvent } from 'aws-lambda';

/** How a mapping is set, by the names of `AWS::Lambda::EventSourceMapping`. */
export interface Mapping {
  readonly BatchSize: number;
  readonly MaximumRetryAttempts: number;
  readonly BisectBatchOnFunctionError: boolean;
  readonly FunctionResponseTypes: readonly string[];
}

export type Invoke = (event: DynamoDBStreamEvent) => Promise<DynamoDBBatchResponse>;

export interface Followed {
  /** Batches that were given up: what the failure queue is told of, each by its first and last record. */
  readonly queued: readonly (readonly DynamoDBRecord[])[];
  readonly invocations: number;
}

/**
 * What Lambda does with one shard of a table's stream, by the AWS Lambda developer guide ("Configuring partial batch
 * response with DynamoDB and Lambda", "Retain discarded records for a DynamoDB event source in Lambda"):
 *
 * - batches in order, the next only when the one before is done or given up;
 * - an invocation that fails is tried again, or parted in two where bisecting is on, which takes none of the tries;
 * - of a batch that reports failures the lowest number is where it goes on: what stands before it is done, and the rest
 *   comes again, whole, whether or not the function did it;
 * - an empty or unknown number means that all of it failed;
 * - after the last try the rest of the batch is given up and goes to the queue, as an address in the stream.
 *
 * The guide does not say whether the rest of a batch that was reported, not thrown, is parted too: `partsReported` is
 * either reading.
 */
export async function followShard(
  records: readonly DynamoDBRecord[],
  mapping: Mapping,
  invoke: Invoke,
  partsReported = false,
): Promise<Followed> {
  const queued: (readonly DynamoDBRecord[])[] = [];
  let invocations = 0;
  const reports = mapping.FunctionResponseTypes.includes('ReportBatchItemFailures');

  async function deliver(batch: readonly DynamoDBRecord[], triesLeft: number): Promise<void> {
    invocations += 1;
    const answer = await invoke({ Records: [...batch] }).then(
      (response) => (reports ? response.batchItemFailures : []),
      () => null,
    );
    if (answer?.length === 0) return;
    const numbers = batch.map(({ dynamodb }) => dynamodb?.SequenceNumber);
    const places = answer?.map(({ itemIdentifier }) => numbers.indexOf(itemIdentifier)) ?? [];
    const from = answer === null || places.includes(-1) ? 0 : Math.min(...places);
    const rest = batch.slice(from);
    const parted = mapping.BisectBatchOnFunctionError && (answer === null || partsReported);
    if (parted && rest.length > 1) {
      const middle = Math.ceil(rest.length / 2);
      await deliver(rest.slice(0, middle), triesLeft);
      return deliver(rest.slice(middle), triesLeft);
    }
    if (triesLeft === 0) return void queued.push(rest);
    return deliver(rest, triesLeft - 1);
  }

  for (let at = 0; at < records.length; at += mapping.BatchSize)
    await deliver(records.slice(at, at + mapping.BatchSize), mapping.MaximumRetryAttempts);
  return { queued, invocations };
}
