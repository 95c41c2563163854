import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { townInventoryCsv } from '../../infra/local/demo/town.ts';
import { say } from '../../shared/words/index.ts';
import { serve, type Served } from './support/child.ts';
import { ports } from '../support/ports.ts';

/** `npm run import` beside a running server, and without one. */
const PORT = ports.recordLoad;
let base: string;
let server: Served | undefined;
beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'hsl-load-'));
  await writeFile(join(base, 'town.csv'), townInventoryCsv());
});
afterEach(async () => {
  await server?.close();
  server = undefined;
  await rm(base, { recursive: true, force: true });
});

const script = join(import.meta.dirname, '..', '..', 'infra', 'local', 'commands', 'import.ts');
async function runImport(): Promise<string> {
  const child = spawn(process.execPath, [script, 'town.csv', '--by', 'gis-desk'], {
    env: { ...process.env, DATA_DIR: 'data', INIT_CWD: base, LANG: 'en_US.UTF-8', LC_ALL: '' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
  expect((await once(child, 'close'))[0]).toBe(0);
  return out;
}
const hydrants = async ({ origin, tokens }: Served): Promise<number> => {
  const response = await fetch(`${origin}/api/hydrants?find=TH-&limit=100`, {
    headers: { authorization: `Bearer ${tokens.crew}` },
  });
  return ((await response.json()) as { hydrants: unknown[] }).hydrants.length;
};

describe('a load of the inventory', () => {
  it('beside a running server is in force there at once, and in the ledger once', async () => {
    const folder = join(base, 'data');
    server = await serve(folder, PORT);
    expect(await hydrants(server)).toBe(0);
    expect(await runImport()).toContain(say('en', 'inventory.fact-posted'));
    expect(await hydrants(server)).toBe(100);
  }, 60_000);

  it('without a server is recorded by the next start, by who made it, and not again by the one after', async () => {
    expect(await runImport()).toContain(say('en', 'inventory.fact-pending'));
    const folder = join(base, 'data');
    server = await serve(folder, PORT);
    expect(await hydrants(server)).toBe(100);
    await server.close();
    server = await serve(folder, PORT);
    await server.close();
    server = undefined;

    const { startDynamodb, localTableNames } = await import('../../infra/local/dynamodb.ts');
    const { openDynamodbStores } = await import('../../functions/stores/dynamodb/stores.ts');
    const store = await startDynamodb({ folder: join(folder, 'dynamodb'), port: 0 });
    const { ledger } = openDynamodbStores({ endpoint: store.endpoint, tableNames: localTableNames });
    const recorded = await ledger.readStream('utility');
    await store.stop();
    expect(recorded.map(({ submission }) => [submission.kind, submission.person.personId])).toEqual([
      ['inventory-loaded', 'gis-desk'],
    ]);
  }, 60_000);
});
