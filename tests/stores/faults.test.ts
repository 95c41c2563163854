import {
  BatchGetItemCommand,
  ConditionalCheckFailedException,
  DynamoDBClient,
  GetItemCommand,
  InternalServerError,
  ProvisionedThroughputExceededException,
  PutItemCommand,
  QueryCommand,
  RequestLimitExceeded,
  ResourceNotFoundException,
  ScanCommand,
  ThrottlingException,
  type AttributeValue,
} from '@aws-sdk/client-dynamodb';
import { mockClient } from 'aws-sdk-client-mock';
import { beforeEach, describe, expect, it } from 'vitest';
import { prefixedTableNames } from '../../functions/stores/dynamodb/createTables.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { Delivery } from '../../functions/stores/ledger/ledger.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { correction, fact, onStrike, uuid } from '../support/submissions.ts';

/** What a server does not do on demand: each fault, and what the stores must make of it. */
const client = new DynamoDBClient({ region: 'us-east-1', endpoint: 'http://127.0.0.1:1' });
const mock = mockClient(client);
const names = prefixedTableNames('');
const { ledger, unique, projections } = dynamodbStores(client, names);
const delivery: Delivery = { recordedAt: '2026-03-04T02:31:00.000Z', deliveredBy: null };
const bare = fact('inspection', 1, onStrike(1));
const personal = fact('party', 2, onStrike(1));

const metadata = { $metadata: { httpStatusCode: 400 }, message: 'm' };
const conditionFailed = () => new ConditionalCheckFailedException(metadata);

beforeEach(() => {
  mock.reset();
});

const coded = (code: string): Error => Object.assign(new Error(code), { code });
const named = (name: string): Error => Object.assign(new Error(name), { name });

describe('a store that does not answer is unavailable, whatever was asked of it', () => {
  const outages: readonly [string, Error][] = [
    ['throttled', new ThrottlingException(metadata)],
    ['over its throughput', new ProvisionedThroughputExceededException(metadata)],
    ['over the account limit', new RequestLimitExceeded(metadata)],
    ['internal error', new InternalServerError({ ...metadata, $metadata: { httpStatusCode: 500 } })],
    ['a proxy that answers 503', Object.assign(new Error('x'), { $metadata: { httpStatusCode: 503 } })],
    ['timed out', named('TimeoutError')],
    ['aborted', named('AbortError')],
    ['connection refused', coded('ECONNREFUSED')],
    ['connection reset', coded('ECONNRESET')],
    ['no such host', coded('ENOTFOUND')],
    ['hung up', new Error('socket hang up')],
    ['no address answered', new AggregateError([coded('ECONNREFUSED'), coded('ECONNREFUSED')])],
  ];
  it.each(outages)('%s', async (_name, error) => {
    mock.onAnyCommand().rejects(error);
    const everything: (() => Promise<unknown>)[] = [
      () => ledger.accept(bare, delivery),
      () => ledger.accept(personal, delivery),
      () => ledger.accept(correction(3, bare, null), delivery),
      () => ledger.readStream('strike:x'),
      () => ledger.forget('strike:x', uuid(1)),
      async () => {
        for await (const page of ledger.readAll()) expect(page).toBeUndefined();
      },
      () => unique.take('space', 'name', 'owner'),
      () => unique.names('space'),
      () => projections.get('p', 'k'),
      () => projections.list('p'),
      () => projections.versionOf('p', 'k'),
      () => projections.put('p', 'k', 1, 0),
      () => projections.remove('p', 'k', 1),
    ];
    for (const ask of everything) {
      const failure: unknown = await ask().then(
        () => 'answered',
        (thrown: unknown) => thrown,
      );
      expect(failure).toBeInstanceOf(StoreUnavailable);
      expect((failure as Error).cause).toBe(error);
    }
  });

  it('but a fault of ours stays what it is', async () => {
    const ours = [
      new ResourceNotFoundException(metadata),
      Object.assign(named('AccessDeniedException'), metadata),
      Object.assign(named('ValidationException'), metadata),
    ];
    for (const error of ours) {
      mock.onAnyCommand().rejects(error);
      await expect(ledger.accept(bare, delivery)).rejects.toBe(error);
      await expect(ledger.readStream('strike:x')).rejects.toBe(error);
    }
  });
});

