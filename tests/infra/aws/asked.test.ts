import { createServer, type Server } from 'node:http';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { exportJWK, generateKeyPair } from 'jose';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { localTableNames, startDynamodb, type EmbeddedDynamodb } from '../../../infra/local/dynamodb.ts';
import { createIssuer } from '../../../infra/local/issuer.ts';
import { permissions, unrouted, type FunctionName, type Permission } from '../../../infra/aws/permissions.ts';
import { declaredExhibits } from '../../../shared/evidence/declared.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { watchedEvents, type WatchedEvent } from '../../../shared/deployment/watchedEvents.ts';
import { families, routes, type Family } from '../../../shared/deployment/routes.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';
import { correction, fact, onHydrant, onStrike, onUtility, uuid } from '../../support/submissions.ts';
import { arrivalOf } from '../../../functions/display/arrived.ts';
import { evidenceKey } from '../../../functions/stores/evidence/byHash.ts';
import { copyKey } from '../../../functions/stores/evidence/copies.ts';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { objectModels } from '../../../functions/stores/network/objectModels.ts';
import { readOutline } from '../../../functions/network/solve.ts';
import { smallInp } from '../../support/networks.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { deployTo } from '../../support/bundleHandler.ts';
import { deployedEnvironment } from '../../support/deployedEnvironment.ts';
import { demoClaim, demoPhotos } from '../../support/demoClaim.ts';
import { townHydrants } from '../../support/town.ts';
import { townMeta } from '../../support/townMeta.ts';
import { recordingProxy, type RecordingProxy } from './recordingProxy.ts';
import { recordingS3, type RecordingS3 } from './recordingS3.ts';
import { recordingServices, type RecordingServices } from './recordingServices.ts';

/**
 * The rights of `permissions.ts` held against what the handlers, bundled as they are deployed, ask a DynamoDB API and an S3 API for. A right too few is
 * an access error that only a deployment would show; one too many is a door nobody needs.
 */
const demo = demoClaim();
/** A submission of the story that declares a photo. */
const told = demo.submissions.find((submission) => declaredExhibits(submission).length > 0)!;
const strike = fact('strike', 1, onStrike(1), { hydrantId: 'H-0001' });
const submissions: readonly Submission[] = [
  ...demo.submissions,
  ...demo.submissions.filter(({ kind }) => kind === 'party' || kind === 'claim-opened'),
  strike,
  strike,
  correction(2, strike, { ...strike.body, note: 'Read again by daylight' }),
  fact('strike', 5, onStrike(5), { hydrantId: 'H-0001' }),
  fact('link', 6, onStrike(5), { sameAsStrikeId: uuid(1) }),
  fact('outage', 10, onHydrant('H-0002')),
  // A neighbor's flow is read for the message to dispatch.
  fact('flow-test', 11, onHydrant('H-0003'), { residualHydrantId: 'H-0003' }),
  fact('hydrant-model', 20, onUtility),
];

interface Answer {
  readonly statusCode?: number;
  readonly body?: string;
}
type Handler = (event: unknown) => Promise<Answer>;

let folder: string;
let s3: RecordingS3;
let dynamodb: EmbeddedDynamodb;
let proxy: RecordingProxy;
let keys: Server;
let token: string;
let services: RecordingServices;
/** What the handlers wrote to their logs. */
const lines: string[] = [];
const asked = new Map<FunctionName, Set<string>>();
const keep = (name: FunctionName, requests: readonly string[]): void =>
  void asked.set(name, new Set([...(asked.get(name) ?? []), ...requests]));

/** A function as it is deployed: bundled, with what lies beside it, and with modules of its own. */
const handlers = new Map<FunctionName, Handler>();
async function handlerOf(name: FunctionName): Promise<Handler> {
  const known = handlers.get(name);
  if (known) return known;
  const file = await deployTo(join(folder, name), name);
  if (name === 'publish') process.env[environmentNames.siteFolder] = join(folder, name, 'site');
  const { handler } = (await import(/* @vite-ignore */ pathToFileURL(file).href)) as { handler: Handler };
  handlers.set(name, handler);
  return handler;
}

/** What the last call asked the stores for. */
let lastAsked: readonly string[] = [];

