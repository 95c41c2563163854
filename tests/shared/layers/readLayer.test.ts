import { describe, expect, it } from 'vitest';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { besideHydrants } from '../../../shared/layers/besideHydrants.ts';
import { pointsFromBytes } from '../../../shared/layers/coverPoints.ts';
import { levels } from '../../../shared/layers/findings.ts';
import type { LayerKind } from '../../../shared/layers/kinds.ts';
import {
  LayerEmpty,
  readLayer,
  type LayerChoices,
  type LayerResult,
} from '../../../shared/layers/readLayer.ts';
import { streetsFromBytes } from '../../../shared/streets/file.ts';
import { layers as en } from '../../../shared/words/en/layers.ts';
import { layers as es } from '../../../shared/words/es/layers.ts';
import { aHydrant } from '../../support/town.ts';

const usual: Omit<LayerChoices, 'kind'> = {
  crs: null,
  snapFt: 300,
  joinCrossings: false,
  joinWithinFt: 0,
  nameField: null,
};
const feature = (geometry: unknown, properties: object | null = {}, more: object = {}): object => ({
  type: 'Feature',
  properties,
  geometry,
  ...more,
});
const line = (...coordinates: unknown[]): object => ({ type: 'LineString', coordinates });
const point = (...coordinates: unknown[]): object => ({ type: 'Point', coordinates });
const polygon = (...coordinates: unknown[]): object => ({ type: 'Polygon', coordinates });

/** Reads a collection as the command does, in pieces of a few characters. */
function read(
  kind: LayerKind,
  features: readonly object[],
  choices: Partial<LayerChoices> = {},
  more: object = {},
): Promise<LayerResult> {
  const text = JSON.stringify({ type: 'FeatureCollection', ...more, features });
  return readLayer(
    {
      async *text() {
        for (let at = 0; at < text.length; at += 97) yield text.slice(at, at + 97);
      },
    },
    { ...usual, kind, ...choices },
  );
}
const said = ({ findings }: Pick<LayerResult, 'findings'>): unknown[] =>
  findings.map(({ row, code, path }) => [row, code.replace('layers-', ''), path]);
const remarked = ({ remarks }: LayerResult): unknown[] =>
  remarks.map(({ code, params }) => [code.replace('layers-', ''), params]);
const refusal = async (reading: Promise<unknown>): Promise<string[]> => {
  try {
    await reading;
    return [];
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    return error.problems.map(({ code }) => code);
  }
};

const square = (west: number, south: number, step = 0.01): number[][] => [
  [west, south],
  [west + step, south],
  [west + step, south + step],
  [west, south + step],
  [west, south],
];
const good = line([-60.4, 40.6], [-60.39, 40.6]);

