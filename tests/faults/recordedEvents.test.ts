import { createServer, type Server } from 'node:http';
import { mkdtemp, rm } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInNewContext } from 'node:vm';
import type { APIGatewayProxyEventV2, DynamoDBStreamEvent } from 'aws-lambda';
import { exportJWK, generateKeyPair } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handler as digest } from '../../functions/digest/handler.ts';
import { handler as dispatchSend } from '../../functions/dispatchSend/handler.ts';
import { handler as display } from '../../functions/display/handler.ts';
import { logTo } from '../../functions/log/log.ts';
import { handler as project } from '../../functions/project/handler.ts';
import { handler as publish } from '../../functions/publish/handler.ts';
import { evidenceKey } from '../../functions/stores/evidence/byHash.ts';
import { handler as submissions } from '../../functions/submissions/handler.ts';
import { evidenceStore, tables as stores } from '../../functions/wiring.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { localTableNames, startDynamodb, type EmbeddedDynamodb } from '../../infra/local/dynamodb.ts';
import { createIssuer, developmentAudience, developmentIssuer } from '../../infra/local/issuer.ts';
import { environmentNames as names } from '../../shared/deployment/environment.ts';
import { tables, type TableName } from '../../shared/deployment/tables.ts';
import { partitions } from '../../shared/projections/items.ts';
import { demoClaim, demoPhotos } from '../support/demoClaim.ts';
import { declaredExhibits } from '../../shared/evidence/declared.ts';
import { fact, onStrike, uuid } from '../support/submissions.ts';
import { ofType } from './support/mappings.ts';
import { recorded } from './support/records.ts';

/** The events as AWS documents them, whole, to the handlers that are deployed. */
let folder: string;
let dynamodb: EmbeddedDynamodb;
let keys: Server;
let token: string;
const lines: string[] = [];
const url = (...path: string[]): string => pathToFileURL(join(folder, ...path)).href;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'recorded-'));
  dynamodb = await startDynamodb({ folder: null, port: 0 });
  const { privateKey } = await generateKeyPair('ES256', { extractable: true });
  const issuer = await createIssuer({ ...(await exportJWK(privateKey)), kid: 'k', alg: 'ES256' });
  keys = createServer((_, response) => response.end(JSON.stringify(issuer.keySet)));
  await new Promise<void>((resolve) => keys.listen(0, '127.0.0.1', resolve));
  token = await issuer.tokenFor({ personId: 'w-7', name: 'A Worker', roles: ['crew'] });
  Object.assign(process.env, {
    ...Object.fromEntries(
      (Object.keys(tables) as TableName[]).map((table) => [
        tables[table].environment,
        localTableNames[table],
      ]),
    ),
    [names.utility]: JSON.stringify(demoUtility),
    [names.dynamodbEndpoint]: dynamodb.endpoint,
    [names.evidenceUrl]: url('evidence'),
    [names.publishedUrl]: url('published'),
    [names.inventoryUrl]: url('inventory'),
    [names.networkUrl]: url('network'),
    [names.evidenceLinkBase]: '/local/evidence',
    [names.evidenceLinkSecret]: 's'.repeat(32),
    [names.tokenIssuer]: developmentIssuer,
    [names.tokenAudience]: developmentAudience,
    [names.tokenKeysUrl]: `http://127.0.0.1:${(keys.address() as AddressInfo).port}/`,
    [names.mail]: url('mail'),
    [names.texts]: url('mail'),
  });
  logTo((line) => void lines.push(line));
}, 60_000);
afterAll(async () => {
  await dynamodb.stop();
  keys.close();
  await rm(folder, { recursive: true, force: true });
});

/** A report through the gateway: its fields around ours. */
function reported(body: unknown): APIGatewayProxyEventV2 {
  const event = recorded<APIGatewayProxyEventV2>('http-api-v2');
  return {
    ...event,
    headers: { ...event.headers, authorization: `Bearer ${token}` },
    body: JSON.stringify(body),
  };
}
const strike = fact('strike', 1, onStrike(1), { hydrantId: 'HY-0014', photos: [] });

describe('the gateway’s event (HTTP API, format 2.0)', () => {
  it('brings a report in, once, however often it comes', async () => {
    expect((await submissions(reported(strike))).statusCode).toBe(201);
    expect((await submissions(reported(strike))).statusCode).toBe(200);
  });

  it('is believed for the token that it carries, and not for what the gateway says of it', async () => {
    const event = reported(strike);
    const { authorization: _, ...headers } = event.headers;
    const claims = { sub: 'w-7', 'cognito:groups': '[manager]' };
    const vouched = { ...event.requestContext, authorizer: { jwt: { claims, scopes: [] } } };
    const answer = await submissions({
      ...event,
      headers,
      requestContext: vouched,
    });
    expect(answer.statusCode).toBe(401);
  });

  it('with the example’s own body is answered with what is wrong', async () => {
    const event = { ...reported(strike), body: recorded<{ body: string }>('http-api-v2').body };
    const answer = await submissions(event);
    expect(answer.statusCode).toBe(400);
    expect(JSON.parse(answer.body ?? '{}')).toMatchObject({ problems: [expect.anything()] });
  });
});