/** Calls one function's real handler and keeps what it asked the tables for. */
async function call(name: FunctionName, event: unknown): Promise<Answer> {
  const handler = await handlerOf(name);
  proxy.take();
  s3.take();
  services.take();
  const answer = await handler(event);
  lastAsked = [...proxy.take(), ...s3.take(), ...services.take()];
  keep(name, lastAsked);
  return answer;
}

/** What routes that anyone may ask made their function ask for. */
const askedForAnyone: string[] = [];

const request = (method: string, path: string, body?: unknown): unknown => ({
  version: '2.0',
  routeKey: '$default',
  rawPath: path.split('?')[0],
  rawQueryString: path.split('?')[1] ?? '',
  headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
  requestContext: { http: { method, path } },
  ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  isBase64Encoded: false,
});
const familyOf = (method: string, path: string): Family =>
  routes.find((route) => route.method === method && route.path === path)!.family;

const photo = declaredExhibits(told)[0]!.sha256;
const parameters: Record<string, string> = {
  '{strikeId}': demo.strikeId,
  '{hydrantId}': 'H-0001',
  '{claimId}': demo.claimId,
  '{sha256}': photo,
  '{letter}': 'follow-up',
};
const questions: Record<string, string> = {
  '/api/hydrants': '?find=H-0001',
  '/api/network/{hydrantId}': `?strike=${uuid(1)}`,
};
const bodies: Record<string, unknown> = {
  '/api/evidence/uploads': { subject: told.subject, submissionId: told.submissionId, sha256: photo },
  '/api/claims/{claimId}/packet': { mode: 'freeze' },
  '/api/claims/{claimId}/letters': {
    submissionId: uuid(9),
    letter: 'follow-up',
    text: 'We wrote to you about {hydrant}.',
    to: 'An insurer',
    how: 'post',
    on: '2026-03-04',
    answers: null,
  },
  '/api/network/{hydrantId}/closing': { links: ['P3'] },
  '/api/search': { find: 'ABC 1234' },
  '/api/dispatch/retry': { subject: 'hydrant:H-0001', number: 1 },
  '/api/calendar': { action: 'make' },
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'deployed-'));
  s3 = await recordingS3();
  services = await recordingServices();
  dynamodb = await startDynamodb({ folder: null, port: 0 });
  proxy = await recordingProxy(dynamodb.endpoint);
  const { privateKey } = await generateKeyPair('ES256', { extractable: true });
  await writeFile(join(folder, 'packet-key.json'), JSON.stringify(await exportJWK(privateKey)));
  const issuer = await createIssuer({ ...(await exportJWK(privateKey)), kid: 'k', alg: 'ES256' });
  keys = createServer((_, response) => response.end(JSON.stringify(issuer.keySet)));
  await new Promise<void>((resolve) => keys.listen(0, '127.0.0.1', resolve));
  token = await issuer.tokenFor({ personId: 'm-1', name: 'A Manager', roles: ['crew', 'clerk', 'manager'] });
  Object.assign(
    process.env,
    deployedEnvironment({
      dynamodb: proxy.endpoint,
      s3: s3.endpoint,
      services: services.endpoint,
      keys: `http://127.0.0.1:${(keys.address() as AddressInfo).port}/`,
      packetKeyFile: join(folder, 'packet-key.json'),
      mailFolder: join(folder, 'mail'),
    }),
  );
  vi.spyOn(process.stdout, 'write').mockImplementation((line) => lines.push(String(line)) > 0);
  await loadInventory();
  await loadModel();

  for (const submission of submissions) {
    const { statusCode, body } = await call('submissions', request('POST', '/api/submissions', submission));
    expect([200, 201], `${submission.kind}: ${body}`).toContain(statusCode);
    const Keys = { stream: { S: streamOfSubmission(submission) }, entry: { S: submission.submissionId } };
    await call('project', { Records: [{ dynamodb: { Keys, SequenceNumber: '1' } }] });
  }
  await tellDispatch();
  // Health is asked below how old the page is.
  for (let time = 0; time < 2; time++) await call('publish', {});
  // Uploads first: what reads a photo then finds one.
  const jobPath = '/api/claims/{claimId}/packet-jobs/{jobId}';
  const others = routes.filter(
    ({ family, path }) => family !== 'submissions' && path !== jobPath && path !== '/api/calendar/{file}',
  );
  for (const { method, path, allowed } of others.toSorted(
    (a, b) =>
      Number(b.method === 'POST' && b.family === 'evidence') -
      Number(a.method === 'POST' && a.family === 'evidence'),
  )) {
    const filled = path.replaceAll(/\{\w+\}/g, (name) => parameters[name] ?? name);
    const answer = await call(
      familyOf(method, path),
      request(method, filled + (questions[path] ?? ''), bodies[path]),
    );
    expect(answer.statusCode, `${method} ${path}: ${answer.body}`).toBeLessThan(400);
    if (allowed === 'anyone') askedForAnyone.push(...lastAsked);
    await followUpload(answer);
  }
  await orderPacket();
  await readCalendar();
  for (let time = 0; time < 2; time++) await call('digest', {});
  // What a person asked for above, although it is of the past.
  for (let time = 0; time < 2; time++) await call('dispatchSend', {});
  await call('outgoing', {});
}, 600_000);