describe('every feature is answered', () => {
  it.each([
    ['no geometry', feature(null), 'no-geometry', 'geometry'],
    ['another geometry', feature(point(-60.4, 40.6)), 'wrong-geometry', 'geometry.type'],
    ['no list of positions', feature({ type: 'LineString' }), 'no-positions', 'geometry.coordinates'],
    // RFC 7946, 3.1.4: two or more positions.
    ['one position', feature(line([-60.4, 40.6])), 'too-few-positions', 'geometry.coordinates'],
    ['no length', feature(line([-60.4, 40.6], [-60.4, 40.6])), 'no-length', 'geometry.coordinates'],
    // RFC 7946, 3.1.1: an array of numbers.
    [
      'text for a number',
      feature(line([-60.4, 40.6], ['-60.39', 40.6])),
      'not-a-position',
      'geometry.coordinates.1',
    ],
    ['half a position', feature(line([-60.4, 40.6], [-60.39])), 'not-a-position', 'geometry.coordinates.1'],
    [
      'a projected position',
      feature(line([-60.4, 40.6], [984_251, 201_233])),
      'not-in-degrees',
      'geometry.coordinates.1',
    ],
    ['0, 0', feature(line([-60.4, 40.6], [0, 0])), 'at-zero', 'geometry.coordinates.1'],
    ['the Antarctic', feature(line([-60.4, 40.6], [-60.4, -78.4])), 'outside-area', 'geometry.coordinates.1'],
    ['the date line', feature(line([179.9, 40.6], [-179.9, 40.6])), 'date-line', 'geometry.coordinates.1'],
    ['a motorway', feature(good, { highway: 'motorway' }), 'motorway', 'properties.highway'],
    ['a street to come', feature(good, { highway: 'construction' }), 'not-built', 'properties.highway'],
    ['a railway', feature(good, { railway: 'rail' }), 'not-a-street', 'properties.railway'],
    ['no feature', { type: 'LineString', coordinates: [] }, 'broken-feature', ''],
  ])('%s: rejected, with its field', async (_, wrong, code, path) => {
    const result = await read('streets', [feature(good), wrong]);
    expect(said(result)).toEqual([[2, code, path]]);
    expect(result).toMatchObject({ features: 2, accepted: 1, doubtful: 0 });
  });

  it.each([
    // RFC 7946, 3.1.6: four or more positions, the first and the last the same.
    [
      'three positions',
      polygon([
        [-60.4, 40.6],
        [-60.3, 40.6],
        [-60.4, 40.6],
      ]),
      'too-few-positions',
      'geometry.coordinates.0',
    ],
    ['an open ring', polygon(square(-60.4, 40.6).slice(0, 4)), 'ring-open', 'geometry.coordinates.0'],
    [
      'a bow tie',
      polygon([
        [-60.4, 40.6],
        [-60.3, 40.7],
        [-60.3, 40.6],
        [-60.4, 40.7],
        [-60.4, 40.6],
      ]),
      'ring-crosses',
      'geometry.coordinates.0',
    ],
  ])('an area of %s: rejected, with its ring', async (_, wrong, code, path) => {
    const result = await read('stations', [
      feature(polygon(square(-60.4, 40.6)), { name: 'One' }),
      feature(wrong, { name: 'Two' }),
    ]);
    expect(said(result)).toEqual([[2, code, path]]);
    expect(result.stations.map(({ slug }) => slug)).toEqual(['one']);
  });

  it('names of areas: none, too long, none that an address is made of, two of one address, two of one name', async () => {
    const area = (at: number, properties: object): object =>
      feature(polygon(square(-60 + at / 10, 40.6)), properties);
    const result = await read('stations', [
      area(1, { NAME: 'Station 7' }),
      area(2, { NAME: ' ' }),
      area(3, { NAME: 'x'.repeat(81) }),
      area(4, { NAME: '消防' }),
      area(5, { NAME: 'Station – 7' }),
      area(6, { NAME: 'Station 7' }),
      area(7, { NAME: 'Estación Número 12' }),
    ]);
    expect(said(result)).toEqual([
      [2, 'no-name', 'properties.NAME'],
      [3, 'name-too-long', 'properties.NAME'],
      [4, 'name-not-usable', 'properties.NAME'],
      [5, 'same-address', 'properties.NAME'],
      [6, 'same-name', 'properties.NAME'],
    ]);
    expect(result.stations.map(({ slug, polygons }) => [slug, polygons.length])).toEqual([
      ['estacion-numero-12', 1],
      ['station-7', 2],
    ]);
  });

  it('the id and the line of the file stand with it', async () => {
    const text =
      '{"type":"FeatureCollection",\n"features":[\n{"type":"Feature","id":"way/7","properties":{},"geometry":null},\n' +
      `${JSON.stringify(feature(good))}]}`;
    const result = await readLayer(
      { async *text () { yield text; } }, // prettier-ignore
      { ...usual, kind: 'streets' },
    );
    expect(result.findings).toMatchObject([{ row: 1, line: 3, featureId: 'way/7' }]);
  });

  it('every finding has words in both languages', () => {
    for (const code of Object.keys(levels)) {
      expect(en).toHaveProperty([`problem.${code}`]);
      expect(es).toHaveProperty([`problem.${code}`]);
    }
  });
});

