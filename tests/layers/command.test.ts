import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readLayers } from '../../functions/publish/layers.ts';
import type { InventoryStore } from '../../functions/stores/inventory/inventory.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import type { LayerStore } from '../../functions/stores/layers/layers.ts';
import { objectLayers } from '../../functions/stores/layers/objectLayers.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { townStationsGeojson, townStreetsGeojson } from '../../infra/local/demo/layers.ts';
import { readLayerOptions } from '../../infra/local/import/layers/options.ts';
import { runLayerLoad } from '../../infra/local/import/layers/run.ts';
import { readOptions } from '../../infra/local/import/options.ts';
import { runImport } from '../../infra/local/import/run.ts';
import { townInventoryCsv } from '../../infra/local/demo/town.ts';
import { ImportRefused } from '../../shared/inventory/refused.ts';
import { greatCircleFt } from '../../shared/nearest/sphere.ts';
import { areasHolding } from '../../shared/stations/inArea.ts';
import { sayProblem, type Locale } from '../../shared/words/index.ts';

let folder: string;
let inventory: InventoryStore;
let layers: LayerStore;
let printed: string[];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hsl-layers-'));
  inventory = objectInventory(memoryObjects());
  const file = join(folder, 'hydrants.csv');
  await writeFile(file, townInventoryCsv());
  const options = readOptions([file], '2026-03-04', 'en');
  if (options === 'help') throw new Error('help');
  await runImport(options, {
    openInventory: async () => inventory,
    lookAtInventory: async () => null,
    now: () => '2026-03-04T12:00:00Z',
    newId: () => '0195612a-0000-7000-8000-000000000001',
    account: () => 'm-401',
    recordLoad: null,
    print: () => undefined,
  });
});
afterAll(() => rm(folder, { recursive: true, force: true }));
beforeEach(() => {
  layers = objectLayers(memoryObjects());
  printed = [];
});

/** Runs the command as the terminal does; answers the sentences of a refusal. */
async function run(
  argv: readonly string[],
  content: string | null,
  locale: Locale = 'en',
): Promise<string[]> {
  const file = join(folder, 'layer.geojson');
  if (content !== null) await writeFile(file, content);
  try {
    const options = readLayerOptions([...(content === null ? [] : [file]), ...argv], locale);
    if (options === 'help') throw new Error('help');
    await runLayerLoad(options, {
      lookAtInventory: async () => inventory,
      openLayers: async () => layers,
      now: () => '2026-03-04T12:00:00Z',
      account: () => 'm-401',
      print: (line) => printed.push(line),
    });
    return [];
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    return error.problems.map((each) => sayProblem(locale, each));
  }
}

