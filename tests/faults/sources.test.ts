import { beforeAll, describe, expect, it } from 'vitest';
import type { FunctionName } from '../../infra/aws/permissions.ts';
import { functionId, ofType, resources } from './support/mappings.ts';

/**
 * Everything that starts a function and waits for no answer, and where what fails ends: tried a bounded number of times,
 * then in a queue on which an alarm stands, or seen missing by an alarm that needs no queue.
 */
beforeAll(() => void resources(), 120_000);

/** The function that a part of the template names. */
function namedIn(part: unknown): FunctionName {
  const text = JSON.stringify(part);
  const [, name] = /"Function(\w+?)Handler/.exec(text) ?? [];
  if (name === undefined) throw new Error(`no function in ${text}`);
  return name as FunctionName;
}
const queueOf = (destination: unknown): string | undefined =>
  (destination as { 'Fn::GetAtt'?: [string] } | undefined)?.['Fn::GetAtt']?.[0];
const alarmNames = (): string[] =>
  ofType('AWS::CloudWatch::Alarm').map(([id]) => /^Watch(\w+?)Alarm/.exec(id)?.[1] ?? '');
/** Queues that ring. */
const watchedQueues = (): unknown[] =>
  ofType('AWS::CloudWatch::Alarm').flatMap(([, { Properties }]) =>
    ((Properties['Dimensions'] ?? []) as { Name: string; Value: { 'Fn::GetAtt': [string] } }[])
      .filter(({ Name }) => Name === 'QueueName')
      .map(({ Value }) => Value['Fn::GetAtt'][0]),
  );

describe('every stream that is followed', () => {
  const mappings = () => ofType('AWS::Lambda::EventSourceMapping').map(([, { Properties }]) => Properties);

  it('is one of these three', () => {
    expect(
      mappings()
        .map(({ FunctionName: fn }) => namedIn(fn))
        .sort(),
    ).toEqual(['dispatchSend', 'project', 'publish']);
  });

  it('is tried again a bounded number of times and hours, and ends in a queue that rings', () => {
    for (const mapping of mappings()) {
      const { MaximumRetryAttempts: tries, MaximumRecordAgeInSeconds: age } = mapping;
      // -1, Lambda's default, would hold up the shard until its records are gone, which is after 24 hours.
      expect(tries).toBeGreaterThan(0);
      expect(tries).toBeLessThanOrEqual(10);
      expect(age).toBeGreaterThanOrEqual(60);
      expect(age).toBeLessThan(24 * 3600);
      expect(watchedQueues()).toContain(queueOf(mapping['DestinationConfig'].OnFailure.Destination));
    }
  });

  it('of which no record may be passed over is parted at what fails, and starts at its oldest', () => {
    for (const mapping of mappings().filter(({ FunctionName: fn }) => namedIn(fn) !== 'publish'))
      expect(mapping).toMatchObject({
        BisectBatchOnFunctionError: true,
        FunctionResponseTypes: ['ReportBatchItemFailures'],
        StartingPosition: 'TRIM_HORIZON',
      });
  });

  it('by the publisher is one event however many records it has: its batch is never parted, and the clock makes it good', () => {
    const publish = mappings().find(({ FunctionName: fn }) => namedIn(fn) === 'publish')!;
    expect(publish['FunctionResponseTypes']).toBeUndefined();
    expect(publish['BisectBatchOnFunctionError']).toBeUndefined();
    expect(alarmNames()).toContain('PageNotPublished');
  });

  it('is followed by one that may write to its queue', () => {
    for (const mapping of mappings()) {
      const queue = queueOf(mapping['DestinationConfig'].OnFailure.Destination)!;
      const grants = ofType('AWS::IAM::Policy').filter(
        ([id, { Properties }]) =>
          id.startsWith(`Function${namedIn(mapping['FunctionName'])}`) &&
          JSON.stringify(Properties).includes('sqs:SendMessage') &&
          JSON.stringify(Properties).includes(queue),
      );
      expect(grants).toHaveLength(1);
    }
  });
});

/**
 * What is started by the clock, by an arrival or by another function: what of it ends in a queue, and which alarm sees
 * that it did not do its work.
 */
const others: readonly [FunctionName, 'queue' | 'no queue', string][] = [
  ['digest', 'no queue', 'LettersFailing'],
  ['dispatchSend', 'no queue', 'DispatchNotTold'],
  ['display', 'queue', 'DisplayFailures'],
  ['outgoing', 'no queue', 'NobodyLooks'],
  ['packetJobs', 'no queue', 'PacketsFailing'],
  ['publish', 'no queue', 'PageNotPublished'],
];

describe('everything else that is started and waits for no answer', () => {
  const rules = () =>
    ofType('AWS::Events::Rule').flatMap(
      ([, { Properties }]) => Properties['Targets'] as Record<string, any>[],
    );
  const schedules = () =>
    ofType('AWS::Scheduler::Schedule').map(
      ([, { Properties }]) => Properties['Target'] as Record<string, any>,
    );

  it('is one of these', () => {
    const started = [
      ...rules().map((target) => namedIn(target['Arn'])),
      ...schedules().map((target) => namedIn(target['Arn'])),
      'packetJobs',
    ];
    expect(started.sort()).toEqual(others.map(([name]) => name));
  });

  it('is tried a bounded number of times, and not when it is too late to be of use', () => {
    for (const { RetryPolicy } of [...rules(), ...schedules()]) {
      expect(RetryPolicy.MaximumRetryAttempts).toBeLessThanOrEqual(4);
      expect(RetryPolicy.MaximumEventAgeInSeconds).toBeLessThanOrEqual(6 * 3600);
    }
  });

  it.each(others)('%s: %s, and the alarm %s', (name, kept, alarm) => {
    expect(alarmNames()).toContain(alarm);
    const target = rules().find((one) => namedIn(one['Arn']) === name);
    const configured = ofType('AWS::Lambda::EventInvokeConfig').find(
      ([, { Properties }]) => Properties['FunctionName']?.Ref === functionId(name),
    )?.[1].Properties;
    if (kept === 'no queue') return;
    // Refused by Lambda, and failed in it: the same queue.
    const queues = [
      target?.['DeadLetterConfig'].Arn,
      configured?.['DestinationConfig'].OnFailure.Destination,
    ];
    for (const queue of queues) expect(watchedQueues()).toContain(queueOf(queue));
  });

  it('and every function that is asked through the gateway rings when it fails', () => {
    expect(alarmNames()).toEqual(expect.arrayContaining(['ReportsNotTaken', 'ApiFailing']));
  });
});
