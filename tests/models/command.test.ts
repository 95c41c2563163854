import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { v7 } from 'uuid';
import { exampleCsv } from '../../infra/local/import/models/example.ts';
import { readModelOptions } from '../../infra/local/import/models/options.ts';
import { runModelImport, type ModelServer } from '../../infra/local/import/models/run.ts';
import { ImportRefused } from '../../shared/inventory/refused.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { testWorld, type World } from '../http/support/world.ts';

/** `npm run models`: everything or nothing, by the same way in as the form, and run again without harm. */
let folder: string;
let world: World;
let sent: string[];
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hsl-models-'));
  world = await testWorld();
  sent = [];
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const models = async () =>
  (await world.ask('/api/models', 'crew')).body['models'] as BodyOf<'hydrant-model'>[];
/** The real app; `refuseAfter` so many submissions it answers as a server that went away. */
const server = (refuseAfter = Infinity): ModelServer => ({
  models,
  async send(submission) {
    if (sent.length >= refuseAfter) return 'connection lost';
    const { status, body } = await world.submit('manager', submission);
    if (status >= 300) return JSON.stringify(body);
    sent.push(submission.body.modelId);
    return null;
  },
});
async function run(csv: string | Uint8Array, over: { dryRun?: boolean; server?: ModelServer | null } = {}) {
  const file = join(folder, 'models.csv');
  await writeFile(file, csv);
  const lines: string[] = [];
  const refused = await runModelImport(
    { file, dryRun: over.dryRun ?? false, by: 'm-401', locale: 'en' },
    {
      openServer: async () => (over.server === undefined ? server() : over.server),
      now: () => '2026-03-04T11:00:00Z',
      newId: () => v7(),
      account: () => 'somebody',
      print: (line) => lines.push(line),
    },
  ).then(
    () => null,
    (error: unknown) => {
      if (error instanceof ImportRefused) return error;
      throw error;
    },
  );
  return { lines, refused: refused?.problems.map(({ code }) => code) ?? [] };
}
const two = `${exampleCsv}EX-2,model,Example Two,wet barrel\r\n`;

describe('npm run models', () => {
  test('records each model as a manager would, and a second run records nothing', async () => {
    expect((await run(two)).lines).toEqual([
      'models.csv: 2 models read.',
      'EX-1: new',
      'EX-2: new',
      '2 models recorded.',
    ]);
    expect((await models()).map(({ modelId }) => modelId)).toEqual(['EX-1', 'EX-2']);
    expect((await run(two)).lines.at(-1)).toBe('Nothing to record.');
    expect(sent).toEqual(['EX-1', 'EX-2']);
    expect((await run(two.replace('72', '75'))).lines).toContain(
      'EX-1: differs from the record and replaces it',
    );
    expect((await models())[0]?.joints?.[0]).toMatchObject({ torque: 75 });
  });

  test('one doubtful cell, and not even the good models of the file are recorded', async () => {
    const { lines, refused } = await run(two.replace('wet barrel', 'wet'));
    expect(lines).toEqual([
      'Line 14, column “type”: “wet” is none of: dry barrel, wet barrel, underground, wall, standpipe, unknown.',
    ]);
    expect(refused).toEqual(['models-nothing-loaded']);
    expect(sent).toEqual([]);
  });

  test('a server that goes away in the middle is told, and the next run does the rest', async () => {
    const { refused } = await run(two, { server: server(1) });
    expect(refused).toEqual(['models-stopped']);
    expect(sent).toEqual(['EX-1']);
    await run(two);
    expect(sent).toEqual(['EX-1', 'EX-2']);
  });

  test('only checked, and without a server', async () => {
    expect((await run(two, { dryRun: true })).lines.at(-1)).toBe('Only checked: nothing was recorded.');
    expect((await run(two, { server: null })).refused).toEqual(['models-no-server']);
    expect(sent).toEqual([]);
  });

  test('letters of a spreadsheet that does not save UTF-8', async () => {
    const text = 'model,line,name,type\nM1,model,Número Ñ,wet barrel\n';
    await run(Buffer.from(text, 'latin1'));
    expect((await models())[0]?.name).toBe('Número Ñ');
    await run(Buffer.from(`\ufeff${text.replace('M1', 'M2')}`, 'utf16le'));
    expect((await models())[1]?.name).toBe('Número Ñ');
  });
});

test('the command line says every problem at once', () => {
  const wrong = (...argv: string[]): string[] => {
    try {
      readModelOptions(argv, 'en');
      return [];
    } catch (error) {
      return error instanceof ImportRefused ? error.problems.map(({ code }) => code) : ['?'];
    }
  };
  expect(wrong()).toEqual(['models-no-file']);
  expect(wrong('a.csv', 'b.csv', '--colour', '--by', '--lang', 'fr')).toEqual([
    'models-option-unknown',
    'models-option-needs-value',
    'models-one-file',
    'inventory-no-such-language',
  ]);
  expect(readModelOptions(['--help'], 'en')).toBe('help');
  expect(readModelOptions(['a.csv', '--by', 'm-401', '--dry-run', '--lang=es'], 'en')).toEqual({
    file: 'a.csv',
    dryRun: true,
    by: 'm-401',
    locale: 'es',
  });
});

test('the page that explains the columns shows the example as it is', async () => {
  const page = await readFile(join(import.meta.dirname, '..', '..', 'docs', 'models-csv.md'), 'utf8');
  expect(page).toContain(exampleCsv.replaceAll('\r\n', '\n').trim());
});
