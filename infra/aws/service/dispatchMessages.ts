import { Duration, Stack } from 'aws-cdk-lib';
import { Rule, Schedule } from 'aws-cdk-lib/aws-events';
import { LambdaFunction } from 'aws-cdk-lib/aws-events-targets';
import { Alias } from 'aws-cdk-lib/aws-kms';
import { FilterCriteria, FilterRule, type IFunction } from 'aws-cdk-lib/aws-lambda';
import { DynamoEventSource } from 'aws-cdk-lib/aws-lambda-event-sources';
import type { ITable } from 'aws-cdk-lib/aws-dynamodb';
import { EmailIdentity, Identity } from 'aws-cdk-lib/aws-ses';
import { SubscriptionFilter, Topic } from 'aws-cdk-lib/aws-sns';
import { SmsSubscription } from 'aws-cdk-lib/aws-sns-subscriptions';
import type { IQueue } from 'aws-cdk-lib/aws-sqs';
import { Construct } from 'constructs';
import { recipientAttribute } from '../../../shared/deployment/texts.ts';
import { partitions } from '../../../shared/projections/items.ts';
import type { UtilitySettings } from '../../../shared/utility/settings.ts';
import { everyRecord } from './everyRecord.ts';

/** What failed is tried again this often, minutes. */
const EVERY_MINUTES = 1;

/**
 * What messages to fire dispatch go through: the address that emails come from, and one topic whose subscriptions hold
 * the telephone numbers, so that the function may publish to that topic and to no number of its own choice. Without the
 * setting there is neither.
 */
export class DispatchMessages extends Construct {
  /** The one identity that these emails may come from. */
  readonly senderArn: string;
  readonly topicArn: string;
  private readonly isOn: boolean;

  constructor(scope: Construct, id: string, { dispatchMessages, digest }: UtilitySettings) {
    super(scope, id);
    this.isOn = dispatchMessages?.on === true;
    const stack = Stack.of(this);
    // The daily letters may have made it their own already.
    if (dispatchMessages && this.isOn && dispatchMessages.from !== digest?.from)
      new EmailIdentity(this, 'Sender', { identity: Identity.email(dispatchMessages.from) });
    this.senderArn = stack.formatArn({
      service: 'ses',
      resource: 'identity',
      resourceName: (this.isOn && dispatchMessages?.from) || 'nobody@unset.invalid',
    });
    if (!dispatchMessages || !this.isOn) {
      // A right to nothing.
      this.topicArn = stack.formatArn({ service: 'sns', resource: 'unset' });
      return;
    }
    const topic = new Topic(this, 'Texts', {
      displayName: 'Hydrants',
      enforceSSL: true,
      // The account's own key for this service; whoever may publish may use it.
      masterKey: Alias.fromAliasName(this, 'TextsKey', 'alias/aws/sns'),
    });
    for (const recipient of dispatchMessages.to)
      if (recipient.by === 'text')
        topic.addSubscription(
          new SmsSubscription(recipient.phone, {
            filterPolicy: {
              [recipientAttribute]: SubscriptionFilter.stringFilter({ allowlist: [recipient.recipientId] }),
            },
          }),
        );
    this.topicArn = topic.topicArn;
  }

  /** Woken by what changed of hydrants and strikes, and by the clock for what failed. */
  wake(fn: IFunction, projections: ITable, failures: () => IQueue): void {
    if (!this.isOn) return;
    fn.addEventSource(
      new DynamoEventSource(projections, {
        // What happened while nobody listened is found here too; the rule of age keeps it from being sent as new.
        ...everyRecord(failures()),
        filters: [
          FilterCriteria.filter({
            dynamodb: {
              Keys: {
                partition: {
                  S: FilterRule.or(partitions.hydrant, partitions.strike, partitions.joined),
                },
              },
            },
          }),
        ],
      }),
    );
    new Rule(this, 'Again', {
      description: 'Sends again what could not be sent to fire dispatch.',
      schedule: Schedule.rate(Duration.minutes(EVERY_MINUTES)),
      targets: [new LambdaFunction(fn, { retryAttempts: 0, maxEventAge: Duration.minutes(1) })],
    });
  }
}
