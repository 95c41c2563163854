import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { watchedEvents } from '../../../shared/deployment/watchedEvents.ts';
import { example, resourcesOf, synthesise, type Resource } from './synthesised.ts';

const settings = example();
const resources = resourcesOf(synthesise().service);
const ofType = (from: Record<string, Resource>, type: string) =>
  Object.entries(from).filter(([, { Type }]) => Type === type);
const alarms = ofType(resources, 'AWS::CloudWatch::Alarm');
const alarm = (name: string) => alarms.find(([id]) => id.startsWith(`Watch${name}Alarm`))?.[1].Properties;
const topicId = Object.keys(resources).find((id) => id.startsWith('OperatorsAlarms'))!;
const handbook = join(import.meta.dirname, '..', '..', '..');

describe('every alarm', () => {
  it.each(alarms)('%s says who is hurt and what to do, and where to read on', (_, { Properties }) => {
    const [hurt, todo, more] = (Properties['AlarmDescription'] as string).split('\n');
    expect(hurt).toMatch(/^WHO IS HURT: [A-Z].{30,}\.$/);
    expect(todo).toMatch(/^WHAT TO DO: [A-Z].{20,}\.$/);
    const [, page] = /^More: (docs\/operations\/[\w-]+\.md)$/.exec(more ?? '') ?? [];
    expect(existsSync(join(handbook, page ?? 'none'))).toBe(true);
    // CloudWatch's limit on a description.
    expect((Properties['AlarmDescription'] as string).length).toBeLessThanOrEqual(1024);
  });

  it.each(alarms)('%s tells the operators, and that it is over', (_, { Properties }) => {
    expect(Properties['AlarmActions']).toEqual([{ Ref: topicId }]);
    expect(Properties['OKActions']).toEqual([{ Ref: topicId }]);
  });

  it('stands on every queue of failures', () => {
    const watched = alarms.flatMap(([, { Properties }]) =>
      (Properties['Dimensions'] ?? []).flatMap(({ Name, Value }: { Name: string; Value: any }) =>
        Name === 'QueueName' ? [Value['Fn::GetAtt'][0]] : [],
      ),
    );
    expect(watched.sort()).toEqual(
      ofType(resources, 'AWS::SQS::Queue')
        .map(([id]) => id)
        .sort(),
    );
    expect(watched).toHaveLength(4);
  });

  it('and no other is there', () => {
    expect(alarms.map(([id]) => /^Watch(\w+)Alarm/.exec(id)?.[1]).sort()).toEqual(
      [
        'ApiFailing',
        'CannotSend',
        'DispatchBehind',
        'DispatchFailures',
        'DispatchNotTold',
        'DisplayFailures',
        'EvidenceGrowing',
        'LettersFailing',
        'LettersNotSent',
        'NobodyLooks',
        'PacketsFailing',
        'PageBehind',
        'PageNotPublished',
        'PageRefused',
        'ProjectFailures',
        'ProjectorBehind',
        'PublishFailures',
        'ReportsNotTaken',
        'UploadsHeldBack',
      ].sort(),
    );
  });
});

describe('the alarm', () => {
  it('of evidence that grows adds up the bytes of a day, and rings at half of what one sign-in may send', () => {
    const filters = ofType(resources, 'AWS::Logs::MetricFilter').map(([, { Properties }]) => Properties);
    const filter = filters.find(({ FilterPattern }) => FilterPattern.includes('"upload-allowed"'))!;
    expect(filter['MetricTransformations'][0]).toMatchObject({ MetricValue: '$.bytes' });
    expect(alarm('EvidenceGrowing')).toMatchObject({
      MetricName: filter['MetricTransformations'][0].MetricName,
      Statistic: 'Sum',
      Period: 86_400,
      // 20 GB, by the usual setting.
      Threshold: 10_000_000_000,
      ComparisonOperator: 'GreaterThanOrEqualToThreshold',
      TreatMissingData: 'notBreaching',
    });
    expect(alarm('UploadsHeldBack')).toMatchObject({ Statistic: 'Sum', Period: 86_400, Threshold: 1 });
  });

  it('of a page that stands still rings before readers are told not to rely on it, and when nothing is said at all', () => {
    const { everyMinutes, relyForMinutes } = settings.utility.publishing;
    const { Period, EvaluationPeriods, ...rest } = alarm('PageNotPublished')!;
    expect(Period).toBe(everyMinutes * 60);
    expect((Period * EvaluationPeriods) / 60).toBeLessThan(relyForMinutes);
    expect(rest).toMatchObject({
      ComparisonOperator: 'LessThanThreshold',
      Threshold: 1,
      TreatMissingData: 'breaching',
      MetricName: 'published',
    });
  });

  it('of a page that lacks reports rings at the second publication in a row that says so, and not for silence', () => {
    expect(alarm('PageBehind')).toMatchObject({
      MetricName: 'publishedBehind',
      Period: settings.utility.publishing.everyMinutes * 60,
      EvaluationPeriods: 2,
      Threshold: 1,
      ComparisonOperator: 'GreaterThanOrEqualToThreshold',
      TreatMissingData: 'notBreaching',
    });
  });

  it.each([
    ['DispatchNotTold', 'lateMessages'],
    ['LettersNotSent', 'lateLetters'],
    ['CannotSend', 'closedWays'],
  ])('%s rings at the first', (name, MetricName) => {
    expect(alarm(name)).toMatchObject({
      MetricName,
      Threshold: 1,
      ComparisonOperator: 'GreaterThanOrEqualToThreshold',
      EvaluationPeriods: 1,
      Statistic: 'Maximum',
    });
  });

  it('that nobody looks rings when the looking is silent', () => {
    expect(alarm('NobodyLooks')).toMatchObject({
      Statistic: 'SampleCount',
      TreatMissingData: 'breaching',
      ComparisonOperator: 'LessThanThreshold',
    });
  });

  it('of reports that are not taken adds up what may be missing', () => {
    const expression = alarm('ReportsNotTaken')!['Metrics'].find((one: any) => one.Expression)?.Expression;
    expect(expression).toBe('FILL(fault, 0) + FILL(away, 0) + FILL(crash, 0) + FILL(held, 0)');
  });

  it('of packets rings for a job that failed in order as for one whose process ended', () => {
    const [sum, ...parts] = alarm('PacketsFailing')!['Metrics'] as Record<string, any>[];
    expect(sum!['Expression']).toBe('FILL(failed, 0) + FILL(crash, 0)');
    expect(parts.map(({ MetricStat }) => MetricStat.Metric.MetricName)).toEqual(['packetFailed', 'Errors']);
  });
});