describe('the file as a whole is refused', () => {
  const text = (whole: string): Promise<LayerResult> =>
    readLayer({ async *text () { yield whole; } }, { ...usual, kind: 'streets' }); // prettier-ignore

  it.each([
    ['no collection', () => text('{"type":"Feature"}'), ['layers-no-features']],
    ['an empty list', () => read('streets', []), ['layers-empty']],
    [
      'cut off',
      () => text('{"type":"FeatureCollection","features":[{"type":"Fea'),
      ['inventory-json-cut-off'],
    ],
    [
      'projected, with no system stated',
      () => read('streets', [feature(line([984_251, 201_233], [984_300, 201_300]))]),
      ['inventory-projected'],
    ],
    [
      'axes the wrong way round',
      () => read('streets', [feature(line([40.6, -100.4], [40.6, -100.39]))]),
      ['inventory-axes-swapped'],
    ],
    [
      'degrees, said to be projected',
      () => read('streets', [feature(good)], { crs: 'EPSG:2263' }),
      ['inventory-already-degrees'],
    ],
    [
      'an unknown system',
      () => read('streets', [feature(good)], { crs: 'EPSG:99999' }),
      ['inventory-crs-unknown'],
    ],
    [
      'areas without any name',
      () => read('stations', [feature(polygon(square(-60, 40)), { zone: 4 })]),
      ['layers-no-name-field'],
    ],
    [
      'a name property that is not there',
      () => read('stations', [feature(polygon(square(-60, 40)), { name: 'x' })], { nameField: 'STN' }),
      ['layers-name-field-missing'],
    ],
  ])('%s', async (_, reading, codes) => {
    expect(await refusal(reading())).toEqual(codes);
  });

  it('when no feature of it can be taken, and each is told', async () => {
    const reading = read('streets', [feature(null), feature(point(-60.4, 40.6))]);
    await expect(reading).rejects.toBeInstanceOf(LayerEmpty);
    await expect(reading).rejects.toMatchObject({ findings: [{ row: 1 }, { row: 2 }] });
  });
});

