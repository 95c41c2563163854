import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { exampleCsv } from '../../infra/local/import/models/example.ts';
import { serve, type Served } from './support/child.ts';
import { ports } from '../support/ports.ts';

/** `npm run models` as a person runs it: a process of its own beside a running server, and without one. */
let base: string;
let server: Served | undefined;
beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'hsl-models-'));
  await writeFile(join(base, 'models.csv'), exampleCsv);
});
afterEach(async () => {
  await server?.close();
  server = undefined;
  await rm(base, { recursive: true, force: true });
});

const script = join(import.meta.dirname, '..', '..', 'infra', 'local', 'commands', 'models.ts');
async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const child = spawn(process.execPath, [script, ...argv], {
    env: { ...process.env, DATA_DIR: join(base, 'data'), INIT_CWD: base, LANG: 'en_US.UTF-8', LC_ALL: '' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [out, err] = ['', ''];
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
  const [code] = (await once(child, 'close')) as [number];
  return { code, out, err };
}

test('beside a running server the models are there at once; a doubtful file ends with 2 and says the cell', async () => {
  server = await serve(join(base, 'data'), ports.models);
  expect(await run('models.csv', '--by', 'm-401')).toMatchObject({
    code: 0,
    out: 'models.csv: 1 model read.\nEX-1: new\nOne model recorded.\n',
  });
  const answer = await fetch(`${server.origin}/api/models`, {
    headers: { authorization: `Bearer ${server.tokens.crew}` },
  });
  expect(((await answer.json()) as { models: { modelId: string }[] }).models.map((m) => m.modelId)).toEqual([
    'EX-1',
  ]);
  await writeFile(join(base, 'models.csv'), exampleCsv.replace('ft-lb', 'lbs'));
  const doubtful = await run('models.csv', '--lang', 'es');
  expect(doubtful.code).toBe(2);
  expect(doubtful.out).toContain('Línea 6, columna «unit»: «lbs» no es ninguna de');
  expect(doubtful.err).toContain('No se registró nada.');
}, 60_000);

test('without a server it says what to start, and the example is printed for the asking', async () => {
  expect(await run('models.csv')).toMatchObject({ code: 2, err: expect.stringContaining('npm start') });
  expect((await run('--example')).out).toBe(exampleCsv);
}, 60_000);
