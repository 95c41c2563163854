import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { developmentAudience, developmentIssuer } from '../../../infra/local/issuer.ts';
import { unrouted, type FunctionName } from '../../../infra/aws/permissions.ts';
import { families } from '../../../shared/deployment/routes.ts';
import { deployedEnvironment } from '../../support/deployedEnvironment.ts';
import { uuid } from '../../support/submissions.ts';
import { bundleHandler, handlerFile } from '../../support/bundleHandler.ts';
import { asInstalled } from '../../../infra/aws/bundling.ts';

/**
 * The issuer of a machine of one's own signs for anybody who asks. Code that is deployed, as it is bundled, does not start
 * with it, whatever its settings say, and does not have it in it.
 */
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'issuer-'));
  const nobody = 'http://127.0.0.1:9/';
  Object.assign(
    process.env,
    deployedEnvironment({
      dynamodb: nobody,
      s3: nobody,
      services: nobody,
      keys: 'https://issuer.example/jwks.json',
      packetKeyFile: join(folder, 'none.json'),
      mailFolder: join(folder, 'mail'),
    }),
    { AWS_LAMBDA_FUNCTION_NAME: 'deployed' },
  );
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const request = {
  version: '2.0',
  routeKey: '$default',
  rawPath: '/api/utility',
  rawQueryString: '',
  headers: {},
  requestContext: { http: { method: 'GET', path: '/api/utility' } },
  isBase64Encoded: false,
};
/** What wakes a function that no route starts, as far as it looks at it before its environment. */
const events: Partial<Record<FunctionName, unknown>> = {
  packetJobs: {
    jobId: uuid(1),
    claimId: uuid(2),
    member: { personId: 'm-1', name: 'A Manager', roles: ['manager'] },
    request: { mode: 'preview' },
  },
};

it.each([...families, ...unrouted] as FunctionName[])(
  '%s does not start with a development issuer, and holds none',
  async (name) => {
    const file = join(folder, `${name}.mjs`);
    await bundleHandler({ file: handlerFile(name), external: asInstalled[name] ?? [] }, file);
    const { handler } = (await import(/* @vite-ignore */ pathToFileURL(file).href)) as {
      handler: (event: unknown) => Promise<unknown>;
    };
    await expect((async () => handler(events[name] ?? request))()).rejects.toThrow(/development issuer/);
    const text = await readFile(file, 'utf8');
    expect(text).not.toContain(developmentIssuer);
    expect(text).not.toContain(developmentAudience);
  },
  180_000,
);
