import { Duration, type Stack } from 'aws-cdk-lib';
import { Rule, Schedule } from 'aws-cdk-lib/aws-events';
import { LambdaFunction } from 'aws-cdk-lib/aws-events-targets';
import { EventInvokeConfig, StartingPosition } from 'aws-cdk-lib/aws-lambda';
import { SqsDestination } from 'aws-cdk-lib/aws-lambda-destinations';
import { DynamoEventSource, SqsDlq } from 'aws-cdk-lib/aws-lambda-event-sources';
import { Queue, QueueEncryption } from 'aws-cdk-lib/aws-sqs';
import { COPY_PREFIX } from '../../../shared/evidence/displayCopy.ts';
import type { UtilitySettings } from '../../../shared/utility/settings.ts';
import type { DataStack } from '../data/dataStack.ts';
import type { HouseFunction } from '../house/houseFunction.ts';
import type { FunctionName } from '../permissions.ts';
import type { FailureQueue } from '../watch/alarmed.ts';
import { CHECKED_EVERY_MINUTES } from '../watch/alarms.ts';
import { everyRecord } from './everyRecord.ts';

/** What follows of itself: by a table's stream, by an arrival, by the clock. What cannot be worked off ends in a queue, never in silence. */
export class Following {
  /** Every queue of failures; an alarm stands on each. */
  readonly queues: Partial<Record<FailureQueue, Queue>> = {};
  private readonly stack: Stack;
  private readonly data: DataStack;
  private readonly functions: Readonly<Record<FunctionName, HouseFunction>>;

  constructor(stack: Stack, data: DataStack, functions: Readonly<Record<FunctionName, HouseFunction>>) {
    this.stack = stack;
    this.data = data;
    this.functions = functions;
  }

  /** Facts → projections → pages. */
  projectAndPublish(everyMinutes: number): void {
    const { project, publish } = this.functions;
    project.fn.addEventSource(
      new DynamoEventSource(this.data.tables.submissions, everyRecord(this.failures('ProjectFailures'))),
    );
    // The publisher reads the current state, not the change, so a hundred changes are one publishing.
    publish.fn.addEventSource(
      new DynamoEventSource(this.data.tables.projections, {
        startingPosition: StartingPosition.LATEST,
        batchSize: 1000,
        maxBatchingWindow: Duration.seconds(5),
        retryAttempts: 2,
        maxRecordAge: Duration.minutes(10),
        onFailure: new SqsDlq(this.failures('PublishFailures')),
      }),
    );
    new Rule(this.stack, 'PublishAnyway', {
      description:
        'Publishes the public pages anew even when nothing changed, so that their age can be trusted.',
      schedule: Schedule.rate(Duration.minutes(everyMinutes)),
      targets: [new LambdaFunction(publish.fn, { retryAttempts: 1, maxEventAge: Duration.minutes(5) })],
    });
  }

  /** An original arrives → its display copy. The copies themselves make no event for it. */
  showArrivals(): void {
    const { fn } = this.functions.display;
    const failures = this.failures('DisplayFailures');
    new EventInvokeConfig(this.stack, 'DisplayTries', {
      function: fn,
      retryAttempts: 2,
      maxEventAge: Duration.hours(6),
      onFailure: new SqsDestination(failures),
    });
    new Rule(this.stack, 'Arrivals', {
      description: 'Makes the display copy of a photo that has arrived in the evidence store.',
      eventPattern: {
        source: ['aws.s3'],
        detailType: ['Object Created'],
        detail: {
          bucket: { name: [this.data.evidence.bucketName] },
          object: { key: [{ 'anything-but': { prefix: COPY_PREFIX } }] },
        },
      },
      targets: [
        new LambdaFunction(fn, {
          retryAttempts: 4,
          maxEventAge: Duration.hours(6),
          deadLetterQueue: failures,
        }),
      ],
    });
  }

  /** Where nothing is to go out, nothing is looked after. */
  lookAtOutgoing({ digest, dispatchMessages }: UtilitySettings): void {
    if (!digest && !dispatchMessages?.on) return;
    new Rule(this.stack, 'LookAtOutgoing', {
      description:
        'Looks whether letters and messages to fire dispatch go out, and whether the account may send.',
      schedule: Schedule.rate(Duration.minutes(CHECKED_EVERY_MINUTES)),
      targets: [
        new LambdaFunction(this.functions.outgoing.fn, {
          retryAttempts: 0,
          maxEventAge: Duration.minutes(2),
        }),
      ],
    });
  }

  failures(id: FailureQueue): Queue {
    return (this.queues[id] ??= new Queue(this.stack, id, {
      encryption: QueueEncryption.SQS_MANAGED,
      enforceSSL: true,
      retentionPeriod: Duration.days(14),
    }));
  }
}
