import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { asInstalled } from '../../infra/aws/bundling.ts';
import { permissions, type FunctionName } from '../../infra/aws/permissions.ts';
import { bundleHandler, handlerFile } from '../support/bundleHandler.ts';
import type { BenchRow } from './row.ts';

const ROUNDS = 7;
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

/** Milliseconds from the start of a fresh Node to a loaded handler, as a cold start does once the machine is up. */
async function startMs(file: string): Promise<number> {
  const code = `await import(${JSON.stringify(file)}); console.log(performance.now());`;
  const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', code]);
  return Number(stdout);
}

/** Medians, all in turn in every round: whatever else the machine does then slows them alike. */
async function medianStartMs(files: readonly string[]): Promise<Map<string, number>> {
  const times = new Map<string, number[]>(files.map((file) => [file, []]));
  for (let round = 0; round < ROUNDS; round++)
    for (const file of files) times.get(file)?.push(await startMs(file));
  return new Map(
    [...times].map(([file, of]) => [file, of.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN]),
  );
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
    const ms = await medianStartMs([EMPTY, ...names].map(fileOf));
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
      ...names.map((name) => row(name, 'start', 'ms', (of) => ms.get(fileOf(of)))),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