describe('coordinates in another system', () => {
  // PROJ 9 (cs2cs EPSG:4326 EPSG:2263) for 40.7, -74.0: 984_250.0 ft east within a foot is checked in tests/inventory;
  // here only that a layer goes the same way. Web Mercator by its formula: x = R · λ.
  it('are turned to degrees when the file or the person states it', async () => {
    const x = (-60.4 * Math.PI * 6_378_137) / 180;
    const y = 6_378_137 * Math.log(Math.tan(Math.PI / 4 + (40.6 * Math.PI) / 360));
    const features = [feature(line([x, y], [x + 100, y]))];
    const crs = { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::3857' } };
    for (const result of [
      await read('streets', features, { crs: 'EPSG:3857' }),
      await read('streets', features, {}, { crs }),
    ]) {
      const { shapes } = streetsFromBytes(result.bytes);
      expect((shapes[0] ?? 0) / 1e7).toBeCloseTo(-60.4, 6);
      expect((shapes[1] ?? 0) / 1e7).toBeCloseTo(40.6, 6);
    }
  });
});

describe('how streets join', () => {
  const cross = [
    feature(line([-60.4, 40.6], [-60.39, 40.6]), { name: 'A' }),
    feature(line([-60.395, 40.595], [-60.395, 40.605]), { name: 'B' }),
  ];
  const count = ({ bytes }: LayerResult): number[] => {
    const { fromNode, nodes } = streetsFromBytes(bytes);
    return [fromNode.length, nodes];
  };

  it('a crossing without a common position is told and not joined, unless the person says so', async () => {
    const left = await read('streets', cross);
    expect(count(left)).toEqual([2, 4]);
    expect(said(left)).toEqual([[1, 'crosses-unjoined', 'geometry.coordinates']]);
    expect(remarked(left)).toContainEqual(['crossings-open', { count: 1 }]);
    expect(remarked(left)).toContainEqual(['parts', { count: 2, percent: 50 }]);
    const joined = await read('streets', cross, { joinCrossings: true });
    expect(count(joined)).toEqual([4, 5]);
    expect(said(joined)).toEqual([]);
  });

  it.each([
    ['bridge', { bridge: 'yes' }],
    ['layer', { layer: '1' }],
    ['bridge packed by an export', { other_tags: '"bridge"=>"yes","surface"=>"asphalt"' }],
    ['tunnel', { tunnel: 'building_passage' }],
  ])('one of them on another level (%s) is never joined nor told', async (_, properties) => {
    const [a, b] = cross;
    const result = await read('streets', [a ?? {}, { ...b, properties }], { joinCrossings: true });
    expect(count(result)).toEqual([2, 4]);
    expect(said(result)).toEqual([]);
  });

  it('an end that stops two feet short is told, and joined only when the person says how far', async () => {
    // 2 ft are 0.0000055° of latitude.
    const short = [
      feature(line([-60.4, 40.6], [-60.39, 40.6])),
      feature(line([-60.395, 40.6000055], [-60.395, 40.61])),
    ];
    const left = await read('streets', short);
    expect(count(left)).toEqual([2, 4]);
    expect(said(left)).toEqual([[2, 'end-near-street', 'geometry.coordinates']]);
    expect(count(await read('streets', short, { joinWithinFt: 3 }))).toEqual([3, 4]);
    expect(count(await read('streets', short, { joinWithinFt: 1 }))).toEqual([2, 4]);
  });

  it('streets that would cross if one of them went on do not cross', async () => {
    const apart = [
      feature(line([-60.4, 40.6], [-60.39, 40.61])),
      feature(line([-60.398, 40.608], [-60.396, 40.606])),
    ];
    const result = await read('streets', apart, { joinCrossings: true });
    expect(count(result)).toEqual([2, 4]);
    expect(remarked(result).map((remark) => (remark as [string])[0])).not.toContain('crossings-joined');
  });

  it('streets that share a position join there, at an end or between', async () => {
    const shared = [
      feature(line([-60.4, 40.6], [-60.395, 40.6], [-60.39, 40.6])),
      feature({
        type: 'MultiLineString',
        coordinates: [
          [
            [-60.395, 40.6],
            [-60.395, 40.61],
          ],
          [
            [-60.39, 40.6],
            [-60.38, 40.6],
          ],
        ],
      }),
    ];
    expect(count(await read('streets', shared))).toEqual([4, 5]);
  });
});

describe('places that must be covered', () => {
  it('one for each place, named by nothing but their number, found around what is out', async () => {
    const result = await read('addresses', [
      feature(point(-60.4, 40.6), { address: '12 Quince Ave', occupant: 'PRIVATE' }),
      feature(point(-60.4, 40.6), { address: '12 Quince Ave, flat 2' }),
      feature({
        type: 'MultiPoint',
        coordinates: [
          [-60.41, 40.6],
          [-60.4, 40.602],
        ],
      }),
    ]);
    expect(result.accepted).toBe(3);
    expect(remarked(result)).toEqual([
      ['places-made', { places: 3 }],
      ['places-shared', { count: 1 }],
    ]);
    expect(new TextDecoder().decode(result.bytes)).not.toMatch(/Quince|PRIVATE/);
    const points = pointsFromBytes(result.bytes);
    expect(points.count).toBe(3);
    // 0.002° of latitude are 730 ft; 0.01° of longitude here are 2,770 ft.
    expect(points.around([{ longitudeDeg: -60.4, latitudeDeg: 40.6 }])).toEqual([
      { id: '0', longitudeDeg: -60.4, latitudeDeg: 40.6 },
      { id: '2', longitudeDeg: -60.4, latitudeDeg: 40.602 },
    ]);
    expect(points.around([])).toEqual([]);
  });
});

describe('beside the inventory', () => {
  const near = aHydrant('H-1', { latitudeDeg: 40.6, longitudeDeg: -60.395 });
  const off = aHydrant('H-2', { latitudeDeg: 40.602, longitudeDeg: -60.395 });

  it('a layer of another town is refused', async () => {
    const result = await read('streets', [feature(line([-70.4, 40.6], [-70.39, 40.6]))]);
    expect(besideHydrants(result, 'streets', [near]).problems).toMatchObject([
      { code: 'layers-nowhere-near' },
    ]);
    const areas = await read('stations', [feature(polygon(square(-70, 40)), { name: 'One' })]);
    expect(besideHydrants(areas, 'stations', [near]).problems).toMatchObject([
      { code: 'layers-nowhere-near' },
    ]);
  });

  it('hydrants that stand on no street, or in no area, are counted and named', async () => {
    const streets = besideHydrants(await read('streets', [feature(good)]), 'streets', [near, off]);
    expect(streets.problems).toEqual([]);
    expect(streets.remarks).toMatchObject([
      { code: 'layers-hydrants-on-streets', params: { on: 1, count: 2, examples: 'H-2' } },
    ]);
    const areas = besideHydrants(
      await read('stations', [
        feature(polygon(square(-60.4, 40.595, 0.006)), { name: 'One' }),
        feature(polygon(square(-60.396, 40.595, 0.006)), { name: 'Two' }),
      ]),
      'stations',
      [near, off],
    );
    expect(areas.remarks).toMatchObject([
      { code: 'layers-hydrants-in-areas', params: { inside: 1, count: 2, examples: 'H-2' } },
      { code: 'layers-areas-overlap', params: { count: 1, examples: 'H-1' } },
    ]);
  });
});