/** A photo that came, as the store tells of it: twice, and its copy once. */
async function showPhoto(): Promise<void> {
  for (const key of [evidenceKey(photo), evidenceKey(photo), copyKey(photo)])
    await call('display', arrivalOf(key));
}

/** A packet as a job, here in the same process, and then as the function that builds ordered ones is started. */
async function orderPacket(): Promise<void> {
  const path = `/api/claims/${demo.claimId}`;
  const ordered = await call(
    'packets',
    request('POST', `${path}/packet`, { mode: 'preview', background: true }),
  );
  expect(ordered.statusCode).toBe(202);
  const { jobId } = JSON.parse(ordered.body ?? '') as { jobId: string };
  for (let state = 'queued'; state === 'queued' || state === 'working';) {
    const answer = await call('packets', request('GET', `${path}/packet-jobs/${jobId}`));
    ({ state } = JSON.parse(answer.body ?? '') as { state: string });
    expect(['queued', 'working', 'done']).toContain(state);
  }
  await call('packetJobs', {
    jobId: 'another',
    claimId: demo.claimId,
    member: { personId: 'm-1', name: 'A Manager', roles: ['manager'] },
    request: { mode: 'freeze', demandCents: 1, changes: 'Less is asked.' },
  });
}

/** The projections' stream wakes the function that tells dispatch: keys are all that it brings. */
async function tellDispatch(): Promise<void> {
  const keys = [
    ['hydrant', 'H-0001'],
    ['hydrant', 'H-0002'],
    ['strike', uuid(1)],
    ['joined', uuid(5)],
    ['claim', demo.claimId],
  ] as const;
  const answer = (await call('dispatchSend', {
    Records: keys.map(([partition, key], index) => ({
      dynamodb: { Keys: { partition: { S: partition }, key: { S: key } }, SequenceNumber: String(index) },
    })),
  })) as { batchItemFailures?: unknown };
  expect(answer.batchItemFailures).toEqual([]);
}

/** A calendar as a program fetches it, by an address that was just made; then it is revoked. */
async function readCalendar(): Promise<void> {
  const made = await call('calendar', request('POST', '/api/calendar', { action: 'make' }));
  const { path } = JSON.parse(made.body ?? '') as { path: string };
  expect((await call('calendar', request('GET', path))).statusCode).toBe(200);
  askedForAnyone.push(...lastAsked);
  await call('calendar', request('POST', '/api/calendar', { action: 'revoke' }));
  expect((await call('calendar', request('GET', path))).statusCode).toBe(404);
}

/** As `npm run import` does, with a manager's own rights: the files first, then the fact. */
async function loadInventory(): Promise<void> {
  const inventory = objectInventory(await openObjectStore('s3://inventory/'));
  await inventory.publish(townHydrants(20), townMeta(20));
}

/** As `npm run network` does. Two junctions where the town's hydrants stand. */
async function loadModel(): Promise<void> {
  const [hydrant] = townHydrants(20);
  const reply = await readOutline(smallInp, 0);
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  await objectModels(await openObjectStore('s3://network/')).publish(Buffer.from(smallInp), reply.answer, {
    datedOn: '2026-01-15',
    hour: 0,
    rule: { crs: null, nodeOf: { [hydrant!.hydrantId]: 'H' }, withinFt: 300 },
    sourceFile: 'town.inp',
    loadedAt: '2026-02-01T12:00:00.000Z',
    loadedBy: 'm-1',
  });
}

afterAll(async () => {
  await proxy.close();
  await dynamodb.stop();
  keys.close();
  await s3.close();
  await services.close();
  await rm(folder, { recursive: true, force: true });
});

