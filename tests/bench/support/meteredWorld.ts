import { createServer } from 'node:http';
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { exportJWK, generateKeyPair } from 'jose';
import type { FunctionName } from '../../../infra/aws/permissions.ts';
import { localTableNames, startDynamodb } from '../../../infra/local/dynamodb.ts';
import { createIssuer } from '../../../infra/local/issuer.ts';
import { matchRoute } from '../../../infra/local/router.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { tables } from '../../../shared/deployment/tables.ts';
import { recordingProxy } from '../../infra/aws/recordingProxy.ts';
import { recordingS3 } from '../../infra/aws/recordingS3.ts';
import { recordingServices } from '../../infra/aws/recordingServices.ts';
import { deployTo } from '../../support/bundleHandler.ts';
import { deployedEnvironment } from '../../support/deployedEnvironment.ts';
import { startFunction, type FunctionProcess } from './functionProcess.ts';
import { add, hearObject, hearTable, nothing, type Spent } from './spent.ts';

export interface Answered {
  readonly answer: { readonly statusCode?: number; readonly body?: string } | null;
  readonly spent: Spent;
  readonly wallMs: number;
}

export interface MeteredWorld {
  /** Calls a deployed function with an event and says what that cost. */
  call(name: FunctionName, event: unknown): Promise<Answered>;
  /** The same for a request as the gateway hands it over. Throws when it is refused. */
  ask(method: 'GET' | 'POST', path: string, body?: unknown): Promise<Answered>;
  /** Keys of projections that were written since the last call of this. */
  takeProjected(): readonly { readonly partition: string; readonly key: string }[];
  /** What each function that was called costs to start, and the most memory that it held, MB. */
  functions(): Readonly<Record<string, { readonly loadedCpuMs: number; readonly peakMb: number }>>;
  /** Letters and texts that went out. */
  sent(): Promise<number>;
  readonly dynamodb: string;
  close(): Promise<void>;
}

/**
 * Every function bundled and alone in a process, on the embedded DynamoDB and an S3 of this machine that count what is
 * asked of them. One call at a time, so that everything asked meanwhile is that call's.
 */
export async function meteredWorld(): Promise<MeteredWorld> {
  const folder = await mkdtemp(join(tmpdir(), 'metered-'));
  let spent = nothing();
  let projected: { partition: string; key: string }[] = [];
  const dynamodb = await startDynamodb({ folder: null, port: 0 });
  const proxy = await recordingProxy(dynamodb.endpoint, (exchange) => {
    hearTable(spent, exchange);
    const { TableName, Item } = exchange.request as {
      TableName?: string;
      Item?: Record<string, { S?: string }>;
    };
    const { partitionKey, sortKey } = tables.projections;
    if (TableName === localTableNames.projections && Item)
      projected.push({ partition: Item[partitionKey]?.S ?? '', key: Item[sortKey]?.S ?? '' });
  });
  const s3 = await recordingS3((request) => hearObject(spent, request));
  const services = await recordingServices();
  const { privateKey } = await generateKeyPair('ES256', { extractable: true });
  const packetKeyFile = join(folder, 'packet-key.json');
  await writeFile(packetKeyFile, JSON.stringify(await exportJWK(privateKey)));
  const issuer = await createIssuer({ ...(await exportJWK(privateKey)), kid: 'k', alg: 'ES256' });
  const keys = createServer((_, response) => response.end(JSON.stringify(issuer.keySet)));
  await new Promise<void>((resolve) => keys.listen(0, '127.0.0.1', resolve));
  const mailFolder = join(folder, 'mail');
  await mkdir(mailFolder);
  const environment = deployedEnvironment({
    dynamodb: proxy.endpoint,
    s3: s3.endpoint,
    services: services.endpoint,
    keys: `http://127.0.0.1:${(keys.address() as AddressInfo).port}/`,
    packetKeyFile,
    mailFolder,
  });
  // The inventory is loaded by this process, as an operator's command does it.
  Object.assign(process.env, environment);
  const token = await issuer.tokenFor({
    personId: 'm-1',
    name: 'A Manager',
    roles: ['crew', 'clerk', 'manager'],
  });

  const running = new Map<FunctionName, FunctionProcess>();
  const peaks = new Map<FunctionName, number>();
  const started = async (name: FunctionName): Promise<FunctionProcess> => {
    const known = running.get(name);
    if (known) return known;
    const file = await deployTo(join(folder, name), name);
    const env = { ...process.env, [environmentNames.siteFolder]: join(folder, name, 'site') };
    const made = await startFunction(file, env);
    running.set(name, made);
    return made;
  };
  const call: MeteredWorld['call'] = async (name, event) => {
    const fn = await started(name);
    spent = nothing();
    const { answer, cpuMs, wallMs, peakMb, logBytes } = await fn.call(event);
    peaks.set(name, Math.max(peaks.get(name) ?? 0, peakMb));
    const mine = { ...spent, calls: 1, cpuMs, logBytes };
    return { answer: answer as Answered['answer'], spent: mine, wallMs };
  };

  return {
    call,
    async ask(method, path, body) {
      const [rawPath = '', rawQueryString = ''] = path.split('?');
      const match = matchRoute(method, rawPath);
      if (!match) throw new Error(`no route is ${method} ${rawPath}`);
      const answered = await call(match.route.family, {
        version: '2.0',
        routeKey: '$default',
        rawPath,
        rawQueryString,
        headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
        requestContext: { http: { method, path: rawPath } },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
        isBase64Encoded: false,
      });
      const { statusCode = 0, body: said } = answered.answer ?? {};
      if (statusCode >= 400 || statusCode === 0)
        throw new Error(`${method} ${path}: ${statusCode} ${said ?? ''}`);
      return answered;
    },
    takeProjected() {
      const taken = projected;
      projected = [];
      return taken;
    },
    functions: () =>
      Object.fromEntries(
        [...running].map(([name, { loadedCpuMs }]) => [
          name,
          { loadedCpuMs, peakMb: peaks.get(name) ?? Number.NaN },
        ]),
      ),
    sent: async () => (await readdir(mailFolder)).length,
    dynamodb: dynamodb.endpoint,
    async close() {
      for (const fn of running.values()) fn.end();
      await proxy.close();
      await dynamodb.stop();
      await s3.close();
      await services.close();
      keys.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** Adds a call's cost to its function's. */
export function charge(to: Map<string, Spent>, name: string, more: Spent): void {
  const sum = to.get(name) ?? nothing();
  add(sum, more);
  to.set(name, sum);
}