describe('a conditional check that fails', () => {
  it('after our own write landed unseen is an acceptance, not a repeat', async () => {
    for (const sent of [bare, personal]) {
      mock.reset();
      let landed: Record<string, AttributeValue> | undefined;
      mock.on(PutItemCommand, { TableName: names.personal }).resolves({});
      mock
        .on(PutItemCommand, { TableName: names.submissions })
        .callsFake((input: { Item: typeof landed }) => {
          landed = input.Item;
          throw conditionFailed();
        });
      mock.on(GetItemCommand).callsFake(() => ({ Item: landed }));
      mock.on(QueryCommand).resolves({ Items: [] });
      expect(await ledger.accept(sent, delivery)).toEqual({
        outcome: 'accepted',
        recordedAt: delivery.recordedAt,
      });
    }
  });

  it('and then the read fails: unavailable, and nothing is said of the submission', async () => {
    mock.on(PutItemCommand).rejects(conditionFailed());
    mock.on(GetItemCommand).rejects(new ThrottlingException(metadata));
    await expect(ledger.accept(bare, delivery)).rejects.toThrow(StoreUnavailable);
  });

  it('reads what stands there with strong consistency', async () => {
    mock.on(PutItemCommand).rejects(conditionFailed());
    mock.on(GetItemCommand).resolves({
      Item: {
        stream: { S: streamOf(bare.subject) },
        entry: { S: bare.submissionId },
        submission: { S: JSON.stringify(bare) },
        recordedAt: { S: '2026-01-01T00:00:00Z' },
        attempt: { S: 'another' },
      },
    });
    expect(await ledger.accept(bare, delivery)).toEqual({
      outcome: 'repeat',
      recordedAt: '2026-01-01T00:00:00Z',
    });
    expect(mock.commandCalls(GetItemCommand).map(({ args }) => args[0].input.ConsistentRead)).toEqual([true]);
  });

  it('one conditional put accepts a fact that holds nothing personal: before it goes its mark, and no other request', async () => {
    mock.on(PutItemCommand).resolves({});
    await ledger.accept(bare, delivery);
    expect(mock.calls()).toHaveLength(2);
    expect(mock.commandCalls(PutItemCommand)[0]?.args[0].input.TableName).toBe(names.unprojected);
    expect(mock.commandCalls(PutItemCommand)[1]?.args[0].input).toMatchObject({
      TableName: names.submissions,
      ConditionExpression: 'attribute_not_exists(#condition)',
    });
  });

  it('the personal fields are nowhere in the row of the fact', async () => {
    mock.onAnyCommand().resolves({});
    await ledger.accept(personal, delivery);
    const all = mock.commandCalls(PutItemCommand).map(({ args }) => args[0].input);
    const puts = all.filter(({ TableName }) => TableName !== names.unprojected);
    expect(puts.map(({ TableName }) => TableName)).toEqual([names.personal, names.submissions]);
    expect(JSON.stringify(puts[1]?.Item)).not.toMatch(/AAA 111|invented driver|P-1|Officer 9|the ice/);
    // The erasable row names no more than its fact's hash; without its salt the hash can't be tried against a guess.
    expect(puts[0]?.Item?.['salt']?.S).toMatch(/^[0-9a-f]{64}$/);
    expect(JSON.stringify(puts[1]?.Item)).not.toContain(puts[0]?.Item?.['salt']?.S);
    expect(puts[0]?.Item?.['entry']?.S).toBe(
      `${personal.submissionId}:${puts[1]?.Item?.['personalHash']?.S}`,
    );
  });
});

describe('an answer in parts', () => {
  const row = (number: number): Record<string, AttributeValue> => ({
    stream: { S: 'strike:x' },
    entry: { S: uuid(number) },
    submission: { S: JSON.stringify(fact('inspection', number, onStrike(1))) },
    recordedAt: { S: delivery.recordedAt },
    attempt: { S: 'a' },
  });

  it('is read to its end, and a stream whose second page fails is unavailable, never half', async () => {
    const lastKey = { stream: { S: 'strike:x' }, entry: { S: uuid(1) } };
    mock
      .on(QueryCommand)
      .resolvesOnce({ Items: [row(1)], LastEvaluatedKey: lastKey })
      .resolvesOnce({ Items: [row(2)] })
      .resolvesOnce({ Items: [row(1)], LastEvaluatedKey: lastKey })
      .rejectsOnce(new ThrottlingException(metadata));
    expect(await ledger.readStream('strike:x')).toHaveLength(2);
    await expect(ledger.readStream('strike:x')).rejects.toThrow(StoreUnavailable);
    expect(mock.commandCalls(QueryCommand).every(({ args }) => args[0].input.ConsistentRead === true)).toBe(
      true,
    );
  });

  it('a scan whose second page fails is unavailable', async () => {
    const lastKey = { stream: { S: 'strike:x' }, entry: { S: uuid(1) } };
    mock
      .on(ScanCommand)
      .resolvesOnce({ Items: [row(1)], LastEvaluatedKey: lastKey })
      .rejectsOnce(coded('ECONNRESET'));
    const seen: unknown[] = [];
    const reading = (async () => {
      for await (const page of ledger.readAll()) seen.push(...page);
    })();
    await expect(reading).rejects.toThrow(StoreUnavailable);
    expect(seen).toHaveLength(1);
  });

  it('keys that a batch left unread are asked for again, and unavailable when they stay unread', async () => {
    const hash = 'f'.repeat(64);
    const key = {
      stream: { S: streamOf(personal.subject) },
      entry: { S: `${personal.submissionId}:${hash}` },
    };
    const query = {
      Items: [{ ...row(2), submission: { S: JSON.stringify(personal) }, personalHash: { S: hash } }],
    };
    mock.on(QueryCommand).resolves(query);
    const unread = { UnprocessedKeys: { [names.personal]: { Keys: [key] } } };
    mock
      .on(BatchGetItemCommand)
      .resolvesOnce(unread)
      .resolvesOnce({ Responses: { [names.personal]: [] } });
    expect(await ledger.readStream('strike:x')).toMatchObject([{ erased: true }]);
    expect(mock.commandCalls(BatchGetItemCommand)).toHaveLength(2);

    mock.on(BatchGetItemCommand).resolves(unread);
    await expect(ledger.readStream('strike:x')).rejects.toThrow(StoreUnavailable);
  });

  it('personal fields that do not match the hash of their fact are a fault, not an answer', async () => {
    const hash = 'f'.repeat(64);
    mock.on(QueryCommand).resolves({ Items: [{ ...row(2), personalHash: { S: hash } }] });
    mock.on(BatchGetItemCommand).resolves({
      Responses: {
        [names.personal]: [
          {
            stream: { S: 'strike:x' },
            entry: { S: `${uuid(2)}:${hash}` },
            salt: { S: 'ab' },
            fields: { S: '{"note":"changed by hand"}' },
          },
        ],
      },
    });
    await expect(ledger.readStream('strike:x')).rejects.toThrow(/do not match the hash/);
  });
});
