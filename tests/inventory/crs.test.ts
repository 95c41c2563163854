import { describe, expect, it } from 'vitest';
import { resolveCrs } from '../../shared/inventory/place/crs.ts';
import { importText, refusal } from './support.ts';

/**
 * PROJ 9.1.1, `echo "x y" | cs2cs -f %.8f EPSG:CODE EPSG:4326`: another implementation with the registry's own
 * definitions. Tolerance 2e-7 degrees (2 cm): PROJ prints eight decimals, and the US survey foot of a definition
 * written to 16 digits is exact to less.
 */
const projValues = [
  ['EPSG:2263', 1_000_000, 200_000, 40.71561648, -73.94318507],
  ['EPSG:2274', 2_200_000, 260_000, 35.04507803, -85.22664879],
  ['EPSG:2278', 2_130_000, 13_700_000, 29.41834887, -98.4926822],
  ['EPSG:2269', 7_640_000, 690_000, 45.53834329, -122.6940154],
  ['EPSG:2236', 920_000, 530_000, 25.78953446, -80.19817243],
  ['EPSG:3857', -8_235_000, 4_980_000, 40.78036956, -73.97626365],
  ['EPSG:26918', 585_000, 4_510_000, 40.73655356, -73.99332226],
  ['EPSG:25832', 400_000, 5_700_000, 51.44235232, 7.56112321],
  ['EPSG:32633', 500_000, 4_649_776, 41.99999798, 15],
  ['EPSG:32719', 350_000, 6_290_000, -33.51905919, -70.61516356],
] as const;

describe('coordinate systems, beside PROJ', () => {
  it.each(projValues)('%s (%d, %d)', (code, x, y, latitude, longitude) => {
    const [lon, lat] = resolveCrs(code).toWgs84(x, y) ?? [];
    expect(Math.abs(lat! - latitude)).toBeLessThan(2e-7);
    expect(Math.abs(lon! - longitude)).toBeLessThan(2e-7);
  });

  it('knows later realisations of a zone by their own code', () => {
    // NAD 83 (2011) New York Long Island (ftUS) has the parameters of EPSG:2263 (EPSG registry).
    expect(resolveCrs('EPSG:6539').toWgs84(1_000_000, 200_000)).toEqual(
      resolveCrs('2263').toWgs84(1_000_000, 200_000),
    );
  });

  it.each(['EPSG:4326', 'urn:ogc:def:crs:OGC:1.3:CRS84', 'urn:ogc:def:crs:EPSG::4269', 'epsg:4258'])(
    '%s is degrees as they stand',
    (text) => {
      expect(resolveCrs(text).toWgs84(-70.1, 41.2)).toEqual([-70.1, 41.2]);
    },
  );

  it('takes a definition with its datum stated', () => {
    const crs = resolveCrs('+proj=utm +zone=18 +datum=NAD83 +units=m');
    const [lon, lat] = crs.toWgs84(585_000, 4_510_000) ?? [];
    expect(lat).toBeCloseTo(40.73655356, 6);
    expect(lon).toBeCloseTo(-73.99332226, 6);
  });

  it.each([
    ['EPSG:4267', 'datum-not-stated'],
    ['EPSG:26718', 'datum-not-stated'],
    ['+proj=utm +zone=18 +datum=NAD27 +units=m', 'datum-not-stated'],
    ['+proj=tmerc +lat_0=0 +lon_0=9 +k=1 +x_0=3500000 +ellps=bessel +units=m', 'datum-not-stated'],
    ['+proj=utm +zone=18 +ellps=clrk66', 'datum-not-stated'],
    ['EPSG:99999', 'crs-unknown'],
    ['New York', 'crs-unknown'],
    ['+proj=nonsense +datum=WGS84', 'crs-not-readable'],
  ])('refuses %s: %s', async (text, code) =>
    expect(await refusal(Promise.resolve().then(() => resolveCrs(text)))).toEqual([code]),
  );

  it('takes an older datum once its shift is stated', () => {
    expect(
      resolveCrs(
        '+proj=tmerc +lat_0=0 +lon_0=9 +k=1 +x_0=3500000 +ellps=bessel +towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7 +units=m',
      ).kind,
    ).toBe('projected');
  });
});

const rows = (points: readonly (readonly [x: number, y: number])[], names = 'x,y'): string =>
  [`id,${names}`, ...points.map(([x, y], row) => `H-${row},${x},${y}`)].join('\n');
const feet = rows([
  [1_000_000, 200_000],
  [1_000_100, 200_100],
  [1_000_200, 200_200],
]);

describe('what is refused rather than guessed', () => {
  it('projected coordinates with no system stated', async () =>
    expect(await refusal(importText(feet))).toEqual(['projected']));
  it('a system in whose area the points are not', async () =>
    expect(await refusal(importText(feet, { crs: 'EPSG:2225' }))).toEqual(['outside-area']));
  it('a projected system for degrees', async () =>
    expect(await refusal(importText(rows([[-73.9, 40.7]]), { crs: 'EPSG:2263' }))).toEqual([
      'already-degrees',
    ]));
  it('columns that hold each other’s axis', async () => {
    expect(
      await refusal(
        importText(
          rows([
            [40.7, -73.9],
            [40.8, -73.8],
          ]),
        ),
      ),
    ).toEqual(['axes-swapped']);
    expect(
      await refusal(
        importText(
          rows([
            [40.7, -173.9],
            [40.8, -173.8],
          ]),
        ),
      ),
    ).toEqual(['axes-swapped']);
    expect(
      await refusal(
        importText(
          rows([
            [200_000, 1_000_000],
            [200_100, 1_000_100],
          ]),
          { crs: 'EPSG:2263' },
        ),
      ),
    ).toEqual(['axes-swapped']);
  });
  it('no coordinates at all', async () =>
    expect(await refusal(importText('id,street\n1,Gull Street\n'))).toEqual(['no-coordinate-columns']));
  it('coordinates of words', async () =>
    expect(await refusal(importText('id,lat,lon\n1,north,west\n2,n,w\n'))).toEqual([
      'no-coordinate-columns',
    ]));

  it('and takes the same feet once the system is stated', async () => {
    const { hydrants } = await importText(feet, { crs: 'EPSG:2263' });
    expect(hydrants).toHaveLength(3);
    expect(hydrants[0]?.latitudeDeg).toBeCloseTo(40.71561648, 6);
  });
  it('says which datum it assumed for a table in degrees', async () => {
    const { report } = await importText(rows([[-73.9, 40.7]]));
    expect(report.remarks.map(({ code }) => code)).toContain('inventory-datum-assumed');
  });
});
