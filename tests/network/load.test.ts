import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import type { InventoryStore } from '../../functions/stores/inventory/inventory.ts';
import { objectModels } from '../../functions/stores/network/objectModels.ts';
import { fileObjects } from '../../functions/stores/objects/file.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { townNetworkInp, townNetworkMeta } from '../../infra/local/demo/network.ts';
import { readNetworkOptions } from '../../infra/local/network/options.ts';
import { runNetworkLoad } from '../../infra/local/network/run.ts';
import { ImportRefused } from '../../shared/inventory/refused.ts';
import type { Locale } from '../../shared/words/index.ts';
import { hasWords } from '../../shared/words/index.ts';
import { uuid } from '../support/submissions.ts';
import { barePressures } from './bare.ts';
import { streetHydrants, streetInp, streetInventory } from './streetTown.ts';

let folder: string;
let inventory: InventoryStore;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'network-load-'));
  inventory = objectInventory(memoryObjects());
  await inventory.publish(streetHydrants, streetInventory(uuid(40)));
});
afterAll(() => rm(folder, { recursive: true }));

const write = async (name: string, text: string | Uint8Array): Promise<string> => {
  const file = join(folder, name);
  await writeFile(file, text);
  return file;
};
interface Run {
  readonly lines: readonly string[];
  readonly objects: ReturnType<typeof memoryObjects>;
}
async function load(argv: readonly string[], locale: Locale = 'en', stock = inventory): Promise<Run> {
  const lines: string[] = [];
  const objects = memoryObjects();
  const options = readNetworkOptions(argv, locale);
  if (options === 'help') throw new Error('help');
  await runNetworkLoad(options, {
    inventory: stock,
    openModels: async () => objectModels(objects),
    now: () => '2026-02-01T12:00:00.000Z',
    account: () => 'operator',
    reader: { locale, system: 'us' },
    print: (line) => lines.push(line),
  });
  return { lines, objects };
}
async function refusal(argv: readonly string[]): Promise<string[]> {
  try {
    await load(argv);
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    for (const { code } of error.problems) expect(hasWords(`problem.${code}`), code).toBe(true);
    return error.problems.map(({ code, path, params }) =>
      [code, path, params['line'], params['detail']].filter(Boolean).join(' '),
    );
  }
  throw new Error('it was loaded');
}
const dated = ['--dated', '2026-01-15'];

describe('loading a model', () => {
  it('says how many hydrants found a node and how far, and puts it in force', async () => {
    const file = await write('street.inp', streetInp);
    const { lines, objects } = await load([file, ...dated, '--crs', 'EPSG:4326', '--by', 'A Manager']);
    expect(lines.join('\n')).toContain('Hydrants: 4 of 5 have a node.');
    // 0.0001° of a meridian is 36.5 ft (a nautical mile, 6,076.1 ft, is a minute of arc).
    expect(lines.join('\n')).toMatch(/half of them within 36\.\d ft/);
    expect(lines.join('\n')).toContain('H-FAR');
    expect(lines.at(-1)).toBe('In force as edition 1, dated 2026-01-15.');
    const current = await objectModels(objects).current();
    expect(current).toMatchObject({
      edition: 1,
      meta: { datedOn: '2026-01-15', loadedBy: 'A Manager', rule: { crs: 'EPSG:4326', withinFt: 300 } },
    });
    expect(Buffer.from(current!.inp).toString()).toBe(streetInp);
  });

  it('a dry run says the same and writes nothing', async () => {
    const file = await write('street.inp', streetInp);
    const { lines, objects } = await load([file, ...dated, '--crs', '4326', '--dry-run'], 'es');
    expect(lines.join('\n')).toContain('Hidrantes: 4 de 5 tienen un nodo.');
    expect(lines.at(-1)).toBe('Ensayo: no se escribió nada.');
    expect(await objects.list('')).toEqual([]);
  });

  it('a list stands above the map, and says who it does not know', async () => {
    const file = await write('street.inp', streetInp);
    const list = await write('nodes.csv', 'hydrantId;nodeId\r\nH-FAR;F\r\nH-GONE;A\r\n');
    const { lines, objects } = await load([file, ...dated, '--crs=EPSG:4326', '--nodes', list]);
    expect(lines.join('\n')).toContain('Hydrants: 5 of 5 have a node.');
    expect(lines.join('\n')).toContain('The list names hydrants that the inventory does not have: H-GONE.');
    expect((await objectModels(objects).current())?.meta.rule.nodeOf).toEqual({
      'H-FAR': 'F',
      'H-GONE': 'A',
    });
  });

  it('says what is doubtful', async () => {
    // F stands above the reservoir; LONE and F2 hang on a closed pipe, and neither has a place on the map.
    const odd = streetInp
      .replace('F 60 10', 'F 400 10\nLONE 10 0\nF2 10 0')
      .replace('EF E F', 'LL LONE F2 100 6 100 0 Open\nLX LONE E 100 6 100 0 Closed\nEF E F');
    const file = await write('odd.inp', odd);
    const said = (await load([file, ...dated, '--crs', '4326', '--hour', '5'])).lines.join('\n');
    expect(said).toContain('Its clock ends at hour 0; it is read there and not at hour 5.');
    expect(said).toContain('1 junction has a pressure below zero');
    expect(said).toContain('2 junctions are reached by no reservoir and no tank.');
    expect(said).toContain('2 junctions have no place on the file’s map.');
  });

  it('keeps a file of any encoding as it is', async () => {
    const bytes = Buffer.from(streetInp.replace('[JUNCTIONS]', '[TITLE]\nRío\n\n[JUNCTIONS]'), 'latin1');
    const { objects } = await load([await write('latin.inp', bytes), ...dated, '--crs', '4326']);
    expect(Buffer.from((await objectModels(objects).current())!.inp).equals(bytes)).toBe(true);
  });

  it('on a folder, two loads at once are two editions', async () => {
    const at = await mkdtemp(join(tmpdir(), 'models-'));
    const file = await write('street.inp', streetInp);
    const one = objectModels(fileObjects(at));
    const options = readNetworkOptions([file, ...dated, '--crs', '4326'], 'en');
    if (options === 'help') throw new Error('help');
    const deps = {
      inventory,
      openModels: async () => objectModels(fileObjects(at)),
      now: () => '2026-02-01T12:00:00.000Z',
      account: () => 'operator',
      reader: { locale: 'en' as const, system: 'us' as const },
      print: () => undefined,
    };
    // The same by the same person at the same instant would be one load, told twice.
    const by = (person: string) => runNetworkLoad(options, { ...deps, account: () => person });
    const editions = await Promise.all([by('operator'), by('another')]);
    expect(editions.map((each) => each?.edition).sort()).toEqual([1, 2]);
    expect((await one.current())?.edition).toBe(2);
    await rm(at, { recursive: true });
  });
});