describe('the table’s stream', () => {
  it('projects what its keys name; the second record’s stream is empty and nothing fails', async () => {
    expect(await project(recorded<DynamoDBStreamEvent>('dynamodb-stream'))).toEqual({
      batchItemFailures: [],
    });
    const kept = await stores().projections.get(partitions.hydrant, 'HY-0014');
    expect(kept?.value).toMatchObject({ inService: false });
    expect(await stores().unprojected.list()).toEqual([]);
  });

  it('answers the number of a record that it can make nothing of, as the service wrote it', async () => {
    const event = recorded<DynamoDBStreamEvent>('dynamodb-stream');
    const [first, second] = event.Records;
    second!.dynamodb!.Keys = { stream: { S: 'nothing of ours' }, entry: { S: uuid(2) } };
    expect(await project({ Records: [first!, second!] })).toEqual({
      batchItemFailures: [{ itemIdentifier: '4421584500000000017450439092' }],
    });
  });

  it('of the projections tells dispatch of a hydrant, and leaves the rest alone', async () => {
    const event = recorded<DynamoDBStreamEvent>('dynamodb-stream');
    const [first, second] = event.Records;
    first!.dynamodb!.Keys = { partition: { S: partitions.hydrant }, key: { S: 'HY-0014' } };
    second!.dynamodb!.Keys = { partition: { S: partitions.claim }, key: { S: uuid(9) } };
    expect(await dispatchSend(event)).toMatchObject({ batchItemFailures: [] });
    expect((await stores().notices.of('hydrant:HY-0014')).map(({ value }) => value.what)).toEqual(['out']);
  });
});

describe('what the clock brings', () => {
  it('an EventBridge rule’s event wakes the messages, which have no records then', async () => {
    const run = await dispatchSend(recorded('scheduled-rule'));
    expect(run).toMatchObject({ batchItemFailures: [] });
  });

  it('the Scheduler’s event wakes the letters: the handler reads nothing of it', async () => {
    expect(digest).toHaveLength(0);
    expect(publish).toHaveLength(0);
    const report = await (digest as (event: unknown) => ReturnType<typeof digest>)(recorded('scheduler'));
    expect(report).toMatchObject({ failed: 0, dead: 0 });
  });
});

describe('an arrival in the evidence store', () => {
  const photo = declaredExhibits(
    demoClaim().submissions.find((submission) => declaredExhibits(submission).length > 0)!,
  )[0]!.sha256;
  const arrived = (key: string) => {
    const event = recorded<{ detail: { object: { key: string; size: number } } }>('s3-object-created');
    event.detail.object.key = key;
    return event;
  };

  it('gets its copy, once, however often the event comes', async () => {
    const evidence = await evidenceStore();
    await evidence.put((await demoPhotos.get(photo))!, 'image/jpeg');
    await display(arrived(evidenceKey(photo)));
    const copy = await evidence.copies.read(photo);
    expect(copy?.jpeg).not.toBeNull();
    await display(arrived(evidenceKey(photo)));
    expect(await evidence.copies.read(photo)).toEqual(copy);
  });

  it('that no submission names is kept and gets a copy too; nothing else comes of it', async () => {
    // Any photo of the demo that the ledger here knows nothing of: it knows of none.
    const facts = [];
    for await (const page of stores().ledger.readAll())
      facts.push(...page.flatMap(({ submission }) => declaredExhibits(submission)));
    expect(facts).toEqual([]);
    expect(await stores().projections.list(partitions.exhibits)).toEqual([]);
    expect(await (await evidenceStore()).has(photo)).toBe(true);
  });

  it('of a file that is no picture ends with a record that says so, and is not tried again', async () => {
    const evidence = await evidenceStore();
    const { sha256 } = await evidence.put(Buffer.from('no picture at all'), 'image/jpeg');
    await display(arrived(evidenceKey(sha256)));
    expect(await evidence.copies.readRecord(sha256)).toMatchObject({ picture: { code: 'none' } });
  });

  it('that is not there (an event before its object) fails, so that it comes again', async () => {
    await expect(display(arrived(evidenceKey('ab'.repeat(32))))).rejects.toThrow('not there');
    // The example's own key is none of ours: passed over.
    await display(recorded('s3-object-created'));
  });

  it('whose store is away fails too', async () => {
    const evidence = await evidenceStore();
    const get = evidence.get.bind(evidence);
    Object.assign(evidence, { get: () => Promise.reject(new Error('away')) });
    const { sha256 } = await evidence.put(Buffer.from('another'), 'image/jpeg');
    await expect(display(arrived(evidenceKey(sha256)))).rejects.toThrow();
    Object.assign(evidence, { get });
  });
});

it('CloudFront’s event passes through the edge as it came, but for a preflight', () => {
  const [, { Properties }] = ofType('AWS::CloudFront::Function').find(([, one]) =>
    (one.Properties['FunctionCode'] as string).includes('OPTIONS'),
  )!;
  const run = runInNewContext(`${Properties['FunctionCode'] as string}; handler`) as (
    event: unknown,
  ) => unknown;
  const event = recorded<{ request: { method: string } }>('cloudfront-viewer-request');
  expect(run(event)).toEqual(event.request);
  expect(run({ ...event, request: { ...event.request, method: 'OPTIONS' } })).toMatchObject({
    statusCode: 204,
  });
}, 120_000);

it('no line of a log names who reported, who called or from where', () => {
  const log = lines.join('\n');
  for (const personal of ['w-7', 'A Worker', '192.0.2.1', 'Bearer', token])
    expect(log).not.toContain(personal);
});

describe('what the queues are told, which the handbook leads the operator through', () => {
  it('of a stream: which function, why, and where in the stream; nothing of the fact itself', () => {
    expect(recorded('stream-discarded')).toMatchObject({
      requestContext: { condition: 'RetryAttemptsExhausted', functionArn: expect.anything() },
      DDBStreamBatchInfo: { startSequenceNumber: expect.anything(), batchSize: 1 },
    });
  });

  it('of an arrival: the event itself, with the photo’s key', () => {
    expect(recorded('async-discarded')).toMatchObject({
      requestContext: { condition: 'RetriesExhausted' },
      requestPayload: { detail: { object: { key: expect.anything() } } },
    });
  });
});