describe('npm run layers', () => {
  it('the demo town: every hydrant on a street and in one area, and no way shorter than the straight line', async () => {
    expect(await run(['--as', 'streets'], townStreetsGeojson())).toEqual([]);
    expect(await run(['--as', 'stations'], townStationsGeojson())).toEqual([]);
    expect(printed.join('\n')).toContain('410 of 410 hydrants lie within 300 ft of a street.');
    expect(printed.join('\n')).toContain('410 of 410 hydrants lie in an area.');
    // One network: no part without a way to another.
    expect(printed.join('\n')).not.toContain('parts with no way');
    const { streets, stations } = await readLayers(layers);
    const hydrants = (await inventory.current())?.hydrants ?? [];
    const holding = areasHolding(stations ?? []);
    expect(hydrants.every((hydrant) => holding(hydrant).length === 1)).toBe(true);
    const [from] = hydrants;
    if (!from || !streets) throw new Error('nothing loaded');
    for (const to of hydrants) {
      const feet = streets.walkFt(from, to, 100_000);
      expect(feet).not.toBeNull();
      expect(feet).toBeGreaterThanOrEqual(greatCircleFt(from, to));
    }
  });

  it('keeps who loaded what, and writes nothing on a dry run', async () => {
    expect(await run(['--as', 'streets', '--dry-run'], townStreetsGeojson())).toEqual([]);
    expect(await layers.current('streets')).toBeNull();
    expect(await run(['--as', 'streets', '--by', 'gis-desk'], townStreetsGeojson())).toEqual([]);
    expect(await layers.current('streets')).toMatchObject({
      edition: 1,
      loadedBy: 'gis-desk',
      data: { source: { file: 'layer.geojson', features: 25, accepted: 25, rejected: 0 } },
    });
    expect(await run(['--as', 'streets', '--take-out'], null)).toEqual([]);
    expect(await layers.current('streets')).toBeNull();
    expect(await run(['--as', 'streets', '--take-out'], null)).toEqual([
      'There is no layer of streets in force.',
    ]);
  });

  it('writes every finding to a report that a spreadsheet opens', async () => {
    const report = join(folder, 'report.csv');
    const broken = JSON.parse(townStreetsGeojson()) as { features: { geometry: unknown }[] };
    const [first] = broken.features;
    if (first) first.geometry = null;
    expect(await run(['--as', 'streets', '--report', report], JSON.stringify(broken))).toEqual([]);
    expect(await readFile(report, 'utf8')).toBe(
      '\ufefflevel,feature,line,id,field,reason,sentence\r\nrejected,1,1,,geometry,no-geometry,It has no geometry.\r\n',
    );
  });

  it.each([
    [
      'another town',
      ['--as', 'streets'],
      townStreetsGeojson().replaceAll('-60.', '-70.'),
      /^Nothing in the file lies within 2 miles/,
    ],
    ['a CSV', ['--as', 'addresses'], 'a,b\n1,2\n', /^Layers are read from GeoJSON/],
    ['no kind', [], '{}', /^Say what the file holds/],
    ['an option of another kind', ['--as', 'stations', '--snap', '100'], '{}', /^--snap is for --as streets/],
    [
      'a distance out of range',
      ['--as', 'streets', '--snap', '5'],
      '{}',
      /^--snap takes a number of feet from 20 to 2000/,
    ],
    ['an option that is none', ['--as', 'streets', '--join'], '{}', /^There is no option --join/],
  ] as const)('%s is refused, and nothing is written', async (_, argv, content, sentence) => {
    const said = await run(argv, content);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(sentence);
    for (const kind of ['streets', 'addresses', 'stations'] as const)
      expect(await layers.current(kind)).toBeNull();
  });

  it('writes the report of a file of which nothing can be taken, and says where one cannot be written', async () => {
    const report = join(folder, 'rejected.csv');
    expect(await run(['--as', 'stations', '--report', report], townStreetsGeojson())).toHaveLength(1);
    expect((await readFile(report, 'utf8')).split('\r\n').filter((line) => line !== '')).toHaveLength(26);
    const nowhere = join(folder, 'none', 'report.csv');
    expect(await run(['--as', 'streets', '--report', nowhere], townStreetsGeojson())).toEqual([
      `${nowhere} cannot be written (ENOENT). Name a file in a folder that exists and that you may write in.`,
    ]);
    expect(await layers.current('streets')).toBeNull();
  });

  it('as a process: beside the inventory of the data folder, exit code 2 when the file has to change', async () => {
    const root = join(import.meta.dirname, '..', '..');
    const pinned = join(root, 'node_modules', '.bin', 'node');
    const start = (...argv: string[]): Promise<{ code: number; out: string; err: string }> =>
      new Promise((resolve) => {
        execFile(
          existsSync(pinned) ? pinned : process.execPath,
          [join(root, 'infra/local/commands/layers.ts'), ...argv],
          {
            env: { ...process.env, DATA_DIR: join(folder, 'data'), INIT_CWD: folder, LC_ALL: 'en_US.UTF-8' },
          },
          (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
        );
      });
    await writeFile(join(folder, 'streets.geojson'), townStreetsGeojson());
    const loaded = await start('streets.geojson', '--as', 'streets');
    expect(loaded).toMatchObject({ code: 0, err: '' });
    expect(loaded.out).toContain('In force: streets, edition 1.');
    const objects = await openObjectStore(
      pathToFileURL(join(folder, 'data', 'objects', 'inventory', 'layers')).href,
    );
    expect((await objectLayers(objects).current('streets'))?.edition).toBe(1);
    expect(await start('missing.geojson', '--as', 'streets')).toMatchObject({ code: 2 });
  }, 60_000);

  it('speaks Spanish', async () => {
    const [said] = await run(['--as', 'streets'], townStreetsGeojson().replaceAll('-60.', '-70.'), 'es');
    expect(said).toMatch(/^Nada del archivo está a menos de 2 millas/);
  });
});