describe('what is counted', () => {
  const filters = ofType(resources, 'AWS::Logs::MetricFilter').map(([, { Properties }]) => Properties);

  it('are the events of the one list, each in the log of the function that writes it', () => {
    const writer = {
      published: 'publish',
      publishRefused: 'publish',
      publishedBehind: 'publish',
      requestFailed: 'submissions',
      storeUnavailable: 'submissions',
      packetFailed: 'packetJobs',
      lateMessages: 'outgoing',
      lateLetters: 'outgoing',
      closedWays: 'outgoing',
      uploadAllowed: 'evidence',
      uploadHeldBack: 'evidence',
    };
    expect(filters).toHaveLength(Object.keys(watchedEvents).length);
    for (const [name, { event, field }] of Object.entries(watchedEvents)) {
      const own = filters.find(({ MetricTransformations }) => MetricTransformations[0].MetricName === name)!;
      expect(own['FilterPattern']).toBe(`{ $.event = "${event}" }`);
      expect(own['MetricTransformations']).toEqual([
        {
          MetricName: name,
          // Its own a stage: two live in one account.
          MetricNamespace: 'Hydrants-prod-Service',
          MetricValue: field === null ? '1' : `$.${field}`,
        },
      ]);
      expect(own['LogGroupName'].Ref).toMatch(
        new RegExp(`^Function${writer[name as keyof typeof writer]}Log`),
      );
    }
  });
});

describe('operators', () => {
  it('are told by mail, by alarms of this account alone, over TLS', () => {
    const subscriptions = ofType(resources, 'AWS::SNS::Subscription').map(([, { Properties }]) => Properties);
    expect(subscriptions.filter(({ Protocol }) => Protocol === 'email')).toEqual(
      settings.operators.emails.map((Endpoint) => ({
        Protocol: 'email',
        Endpoint,
        TopicArn: { Ref: topicId },
      })),
    );
    const policy = ofType(resources, 'AWS::SNS::TopicPolicy').find(([id]) => id.startsWith('Operators'))![1];
    const statements = policy.Properties['PolicyDocument'].Statement as Record<string, unknown>[];
    expect(statements.filter(({ Effect }) => Effect === 'Allow')).toEqual([
      expect.objectContaining({
        Action: 'sns:Publish',
        Principal: { Service: 'cloudwatch.amazonaws.com' },
        Condition: { StringEquals: { 'aws:SourceAccount': { Ref: 'AWS::AccountId' } } },
      }),
    ]);
    expect(JSON.stringify(statements)).toContain('"aws:SecureTransport":"false"');
  });

  it('are told of cost at the sum of the settings', () => {
    const [[, budget]] = ofType(resources, 'AWS::Budgets::Budget') as [[string, Resource]];
    expect(budget.Properties['Budget']).toMatchObject({
      BudgetType: 'COST',
      TimeUnit: 'MONTHLY',
      BudgetLimit: { Amount: settings.operators.monthlyBudgetUsd, Unit: 'USD' },
    });
    for (const { Subscribers } of budget.Properties['NotificationsWithSubscribers'])
      expect(Subscribers).toEqual(
        settings.operators.emails.map((Address) => ({ Address, SubscriptionType: 'EMAIL' })),
      );
  });

  it('have one page to look at, with every alarm and every function on it', () => {
    const [[, dashboard]] = ofType(resources, 'AWS::CloudWatch::Dashboard') as [[string, Resource]];
    const body = JSON.stringify(dashboard.Properties['DashboardBody']);
    for (const [id] of alarms) expect(body).toContain(`"${id}"`);
    for (const [id] of ofType(resources, 'AWS::Lambda::Function').filter(([name]) =>
      name.startsWith('Function'),
    ))
      expect(body).toContain(`"${id}"`);
  });
});