describe('what is refused, with the line and the section', () => {
  it.each<[string, string, string]>([
    [
      'a pipe to nowhere',
      streetInp.replace('EF E F', 'EF E NOWHERE'),
      'undefined node NOWHERE in [PIPES] section, line 20: EF E NOWHERE 300 6 100 0 Open',
    ],
    [
      'a number that is none',
      streetInp.replace('B 52 60', 'B 52 sixty ; typed'),
      'illegal numeric value sixty in [JUNCTIONS] section, line 3: B 52 sixty',
    ],
  ])('%s', async (name, inp, said) => {
    const file = await write(`${name.replaceAll(' ', '-')}.inp`, inp);
    const [found = ''] = await refusal([file, ...dated, '--crs', '4326']);
    expect(found).toContain(said);
  });

  it.each<[string, string[], string[]]>([
    ['nothing', [], ['network-no-file FILE', 'network-needs-date --dated', 'network-needs-rule --crs']],
    [
      'a day that is none',
      ['x.inp', '--dated', '2026-02-30', '--crs', '4326'],
      ['network-date-wrong --dated'],
    ],
    [
      'an hour that is none',
      ['x.inp', ...dated, '--crs', '4326', '--hour', 'noon'],
      ['network-number-wrong --hour'],
    ],
    ['another option', ['x.inp', ...dated, '--crs', '4326', '--zap'], ['network-option-unknown --zap']],
    ['no such file', ['/none/x.inp', ...dated, '--crs', '4326'], ['network-file-not-found FILE']],
  ])('%s', async (_, argv, expected) => expect(await refusal(argv)).toEqual(expected));

  it('an island, by its nodes', async () => {
    const file = await write(
      'island.inp',
      streetInp
        .replace('F 60 10', 'F 60 10\nLONE 10 0\nF2 10 0')
        .replace('EF E F', 'LL LONE F2 100 6 100 0 Open\nEF E F'),
    );
    expect(await refusal([file, ...dated, '--crs', '4326'])).toEqual(['network-island inp']);
  });

  it('a list: every line', async () => {
    const file = await write('street.inp', streetInp);
    const list = await write('bad.csv', 'H-A,A\nH-B\nH-C,R\nH-A,B\nH-F,NONE\n');
    expect(await refusal([file, ...dated, '--nodes', list])).toEqual([
      'network-list-wrong --nodes 2',
      'network-list-twice --nodes 4',
      'network-list-no-node --nodes 3',
      'network-list-no-node --nodes 5',
    ]);
  });

  it('a coordinate system that is wrong for the town', async () => {
    const file = await write('street.inp', streetInp);
    expect(await refusal([file, ...dated, '--crs', 'EPSG:1'])).toEqual(['inventory-crs-unknown --crs']);
    expect(await refusal([file, ...dated, '--crs', 'EPSG:2263'])).toEqual(['network-none-found']);
  });
});

describe('the demo town’s model', () => {
  const inp = townNetworkInp();
  it('is always the same, and the library alone solves it', async () => {
    expect(townNetworkInp()).toBe(inp);
    const { 'J-0001': first, 'J-0200': other } = await barePressures(inp, ['J-0001', 'J-0200']);
    for (const psi of [first, other]) {
      expect(psi).toBeGreaterThan(50);
      expect(psi).toBeLessThan(100);
    }
    expect(townNetworkMeta.rule.crs).toBe('EPSG:4326');
  });
});