/** Sends bytes where the evidence function says: the address carries that function's right to write. */
async function followUpload({ body }: Answer): Promise<void> {
  const { upload } = JSON.parse(body?.startsWith('{') ? body : '{}') as {
    upload?: { url: string; headers: Record<string, string> };
  };
  if (!upload) return;
  const bytes = Buffer.from((await demoPhotos.get(photo))!);
  const sent = await fetch(upload.url, { method: 'PUT', headers: upload.headers, body: bytes });
  expect(sent.status).toBe(200);
  keep('evidence', [...s3.take()]);
  await showPhoto();
}

/** Whether a right covers a request. A table's are by name, a bucket's by prefix. */
function covers({ actions, on }: Permission, request: string): boolean {
  const [action = '', resource = ''] = request.split(' ');
  if (!actions.includes(action)) return false;
  if ('table' in on) return resource === localTableNames[on.table];
  if ('account' in on) return resource === '';
  if ('identity' in on)
    return (
      resource === (on.identity === 'sender' ? demoUtility.digest?.from : demoUtility.dispatchMessages?.from)
    );
  // Neither is asked for here: a key in a file signs, and jobs run in this process.
  if (!('bucket' in on)) return false;
  return resource.startsWith(`${on.bucket}/${on.prefix}`);
}

describe.each([...families, ...unrouted] as FunctionName[])('%s', (name) => {
  it('asks for nothing that it may not do', () => {
    const requests = [...(asked.get(name) ?? [])];
    expect(requests.filter((one) => !permissions[name].some((right) => covers(right, one))).sort()).toEqual(
      [],
    );
  });

  it('may do nothing that it does not ask for', () => {
    const requests = [...(asked.get(name) ?? [])];
    const unused = permissions[name].flatMap(({ actions, on }) =>
      actions
        .filter((action) => !requests.some((one) => covers({ actions: [action], on }, one)))
        .map((action) => `${action} ${Object.values(on)[0] as string}`),
    );
    expect(unused.sort()).toEqual((seldom[name] ?? []).toSorted());
  });
});

it('routes that anyone may ask write nothing', () => {
  expect(askedForAnyone.length).toBeGreaterThan(3);
  const reading = /^(dynamodb:(GetItem|BatchGetItem|Query|Scan)|s3:(GetObject|ListBucket)) /;
  expect(askedForAnyone.filter((one) => !reading.test(one))).toEqual([]);
});

/** Alarms count lines by the names of these; what was deployed has just written them. */
describe('what alarms count', () => {
  const written = (name: WatchedEvent) =>
    lines.flatMap((line) => {
      if (!line.startsWith('{')) return [];
      const entry = JSON.parse(line) as Record<string, unknown>;
      return entry['event'] === watchedEvents[name].event ? [entry] : [];
    });

  it('each line is JSON from its first sign to its last, so that it is counted', () => {
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) expect(() => JSON.parse(line) as unknown).not.toThrow();
  });

  it('the page was published', () => {
    expect(written('published')).not.toEqual([]);
  });

  it.each(['lateMessages', 'lateLetters', 'closedWays'] as const)('%s is a number in its line', (name) => {
    const [line] = written(name);
    expect(line![watchedEvents[name].field]).toBe(0);
  });
});

/** Rights for what this walk does not bring about, with what does. */
const seldom: Partial<Record<FunctionName, readonly string[]>> = {
  // Letters are files here.
  digest: ['ses:SendEmail sender'],
  // With it a page that is not there is told from one that may not be read.
  health: ['s3:ListBucket published'],
  // So are texts.
  dispatchSend: ['ses:SendEmail dispatch', 'sns:Publish texts'],
  // An attempt that stopped after its first write left a row that the next one takes away.
  submissions: ['dynamodb:DeleteItem personal'],
  // Two clerks freeze at once: the one that is refused reads what the other wrote.
  packetJobs: [
    // The mark of a fact that was refused is taken away again; none is refused here.
    'dynamodb:DeleteItem unprojected',
    'dynamodb:GetItem submissions',
    'dynamodb:GetItem unique',
    'kms:GetPublicKey packets',
    'kms:Sign packets',
  ],
  packets: [
    'dynamodb:DeleteItem personal',
    'dynamodb:DeleteItem unprojected',
    'dynamodb:GetItem unique',
    'kms:GetPublicKey packets',
    'kms:Sign packets',
    'lambda:InvokeFunction packetJobs',
  ],
};
