import { Duration } from 'aws-cdk-lib';
import { StartingPosition } from 'aws-cdk-lib/aws-lambda';
import { SqsDlq, type DynamoEventSourceProps } from 'aws-cdk-lib/aws-lambda-event-sources';
import type { IQueue } from 'aws-cdk-lib/aws-sqs';

/**
 * How a table's stream is followed where no record may be passed over: from its oldest, in small batches of which only
 * those that failed come again, parted until the one that is poison stands alone, and that one in a queue.
 */
export const everyRecord = (failures: IQueue): DynamoEventSourceProps => ({
  startingPosition: StartingPosition.TRIM_HORIZON,
  batchSize: 25,
  reportBatchItemFailures: true,
  bisectBatchOnError: true,
  retryAttempts: 8,
  maxRecordAge: Duration.hours(6),
  onFailure: new SqsDlq(failures),
});
