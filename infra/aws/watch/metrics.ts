import { Duration, Stack } from 'aws-cdk-lib';
import { type Metric, Stats } from 'aws-cdk-lib/aws-cloudwatch';
import { FilterPattern, MetricFilter } from 'aws-cdk-lib/aws-logs';
import type { IQueue } from 'aws-cdk-lib/aws-sqs';
import type { Construct } from 'constructs';
import { watchedEvents, type WatchedEvent } from '../../../shared/deployment/watchedEvents.ts';
import type { HouseFunction } from '../house/houseFunction.ts';

/** Counts the lines of one event in a function's log, or reads their number. */
export function loggedEvent(
  scope: Construct,
  { fn, log }: HouseFunction,
  name: WatchedEvent,
  periodMinutes: number,
): Metric {
  const { event, field } = watchedEvents[name];
  const filter = new MetricFilter(scope, `${fn.node.scope?.node.id ?? ''}-${name}`, {
    logGroup: log,
    // A namespace a stage: two of them live in one account.
    metricNamespace: Stack.of(scope).stackName,
    metricName: name,
    filterPattern: FilterPattern.stringValue('$.event', '=', event),
    metricValue: field === null ? '1' : `$.${field}`,
  });
  return filter.metric({
    period: Duration.minutes(periodMinutes),
    statistic: field === null ? Stats.SUM : Stats.MAXIMUM,
  });
}

/** Runs of a function that ended in an error. */
export const errorsOf = ({ fn }: HouseFunction, periodMinutes: number): Metric =>
  fn.metricErrors({ period: Duration.minutes(periodMinutes), statistic: Stats.SUM });

/** How far a function is behind the table that it follows, ms. */
export const behindOf = ({ fn }: HouseFunction, periodMinutes: number): Metric =>
  fn.metric('IteratorAge', { period: Duration.minutes(periodMinutes), statistic: Stats.MAXIMUM });

/** What lies in a queue of failures. */
export const laidAside = (queue: IQueue): Metric =>
  queue.metricApproximateNumberOfMessagesVisible({ period: Duration.minutes(5), statistic: Stats.MAXIMUM });
