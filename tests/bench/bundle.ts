import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { handlerBundle } from '../../infra/aws/bundling.ts';
import { permissions } from '../../infra/aws/permissions.ts';
import type { BenchRow } from './row.ts';

const repository = join(import.meta.dirname, '..', '..');
const STARTS = 9;

const emptyHandler = `
import { DynamoDBClient } from '@aws-sdk/client-dynamodb';
import { S3Client } from '@aws-sdk/client-s3';
const clients = [new DynamoDBClient({ region: 'us-east-1' }), new S3Client({ region: 'us-east-1' })];
export const handler = async () => clients.length;
`;

/** Bundles as the CDK app does and answers the size in bytes. */
async function bundle(entry: { file: string } | { text: string }, outfile: string): Promise<number> {
  await build({
    ...('file' in entry
      ? { entryPoints: [entry.file] }
      : { stdin: { contents: entry.text, resolveDir: repository, loader: 'ts' } }),
    outfile,
    bundle: true,
    platform: 'node',
    target: handlerBundle.target,
    format: handlerBundle.format,
    minify: handlerBundle.minify,
    mainFields: [...handlerBundle.mainFields],
    banner: { js: handlerBundle.banner },
    logLevel: 'error',
  });
  return (await stat(outfile)).size;
}

/**
 * Median milliseconds from the start of a fresh Node to a loaded handler, as a cold start does after the machine is up.
 * What a handler opens on its first event is not in it.
 */
async function startMs(outfile: string): Promise<number> {
  const code = `await import(${JSON.stringify(outfile)}); console.log(performance.now());`;
  const times: number[] = [];
  for (let start = 0; start < STARTS; start++) {
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', code]);
    times.push(Number(stdout));
  }
  return times.sort((a, b) => a - b)[Math.floor(STARTS / 2)] ?? Number.NaN;
}

/** Size and start time of every handler's bundle, beside an empty handler with the same SDK clients. */
export async function bench(): Promise<readonly BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-bundle-'));
  try {
    // Bundles find what they left out (nothing) from their own folder, as in a function.
    await writeFile(join(folder, 'package.json'), '{"type":"module"}');
    const empty = join(folder, 'empty.mjs');
    const emptyKb = (await bundle({ text: emptyHandler }, empty)) / 1024;
    const emptyMs = await startMs(empty);
    const rows: BenchRow[] = [];
    for (const name of Object.keys(permissions)) {
      const file = join(repository, 'functions', name, 'handler.ts');
      if (!existsSync(file)) continue;
      const outfile = join(folder, `${name}.mjs`);
      const kb = (await bundle({ file }, outfile)) / 1024;
      rows.push(
        {
          name: `${name}: bundle`,
          value: kb,
          unit: 'KB',
          beside: { name: 'empty handler, same SDK', value: emptyKb },
        },
        {
          name: `${name}: start`,
          value: await startMs(outfile),
          unit: 'ms',
          beside: { name: 'empty handler, same SDK', value: emptyMs },
        },
      );
    }
    if (rows.length === 0) throw new Error('no handler was found');
    return rows;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
