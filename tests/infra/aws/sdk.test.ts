import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { App, Duration, Stack } from 'aws-cdk-lib';
import { RetentionDays } from 'aws-cdk-lib/aws-logs';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asInstalled } from '../../../infra/aws/bundling.ts';
import { HouseFunction } from '../../../infra/aws/house/houseFunction.ts';

const repository = join(import.meta.dirname, '..', '..', '..');

/** Decision 0229. Left to itself the CDK leaves the SDK to the runtime. */
describe('the AWS SDK travels with the code', () => {
  let root: string;
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'sdk-'));
    await symlink(join(repository, 'node_modules'), join(root, 'node_modules'));
    await mkdir(join(root, 'functions'));
    await writeFile(join(root, 'package-lock.json'), '{}');
    await writeFile(join(root, 'inject.mjs'), '');
    await writeFile(
      join(root, 'functions', 'handler.ts'),
      "import { DynamoDBClient } from '@aws-sdk/client-dynamodb';\nexport const handler = async () => new DynamoDBClient({});\n",
    );
  });
  afterAll(() => rm(root, { recursive: true, force: true }));

  it('in the bundle that the CDK makes of a function', async () => {
    const app = new App({ outdir: join(root, 'cdk.out'), analyticsReporting: false });
    new HouseFunction(new Stack(app, 'S'), {
      name: 'submissions',
      entry: join(root, 'functions', 'handler.ts'),
      root,
      inject: join(root, 'inject.mjs'),
      environment: {},
      permissions: [],
      arnOf: () => '*',
      beside: [],
      programs: [],
      asInstalled: [],
      memoryMb: 128,
      timeout: Duration.seconds(1),
      logDays: RetentionDays.ONE_DAY,
    });
    app.synth();
    const assets = (await readdir(join(root, 'cdk.out'))).filter((name) => name.startsWith('asset.'));
    expect(assets).toHaveLength(1);
    const bundle = join(root, 'cdk.out', assets[0]!, 'index.mjs');
    // A second look by the bundler says what the first one left to be found at run time.
    const { metafile } = await build({
      entryPoints: [bundle],
      bundle: true,
      write: false,
      metafile: true,
      platform: 'node',
      format: 'esm',
      external: ['@aws-sdk/*', '@smithy/*', '@aws/*'],
      logLevel: 'error',
    });
    const left = Object.values(metafile.outputs).flatMap(({ imports }) => imports.map(({ path }) => path));
    expect(left.filter((path) => path.startsWith('@'))).toEqual([]);
    // What each request of this client is called, and only its code knows.
    expect(await readFile(bundle, 'utf8')).toContain('DynamoDB_20120810');
  }, 120_000);

  it('and no function leaves it out by name', () => {
    expect(
      Object.values(asInstalled)
        .flat()
        .filter((name) => /^@(aws-sdk|smithy|aws)\//.test(name)),
    ).toEqual([]);
  });
});
