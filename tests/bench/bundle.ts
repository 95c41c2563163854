import { existsSync } from 'node:fs';
import { mkdtemp, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asInstalled } from '../../infra/aws/bundling.ts';
import { permissions, type FunctionName } from '../../infra/aws/permissions.ts';
import { bundleHandler, handlerFile } from '../support/bundleHandler.ts';
import type { BenchRow } from './row.ts';
import { medianStarts } from './support/startTimes.ts';

const EMPTY = 'empty';

const emptyHandler = `
import { DynamoDBClient } from '@aws-sdk/client-dynamodb';
import { S3Client } from '@aws-sdk/client-s3';
const clients = [new DynamoDBClient({ region: 'us-east-1' }), new S3Client({ region: 'us-east-1' })];
export const handler = async () => clients.length;
`;

/** Bundles and answers the size in bytes. */
async function sizeOf(entry: Parameters<typeof bundleHandler>[0], outfile: string): Promise<number> {
  await bundleHandler(entry, outfile);
  return (await stat(outfile)).size;
}

/**
 * Size and start time of every handler's bundle, beside an empty handler with the same SDK clients. What a handler
 * opens on its first event is not in it.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-bundle-'));
  try {
    await writeFile(join(folder, 'package.json'), '{"type":"module"}');
    const fileOf = (name: string): string => join(folder, `${name}.mjs`);
    const names = (Object.keys(permissions) as FunctionName[]).filter((name) =>
      existsSync(handlerFile(name)),
    );
    if (names.length === 0) throw new Error('no handler was found');
    const kb = new Map([[EMPTY, (await sizeOf({ text: emptyHandler }, fileOf(EMPTY))) / 1024]]);
    // What is not bundled lies beside the function as it is installed.
    await symlink(join(import.meta.dirname, '..', '..', 'node_modules'), join(folder, 'node_modules'));
    for (const name of names) {
      const entry = { file: handlerFile(name), external: asInstalled[name] ?? [] };
      kb.set(name, (await sizeOf(entry, fileOf(name))) / 1024);
    }
    const ms = await medianStarts([EMPTY, ...names].map(fileOf));
    const row = (
      name: string,
      what: string,
      unit: string,
      of: (name: string) => number | undefined,
    ): BenchRow => ({
      name: `${name}: ${what}`,
      value: of(name) ?? Number.NaN,
      unit,
      beside: { name: 'empty handler, same SDK', value: of(EMPTY) ?? Number.NaN },
    });
    return [
      ...names.map((name) => row(name, 'bundle', 'KB', (of) => kb.get(of))),
      ...names.map((name) => row(name, 'start', 'ms', (of) => ms.get(fileOf(of))?.wallMs)),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
