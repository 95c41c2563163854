import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CsvReader, sniffDelimiter } from '../../shared/inventory/read/csv.ts';
import type { ImportRefused } from '../../shared/inventory/refused.ts';
import { sniffFormat } from '../../shared/inventory/read/format.ts';
import { GeoJsonReader } from '../../shared/inventory/read/geojson.ts';
import { unpackTags } from '../../shared/inventory/read/hstore.ts';
import { OsmReader } from '../../shared/inventory/read/osm.ts';
import type { RowReader, SourceRow } from '../../shared/inventory/read/source.ts';
import { refusal } from './support.ts';

function readAll(reader: RowReader, text: string, piece = 1 << 16): SourceRow[] {
  const rows: SourceRow[] = [];
  for (let at = 0; at < text.length; at += piece) rows.push(...reader.push(text.slice(at, at + piece)));
  rows.push(...reader.end());
  return rows;
}
const csv = (text: string, piece?: number): SourceRow[] => readAll(new CsvReader(text), text, piece);
const values = (rows: readonly SourceRow[]) => rows.map(({ line, values }) => [line, ...values]);
const refused = (read: () => unknown): Promise<string[]> => refusal(Promise.resolve().then(read));

describe('CSV (RFC 4180, and what programs really write)', () => {
  it.each([',', ';', '\t', '|'])('finds the delimiter %j', (delimiter) => {
    expect(sniffDelimiter(`id${delimiter}name\n1${delimiter}"a, b; c | d"\n`)).toBe(delimiter);
  });
  it('takes the delimiter that a first line states', () =>
    expect(values(csv('sep=;\r\na;b\r\n1,5;2\r\n'))).toEqual([[3, '1,5', '2']]));
  it('is not misled by commas in one field of a table with semicolons', () =>
    expect(sniffDelimiter('a;b;c\n1;x, y, z;2\n1;x;2\n')).toBe(';'));
  it.each(['\n', '\r\n', '\r'])('reads lines that end in %j', (end) => {
    expect(values(csv(['a,b', '1,2', '3,4', ''].join(end)))).toEqual([
      [2, '1', '2'],
      [3, '3', '4'],
    ]);
  });
  it('counts lines as an editor does, through records over several', () => {
    expect(values(csv('a,b\n1,"x\ny\nz"\n\n2,q'))).toEqual([
      [2, '1', 'x\ny\nz'],
      [6, '2', 'q'],
    ]);
  });
  it('keeps an inch mark that opens nothing', () =>
    expect(values(csv('a,b\n1,2 1/2"\n2,6"\n'))).toEqual([
      [2, '1', '2 1/2"'],
      [3, '2', '6"'],
    ]));
  it('names nameless and repeated columns', () => {
    const reader = new CsvReader('id,,name,name\n');
    readAll(reader, 'id,,name,name\n1,2,3,4\n');
    expect(reader.columns).toEqual(['id', 'column 2', 'name', 'name (2)']);
  });
  it('marks torn lines, and knows a delimiter that ends every line', () => {
    expect(csv('a,b\n1,2\n1\n1,2,3\n').map(({ fault, doubt }) => fault?.code ?? doubt?.code ?? null)).toEqual(
      [null, 'inventory-too-few-columns', 'inventory-too-many-columns'],
    );
    expect(csv('a,b\n1,2,\n3,4,\n5,6,,\n').map(({ fault }) => fault?.code ?? null)).toEqual([
      null,
      null,
      'inventory-too-many-columns',
    ]);
  });
  it('refuses what has no header, no columns, no rows, or a quote that never closes', async () => {
    expect(await refused(() => csv('1,41.2,-70.1\n2,41.3,-70.2\n'))).toEqual(['no-header']);
    expect(await refused(() => csv('just some words\nand more\n'))).toEqual(['no-delimiter']);
    expect(await refused(() => csv(''))).toEqual(['no-delimiter']);
    expect(await refused(() => csv(`a,b\n1,"x\n${'y,z\n'.repeat(400_000)}`))).toEqual(['quote-never-closed']);
  });
  it('refuses a quote that is closed only by another, or by the end, and says where it was opened', async () => {
    const lineOf = (text: string, piece?: number): unknown => {
      try {
        csv(text, piece);
      } catch (error) {
        return (error as ImportRefused).problems[0]?.params['line'];
      }
      return null;
    };
    const rows = (from: number, to: number) =>
      Array.from({ length: to - from }, (_, index) => `H-${from + index},"Elm, north",41.2\n`).join('');
    // Header on line 1, so H-n stands on line n + 1.
    const swallowing = `id,street,lat\n${rows(1, 9)}H-9,"Oak St,41.2\n${rows(10, 40)}`;
    expect(lineOf(swallowing)).toBe(10);
    expect(lineOf(swallowing, 7)).toBe(10);
    expect(lineOf(`id,street,lat\nH-1,a,41.2\nH-2,"Oak St,41.2\nH-3,b,41.2\n`)).toBe(3);
    // A field over two lines, and marks inside a field on one line, are nothing unusual.
    expect(lineOf('a,b\n1,"two\nlines"\n2,"a 6" main"\n')).toBeNull();
    expect(lineOf('a,b\n"two\nlines","a 6" main"\n')).toBeNull();
  });
  it('reads the same rows however the text is cut', () => {
    const field = fc.oneof(
      fc.string({ maxLength: 6 }).map((text) => text.replace(/["\r\n;\t|,]/g, '')),
      fc.constantFrom('"a,b"', '"line\nbreak"', '"say ""no"""', ''),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(field, field, field), { minLength: 1, maxLength: 20 }),
        fc.integer({ min: 1, max: 7 }),
        (rows, piece) => {
          const text = ['a,b,c', ...rows.map((row) => row.join(','))].join('\n') + '\n';
          expect(values(csv(text, piece))).toEqual(values(csv(text)));
        },
      ),
    );
  });
});

const collection = (...features: unknown[]): string =>
  JSON.stringify({ type: 'FeatureCollection', features });
const feature = (coordinates: unknown, properties: unknown = {}, more: object = {}): unknown => ({
  type: 'Feature',
  properties,
  geometry: { type: 'Point', coordinates },
  ...more,
});
const geo = (text: string, piece?: number): SourceRow[] => readAll(new GeoJsonReader(), text, piece);

describe('GeoJSON (RFC 7946, and its 2008 form)', () => {
  it('reads points, their ids and their lines', () => {
    const rows = geo(
      `{"type":"FeatureCollection","features":[\n${JSON.stringify(feature([-70.1, 41.2, 3], { ref: 7 }, { id: 'x' }))},\n${JSON.stringify(feature(['-70.2', '41.3'], { '@id': 'node/5' }))}\n]}`,
    );
    expect(rows.map(({ row, line, featureId, point }) => ({ row, line, featureId, point }))).toEqual([
      { row: 1, line: 2, featureId: 'x', point: { x: '-70.1', y: '41.2', asText: false } },
      { row: 2, line: 3, featureId: 'node/5', point: { x: '-70.2', y: '41.3', asText: true } },
    ]);
  });
  it.each(['var hydrants = ', 'const a=', '\ufeff', 'callback('])('passes over %j', (prefix) =>
    expect(geo(prefix + collection(feature([1, 2])))).toHaveLength(1),
  );
  it('flattens one level of nested properties, and braces in text do not matter', () => {
    const reader = new GeoJsonReader();
    const rows = readAll(
      reader,
      collection(feature([1, 2], { a: { b: 1 }, note: 'a } ] "{ [ b', on: true })),
    );
    expect(reader.columns).toEqual(['a.b', 'note', 'on']);
    expect(rows[0]?.values).toEqual(['1', 'a } ] "{ [ b', 'true']);
  });
  it('states the CRS that a 2008 file states', () => {
    const reader = new GeoJsonReader();
    readAll(
      reader,
      JSON.stringify({
        type: 'FeatureCollection',
        features: [feature([1, 2])],
        crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::2263' } },
      }),
    );
    expect(reader.statedCrs).toBe('urn:ogc:def:crs:EPSG::2263');
  });
  it('says why a feature cannot be used', () => {
    const text = `{"features":[${JSON.stringify({ geometry: { type: 'Polygon', coordinates: [] } })},{"geometry":null},${JSON.stringify({ geometry: { type: 'MultiPoint', coordinates: [[1, 2]] } })},{"bad" 1}]}`;
    expect(geo(text).map(({ fault }) => fault?.code ?? null)).toEqual([
      'inventory-not-a-point',
      'inventory-no-coordinates',
      null,
      'inventory-broken-feature',
    ]);
  });
  it('refuses a document that ends early, is no collection, or is empty', async () => {
    expect(await refused(() => geo(collection(feature([1, 2])).slice(0, -1)))).toEqual(['json-cut-off']);
    expect(await refused(() => geo('{"type":"Topology","arcs":[]}'))).toEqual(['no-features']);
    expect(await refused(() => geo(collection()))).toEqual(['empty']);
    expect(await refused(() => geo('{"features":[1 2]}'))).toEqual(['not-json']);
  });
  it('reads the same features however the text is cut', () => {
    fc.assert(
      fc.property(
        fc.array(fc.dictionary(fc.string({ maxLength: 4 }), fc.string({ maxLength: 8 }), { maxKeys: 3 }), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.integer({ min: 1, max: 9 }),
        (all, piece) => {
          const text = collection(...all.map((properties) => feature([1, 2], properties)));
          expect(geo(text, piece)).toEqual(geo(text));
          expect(geo(text)).toHaveLength(all.length);
        },
      ),
    );
  });
});

describe('tags in one string (PostgreSQL 17 manual, F.17 hstore)', () => {
  it.each([
    ['"a"=>"1"', [['a', '1']]],
    [
      '"a"=>"1","b"=>"x, y"',
      [
        ['a', '1'],
        ['b', 'x, y'],
      ],
    ],
    [
      '"a"=>"2 1/2\\"", "b"=>NULL',
      [
        ['a', '2 1/2"'],
        ['b', ''],
      ],
    ],
    ['"a\\\\b"=>"=>"', [['a\\b', '=>']]],
    ['plain text', null],
    ['"quoted" text', null],
    ['"a"=>unquoted', null],
  ])('%s', (text, pairs) => expect(unpackTags(text)).toEqual(pairs));
});

describe('OSM XML', () => {
  const osm = (text: string, piece?: number): SourceRow[] =>
    readAll(new OsmReader(), `<osm version="0.6">${text}</osm>`, piece);
  const node =
    '<node id="1" lat="41.2" lon="-70.1"><tag k="emergency" v="fire_hydrant"/><tag k="ref" v="A &amp; B"/></node>';
  it('reads tagged nodes with their place and id', () => {
    expect(osm(node)[0]).toMatchObject({
      featureId: 'node/1',
      point: { x: '-70.1', y: '41.2' },
      values: ['fire_hydrant', 'A & B'],
    });
    expect(osm(node, 3)).toEqual(osm(node));
  });
  it('refuses other XML and broken XML', async () => {
    expect(await refused(() => readAll(new OsmReader(), '<kml></kml>'))).toEqual(['xml-not-osm']);
    expect(await refused(() => osm('<node>'))).toEqual(['not-xml']);
    expect(await refused(() => osm('<bounds/>'))).toEqual(['empty']);
  });
});

describe('formats by their content', () => {
  it.each([
    ['a,b\n1,2', 'csv'],
    ['  {"type":1}', 'geojson'],
    ['var x = {}', 'geojson'],
    ['[{}]', 'geojson'],
    ['<?xml version="1.0"?><osm>', 'osm'],
  ])('%j is %s', (head, format) => expect(sniffFormat(head)).toBe(format));
  it.each([
    ['PK\u0003\u0004', 'is-zip'],
    ['SQLite format 3\u0000', 'is-database'],
    ['\u0000\u0000\u0027\u000a', 'is-shapefile'],
    ['<kml xmlns="">', 'xml-not-osm'],
    ['a\u0000b', 'format-unknown'],
    [' \n', 'empty'],
  ])('%j is refused as %s', async (head, code) =>
    expect(await refused(() => sniffFormat(head))).toEqual([code]),
  );
});
