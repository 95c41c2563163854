import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createHash } from 'node:crypto';
import Papa from 'papaparse';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { uuidV7 } from '../../shared/submissions/fields.ts';
import { fixture } from './support.ts';

const root = join(import.meta.dirname, '..', '..');
const pinned = join(root, 'node_modules', '.bin', 'node');
const node = existsSync(pinned) ? pinned : process.execPath;

describe('npm run import', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'import-'));
  });
  afterEach(() => rm(folder, { recursive: true }));

  /** Runs the real command with its data under `folder`, as a person would, and answers what it said. */
  const run = (...argv: string[]): Promise<{ code: number; out: string; err: string }> =>
    new Promise((resolve) => {
      const env = { ...process.env, DATA_DIR: join(folder, 'data'), INIT_CWD: root, LC_ALL: 'en_US.UTF-8' };
      execFile(
        node,
        [join(root, 'infra/local/commands/import.ts'), ...argv],
        { env, cwd: root, maxBuffer: 1 << 24 },
        (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
      );
    });
  const store = async () =>
    objectInventory(await openObjectStore(pathToFileURL(join(folder, 'data', 'objects', 'inventory')).href));

  it('shows everything and writes nothing in a dry run', async () => {
    const { code, out, err } = await run(fixture('traits.csv'), '--dry-run');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('30 rows read = 1 clean + 20 with doubts + 9 rejected');
    expect(out).toContain('mainSizeIn ← MAIN_DIA');
    expect(out).toContain('Dry run: nothing was written.');
    expect(await readdir(folder)).toEqual([]);
  });

  it('puts the inventory in force, with where it came from', async () => {
    const { code, out } = await run(fixture('traits.csv'), '--by', 'M-1');
    expect(code).toBe(0);
    expect(out).toContain('In force now: edition 1, 21 hydrants');
    const current = await (await store()).current();
    expect(current?.byId.get('H-010')).toMatchObject({
      place: '4 Tern Road',
      source: { file: 'traits.csv', row: 11 },
    });
    expect(current?.meta).toMatchObject({
      loadedBy: 'M-1',
      sourceFile: 'traits.csv',
      // FIPS 180-4 by another caller of the same hash.
      sourceSha256: createHash('sha256')
        .update(await readFile(fixture('traits.csv')))
        .digest('hex'),
      crs: 'EPSG:4326 WGS 84',
      mapping: { hydrantId: ['HYDRANT_ID'], place: ['STREET_NO', 'STREET'] },
      rows: 30,
      accepted: 21,
      doubtful: 20,
      rejected: 9,
    });
    expect(uuidV7.safeParse(current?.meta.submissionId).success).toBe(true);
  });

  it('replaces it at the next load, but not by a much smaller file unless told to', async () => {
    await run(fixture('traits.csv'));
    const refused = await run(fixture('tags.osm'));
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('--allow-fewer');
    // A dry run says beforehand what the run would say.
    const dry = await run(fixture('tags.osm'), '--dry-run');
    expect([dry.code, dry.err]).toEqual([2, refused.err]);
    expect((await run(fixture('tags.osm'), '--dry-run', '--allow-fewer')).code).toBe(0);
    expect((await (await store()).current())?.edition).toBe(1);
    expect((await run(fixture('tags.osm'), '--allow-fewer')).code).toBe(0);
    expect((await (await store()).current())?.byId.has('W-2')).toBe(true);
  });

  it('writes every finding to a file that a spreadsheet reads, with no formula in it', async () => {
    const file = join(folder, 'hostile.csv');
    await writeFile(file, 'id,lat,lon,street\n"=HYPERLINK(""x"")",0,0,a\nH-2,41.2,-70.1,b\n');
    const report = join(folder, 'report.csv');
    expect((await run(file, '--dry-run', '--report', report)).code).toBe(0);
    const text = await readFile(report, 'utf8');
    expect(text.startsWith('\ufeff')).toBe(true);
    const { data } = Papa.parse<Record<string, string>>(text.slice(1), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data).toHaveLength(1);
    expect(data[0]).toMatchObject({ level: 'rejected', row: '2', reason: 'at-zero' });
    const traits = join(folder, 'traits.json');
    await run(fixture('traits.csv'), '--dry-run', '--report', traits);
    expect((JSON.parse(await readFile(traits, 'utf8')) as { findings: unknown[] }).findings).toHaveLength(32);
  });

  it('prints one JSON value with --json, and Spanish with --lang es', async () => {
    const { out } = await run(fixture('packed-tags.geojson'), '--dry-run', '--json', '--lang', 'es');
    const report = JSON.parse(out) as { counts: object; findings: { sentence: string }[] };
    expect(report.counts).toEqual({ rows: 6, clean: 2, doubtful: 1, rejected: 3, accepted: 3 });
    expect(report.findings[0]?.sentence).toContain('Se omitió');
  });

  it('exits 2 with a sentence when the file has to change, and leaves what is in force', async () => {
    const feet = join(folder, 'feet.csv');
    await writeFile(feet, 'id,x,y\n1,1000000,200000\n2,1000100,200100\n');
    const { code, out, err } = await run(feet);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^The coordinates are not degrees.*--crs EPSG:CODE/);
    expect((await run(join(folder, 'nothing.csv'))).err).toContain('There is no file');
    expect((await run(feet, '--crs', 'EPSG:2263')).code).toBe(0);
  });

  it('explains itself with --help', async () => {
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    expect(out).toContain('--map field=COLUMN');
    expect(out).toContain('hydrantId, latitudeDeg');
  });

  it('refuses a data folder that is not its own', async () => {
    await mkdir(join(folder, 'data'));
    await writeFile(join(folder, 'data', 'thesis.txt'), 'mine');
    const { code, err } = await run(fixture('traits.csv'));
    expect(code).toBe(1);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
