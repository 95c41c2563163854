import { mkdtemp, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asInstalled } from '../../infra/aws/bundling.ts';
import { permissions, type FunctionName } from '../../infra/aws/permissions.ts';
import { bundleHandler, handlerFile } from '../support/bundleHandler.ts';
import type { BenchRow } from './row.ts';
import { medianStarts } from './support/startTimes.ts';

/** Thirty starts, seven times: minutes where others work beside it. */
export const limitS = 900;

/** What a runtime brings along; left out of a bundle it is read file by file from where it is installed. */
const ofTheRuntime = ['@aws-sdk/*', '@smithy/*', '@aws/*'];

/**
 * `npm run bench -- sdk`: the AWS SDK inside each function's bundle, as it is deployed, beside the same bundle that leaves
 * it to the runtime: size, and processor time from the start of Node to a loaded handler, all in turn.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-sdk-'));
  try {
    await writeFile(join(folder, 'package.json'), '{"type":"module"}');
    await symlink(join(import.meta.dirname, '..', '..', 'node_modules'), join(folder, 'node_modules'));
    const names = Object.keys(permissions) as FunctionName[];
    const made = [];
    for (const name of names) {
      const installed = asInstalled[name] ?? [];
      const inside = join(folder, `${name}.inside.mjs`);
      const outside = join(folder, `${name}.outside.mjs`);
      await bundleHandler({ file: handlerFile(name), external: installed }, inside);
      await bundleHandler({ file: handlerFile(name), external: [...installed, ...ofTheRuntime] }, outside);
      made.push({ name, inside, outside });
    }
    const kb = async (file: string): Promise<number> => (await stat(file)).size / 1024;
    const ms = await medianStarts(made.flatMap(({ inside, outside }) => [inside, outside]));
    const rows: BenchRow[] = [];
    for (const { name, inside, outside } of made) {
      rows.push({
        name: `${name}: bundle with the SDK`,
        value: await kb(inside),
        unit: 'KB',
        beside: { name: 'without', value: await kb(outside) },
      });
      rows.push({
        name: `${name}: processor to start, SDK inside`,
        value: ms.get(inside)?.cpuMs ?? Number.NaN,
        unit: 'ms',
        beside: { name: 'from node_modules', value: ms.get(outside)?.cpuMs ?? Number.NaN },
      });
    }
    return rows;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
