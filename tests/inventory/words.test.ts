import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { readOptions } from '../../infra/local/import/options.ts';
import { reportLines } from '../../infra/local/import/print.ts';
import { reportJson } from '../../infra/local/import/reportFile.ts';
import { openFile } from '../../infra/local/import/openFile.ts';
import { importFile } from '../../shared/inventory/importFile.ts';
import { ImportRefused } from '../../shared/inventory/refused.ts';
import type { Problem } from '../../shared/problems/problem.ts';
import { en } from '../../shared/words/en/index.ts';
import { es } from '../../shared/words/es/index.ts';
import { locales, sayProblem } from '../../shared/words/index.ts';
import { choices, fixture, importText, table, today } from './support.ts';

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

/** The names of the parameters of a message, those inside its choices included. */
function parameters(text: string): string[] {
  const names = new Set<string>();
  const walk = (elements: readonly Element[]): void => {
    for (const element of elements) {
      // Type 0 is plain text; every other element with a value names a parameter.
      if ('value' in element && (element.type as number) !== 0) names.add(element.value);
      if ('options' in element) for (const option of Object.values(element.options)) walk(option.value);
    }
  };
  walk(new IntlMessageFormat(text, 'en').getAst());
  return [...names].filter((name) => name !== '#').toSorted();
}

describe('the words of the inventory', () => {
  const keys = (Object.keys(en) as (keyof typeof en)[]).filter((key) =>
    /^(problem\.inventory-|inventory\.|bearing\.)/.test(key),
  );

  it.each(keys)('%s takes the same parameters in both languages', (key) => {
    expect(parameters(es[key])).toEqual(parameters(en[key]));
  });
});

/** Inputs that are refused, each for a reason of its own. */
const refused: [name: string, attempt: () => unknown][] = [
  ['empty', () => importText('id,lat,lon\n')],
  ['zip', () => importText('PK\u0003\u0004')],
  ['no delimiter', () => importText('words\nmore\n')],
  ['no header', () => importText('1,2,3\n4,5,6\n')],
  ['open quote', () => importText(`a,b\n1,"x\n${'y,z\n'.repeat(400_000)}`)],
  ['broken JSON', () => importText('{"features":[1 2]}')],
  ['JSON cut off', () => importText('{"features":[{"geometry":null}')],
  ['endless JSON', () => importText(`{"features":[{"a":"${'x'.repeat(1_200_000)}`)],
  ['no features', () => importText('{"a":1}')],
  ['broken XML', () => importText('<osm><node></osm>')],
  ['other XML', () => importText('<gpx></gpx>')],
  ['no coordinates', () => importText('id,street\n1,a\n')],
  ['no such column', () => importText(table('x1', ['1']), { map: { place: ['street'] } })],
  ['projected', () => importText('id,x,y\n1,1000000,200000\n')],
  ['already degrees', () => importText('id,x,y\n1,-70.1,41.2\n', { crs: 'EPSG:2263' })],
  ['swapped', () => importText('id,x,y\n1,41.2,-70.1\n')],
  ['outside', () => importText('id,x,y\n1,1000000,200000\n', { crs: 'EPSG:2225' })],
  ['unknown CRS', () => importText(table('x1', ['1']), { crs: 'EPSG:1' })],
  ['unreadable CRS', () => importText(table('x1', ['1']), { crs: '+proj=nonsense +datum=WGS84' })],
  ['older datum', () => importText(table('x1', ['1']), { crs: 'EPSG:4267' })],
  ['no file', () => openFile(fixture('nothing.csv'))],
  [
    'command line',
    () =>
      readOptions(
        [
          '--wrong',
          '--map',
          'x',
          '--map',
          'y=z',
          '--unit',
          'type=mm',
          '--unit',
          'mainSizeIn=gpm',
          '--accept',
          'x',
          '--date-order',
          'x',
          '--lang',
          'x',
          '--crs',
        ],
        today,
        'en',
      ),
  ],
  ['two files', () => readOptions(['a', 'b'], today, 'en')],
];

describe('every refusal is a sentence', () => {
  it.each(refused)('%s', async (_, attempt) => {
    const problems = await Promise.resolve()
      .then(attempt)
      .then(
        (): readonly Problem[] => [],
        (error: unknown) => {
          if (error instanceof ImportRefused) return error.problems;
          throw error;
        },
      );
    expect(problems.length).toBeGreaterThan(0);
    for (const problem of problems)
      for (const locale of locales) expect(sayProblem(locale, problem)).toMatch(/^[^[{].{15,}$/s);
  });
});

describe('every report reads in both languages', () => {
  const wide = [
    'id,lat,lon,type,status,notes,outlets,num_outlets,main_size,flow,install_date,owner,make',
    'A-1,41.2,-70.1,Dry Barrel,Active,,2 x 2.5,3,6 in,500 gpm,1998,Tern Harbor,Anvil',
    'A-2,41.21,-70.1,Hydrant,gone?,approximate location,odd,two,150 mm,350 m3/h,4/5/01,Tern Harbor,Anvil',
    'A-3,41.22,-70.1,Wall,Inactive,hydrant was removed,2 1/2,,8,0,4/25/71,Tern Harbor,Anvill',
    `A-4,41.23,-70.1,Wall,Active,not for fire,,,8 cubits,99999 gpm,soon,${'x'.repeat(130)},Anvil`,
    `${'y'.repeat(70)},41.24,-70.1,Wall,Active,,,,8 inn,500 gpm,1/1/1970,Tern Harbor,Anvil`,
    'A-6 by the slip,41.25,-70.1,Wall,Active,,,,6 in,500 gpm,2/30/2001,Tern Harbor,Anvil',
  ].join('\n');
  it.each(['traits.csv', 'semicolon-latin1.csv', 'bom-quoted.csv', 'packed-tags.geojson', 'tags.osm'])(
    '%s',
    async (name) => {
      const file = await openFile(fixture(name));
      const result = await importFile(file, choices());
      for (const locale of locales) {
        const text = reportLines(result, file, locale).join('\n');
        expect(text).not.toMatch(/undefined|\[(inventory|problem)|NaN/);
        expect(JSON.stringify(reportJson(result, file, locale))).not.toContain('[problem');
      }
    },
  );
  it('a table with one of nearly everything', async () => {
    for (const accept of [new Set<never>(), new Set(['mixed-units', 'swapped-axes'] as const)]) {
      const result = await importText(wide, { accept });
      for (const locale of locales) {
        const text = reportLines(result, { name: 'made.csv', format: 'csv' }, locale).join('\n');
        expect(text).not.toMatch(/undefined|\[(inventory|problem)|NaN/);
      }
    }
  });
});
