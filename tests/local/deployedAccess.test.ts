import { mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { deploymentAddress, deploymentOf, openAccess } from '../../infra/local/deployed/access.ts';
import { signInAt } from '../../infra/local/deployed/signIn.ts';
import { importStores } from '../../infra/local/import/stores.ts';
import { modelServerThere } from '../../infra/local/import/models/server.ts';
import { RefusedStart } from '../../infra/local/refusedStart.ts';
import { commandsReturnTo } from '../../shared/deployment/signIn.ts';
import { fakeProvider, type FakeProvider } from '../support/fakeProvider.ts';

const clientId = 'client-1';
let lifetimeS = 3600;
let made = 0;
const token = (): string =>
  `${Buffer.from('{"alg":"ES256"}').toString('base64url')}.${Buffer.from(
    JSON.stringify({ sub: 'm-1', exp: Math.floor(Date.now() / 1000) + lifetimeS, n: ++made }),
  ).toString('base64url')}.c2ln`;

let provider: FakeProvider;
let api: Server;
let origin: string;
const authorized: (string | undefined)[] = [];
let variables: Record<string, string>;
beforeAll(async () => {
  provider = await fakeProvider({ clientId, tokenFor: async () => token() });
  api = createServer(({ url, headers }, response) => {
    response.setHeader('content-type', 'application/json');
    if (url === '/api/utility') {
      response.end(JSON.stringify({ name: 'Millrace', signIn: { page: provider.page, clientId } }));
      return;
    }
    authorized.push(headers.authorization);
    response.end('{"models":[]}');
  });
  await new Promise<void>((resolve) => api.listen(0, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${(api.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await provider.close();
  api.closeAllConnections();
  api.close();
});
beforeEach(async () => {
  variables = { XDG_CONFIG_HOME: await mkdtemp(join(tmpdir(), 'hsl-access-')) };
  lifetimeS = 3600;
  provider.asked.length = 0;
  return () => rm(variables['XDG_CONFIG_HOME']!, { recursive: true, force: true });
});
/** What the person's browser does. */
const signIn = (): Promise<string> =>
  signInAt(origin, { variables, show: (address) => void fetch(address), done: 'Signed in.' });
const refusal = (promise: Promise<unknown>): Promise<string> =>
  promise.then(
    () => 'nothing',
    (error: unknown) => (error instanceof RefusedStart ? error.key : String(error)),
  );

describe('a command at a deployment', () => {
  it('acts as whoever signed in on this machine, whose sign-in only they can read', async () => {
    const file = await signIn();
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    const access = await openAccess(origin, variables);
    await modelServerThere(access, 'en').models();
    expect(authorized.at(-1)).toBe(`Bearer ${access.token}`);
    expect(provider.asked).toHaveLength(1);
  });

  it('renews a sign-in that ends soon, and keeps what it got', async () => {
    lifetimeS = 60;
    await signIn();
    lifetimeS = 3600;
    const { token: renewed } = await openAccess(origin, variables);
    expect(provider.asked.map((one) => one.get('grant_type'))).toEqual([
      'authorization_code',
      'refresh_token',
    ]);
    expect((await openAccess(origin, variables)).token).toBe(renewed);
    expect(provider.asked).toHaveLength(2);
    expect(await readdir(join(variables['XDG_CONFIG_HOME']!, 'hydrant-strike-ledger'))).toHaveLength(1);
  });

  it('that nobody signed in for, or that is renewed no more, says what to run', async () => {
    expect(await refusal(openAccess(origin, variables))).toBe('command.not-signed-in');
    lifetimeS = 60;
    await signIn();
    provider.answers.push(400);
    expect(await refusal(openAccess(origin, variables))).toBe('command.not-signed-in');
  });

  it('whose kept sign-in was cut off says what to run', async () => {
    await signIn();
    const folder = join(variables['XDG_CONFIG_HOME']!, 'hydrant-strike-ledger');
    const [file] = await readdir(folder);
    for (const text of ['{"page": "https', '{}', '']) {
      await writeFile(join(folder, file!), text);
      expect(await refusal(openAccess(origin, variables))).toBe('command.not-signed-in');
    }
  });

  it('takes a token from the environment where there is no browser', async () => {
    expect(await openAccess(origin, { ...variables, DEPLOYMENT_TOKEN: 'given' })).toEqual({
      origin,
      token: 'given',
    });
  });

  it('never sends a token in the open', () => {
    expect(() => deploymentAddress('http://hydrants.example')).toThrow('command.deployment-address');
    expect(() => deploymentAddress('hydrants.example')).toThrow('command.deployment-address');
    expect(deploymentAddress('https://hydrants.example/desk/')).toBe('https://hydrants.example');
    expect(deploymentAddress('http://localhost:8080/')).toBe('http://localhost:8080');
    expect(deploymentOf({})).toBeNull();
  });

  it('comes back to this machine alone', () => {
    // RFC 8252 7.3 and 8.3: the loopback interface.
    expect(new URL(commandsReturnTo).hostname).toBe('localhost');
  });
});

describe('an inventory for a deployment', () => {
  it('needs to be told the bucket, and a sign-in before anything is written', async () => {
    expect(() => importStores({ ...variables, DEPLOYMENT_URL: origin })).toThrow(
      'command.deployment-variable',
    );
    const bucket = join(variables['XDG_CONFIG_HOME']!, 'bucket');
    const stores = importStores({
      ...variables,
      DEPLOYMENT_URL: origin,
      INVENTORY_URL: `file://${bucket}`,
    });
    expect(await refusal(stores.openInventory())).toBe('command.not-signed-in');
    await signIn();
    await stores.openInventory();
  });
});
