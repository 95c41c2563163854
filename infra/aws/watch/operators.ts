import { Stack } from 'aws-cdk-lib';
import { CfnBudget } from 'aws-cdk-lib/aws-budgets';
import { ServicePrincipal } from 'aws-cdk-lib/aws-iam';
import { Topic } from 'aws-cdk-lib/aws-sns';
import { EmailSubscription } from 'aws-cdk-lib/aws-sns-subscriptions';
import { Construct } from 'constructs';
import type { DeploymentSettings } from '../settings.ts';

/** Shares of the budget at which somebody is told: once it is spent, and once it looks as if it will be exceeded. */
const notices = [
  { notificationType: 'ACTUAL', threshold: 80 },
  { notificationType: 'FORECASTED', threshold: 100 },
] as const;

/**
 * Who is told when something is wrong: one topic, by email. Not encrypted with a key of its own: alarms hold our own
 * sentences and no data, and CloudWatch may not use the account's default key for topics.
 */
export class Operators extends Construct {
  readonly topic: Topic;

  constructor(scope: Construct, id: string, { operators, stage }: DeploymentSettings) {
    super(scope, id);
    const { account } = Stack.of(this);
    this.topic = new Topic(this, 'Alarms', { displayName: `Hydrants (${stage})`, enforceSSL: true });
    // Alarms of this account and of no other.
    this.topic.grantPublish(
      new ServicePrincipal('cloudwatch.amazonaws.com', {
        conditions: { StringEquals: { 'aws:SourceAccount': account } },
      }),
    );
    for (const email of operators.emails) this.topic.addSubscription(new EmailSubscription(email));
    new CfnBudget(this, 'Budget', {
      budget: {
        budgetType: 'COST',
        timeUnit: 'MONTHLY',
        budgetLimit: { amount: operators.monthlyBudgetUsd, unit: 'USD' },
      },
      notificationsWithSubscribers: notices.map((notice) => ({
        notification: { ...notice, comparisonOperator: 'GREATER_THAN', thresholdType: 'PERCENTAGE' },
        subscribers: operators.emails.map((address) => ({ address, subscriptionType: 'EMAIL' })),
      })),
    });
  }
}
