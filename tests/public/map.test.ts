import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { townMap as drawn, townPlaces, type TownMap } from '../../shared/public/map.ts';
import type { PublicPosition } from '../../shared/public/snapshot.ts';
import { project, roundLength, scaleFeet } from '../../shared/public/mapFrame.ts';
import { MARKER_SIZE } from '../../shared/public/mapSigns.ts';
import { nearMap } from '../../shared/public/nearMap.ts';
import type { PublicNearest } from '../../shared/public/snapshot.ts';

interface Dot {
  readonly x: number;
  readonly y: number;
}
/** Where a path of dots begins its lines, read as SVG 2 § 9.3 says: `M` to a place, `m` from the one before. */
function dotsOf(path: string): Dot[] {
  let [x, y] = [0, 0];
  return [...path.matchAll(/([Mm])(-?[\d.]+) (-?[\d.]+)h0/g)].map(([, command, across, down]) => {
    [x, y] = command === 'M' ? [Number(across), Number(down)] : [x + Number(across), y + Number(down)];
    return { x, y };
  });
}

/** The town as it stands beside the list. */
const townMap = (
  dots: readonly PublicPosition[],
  out: readonly (PublicPosition | null)[],
): TownMap | null => {
  const places = townPlaces(dots, out);
  return places && drawn(places);
};

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });
// One degree of latitude on the mean sphere: 2π × 6 371 008.8 m / 360 / 0.3048 (IUGG).
const FEET_PER_DEGREE = (2 * Math.PI * 6_371_008.8) / 360 / 0.3048;

describe('the map of the town', () => {
  test('is true to scale to the north and to the east, north up', () => {
    const cos = Math.cos((39.205 * Math.PI) / 180);
    const map = townMap([], [at(39.2, -98.4), at(39.21, -98.4), at(39.2, -98.38)])!;
    const [origin, north, east] = map.markers;
    const feetPerUnit = map.scale.feet / map.scale.length;
    expect((origin!.y - north!.y) * feetPerUnit).toBeCloseTo(0.01 * FEET_PER_DEGREE, -2);
    expect((east!.x - origin!.x) * feetPerUnit).toBeCloseTo(0.02 * cos * FEET_PER_DEGREE, -2);
    expect(north!.x).toBeCloseTo(origin!.x, 1);
  });

  test('keeps numbered signs apart and inside, with the true place beside each', () => {
    const out = Array.from({ length: 12 }, (_, index) => at(39.2 + index * 0.00001, -98.4));
    const map = townMap([at(39.19, -98.41), at(39.21, -98.39)], out)!;
    for (const [index, one] of map.markers.entries()) {
      expect(one.signX).toBeGreaterThan(0);
      expect(one.signX).toBeLessThan(map.width);
      expect(one.signY).toBeGreaterThan(0);
      expect(one.signY).toBeLessThan(map.height);
      for (const other of map.markers.slice(0, index))
        expect(Math.hypot(one.signX - other.signX, one.signY - other.signY)).toBeGreaterThanOrEqual(
          MARKER_SIZE - 0.2,
        );
    }
  });

  test('leaves out far dots and says how many, and never a hydrant that is out', () => {
    const town = Array.from({ length: 400 }, (_, index) =>
      at(39.2 + (index % 20) / 1000, -98.4 + Math.floor(index / 20) / 1000),
    );
    const map = townMap([...town, at(10, 10)], [at(39.21, -98.39)])!;
    expect(map.beyond).toBeGreaterThanOrEqual(1);
    expect(map.scale.feet).toBeLessThan(10_000);
    const farOut = townMap(town, [at(39.5, -98.39)])!;
    expect(farOut.markers[0]!.y).toBeGreaterThan(0);
  });

  test('stays small for a city of 250,000', () => {
    const city = Array.from({ length: 250_000 }, (_, index) =>
      at(39 + (index % 500) / 1000, -98.4 + Math.floor(index / 500) / 1000),
    );
    const map = townMap(city, [null])!;
    // A dot is 10 or so letters; the page's budget is 60 kB compressed.
    expect(map.dots.length).toBeLessThan(200_000);
    expect(gzipSync(map.dots).length).toBeLessThan(5000);
    expect(map.markers).toEqual([]);
  });

  test('every dot of a town stands where its hydrant does, to a tenth of the drawing', () => {
    const places = fc.record({
      latitudeDeg: fc.double({ min: 39.2, max: 39.23, noNaN: true }),
      longitudeDeg: fc.double({ min: -98.42, max: -98.38, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(places, { minLength: 1, maxLength: 90 }), (town) => {
        const { dots, projection } = townMap(town, [])!;
        const wanted = town.map((hydrant) => project(projection, hydrant));
        const drawn = dotsOf(dots);
        const near = (a: Dot, b: Dot): boolean => Math.abs(a.x - b.x) < 0.06 && Math.abs(a.y - b.y) < 0.06;
        for (const dot of wanted) expect(drawn.some((one) => near(one, dot))).toBe(true);
        for (const one of drawn) expect(wanted.some((dot) => near(one, dot))).toBe(true);
      }),
    );
  });

  test('there is none of nothing', () => {
    expect(townMap([], [null])).toBeNull();
  });

  // A mile is 5,280 ft, a metre 1 / 0.3048 ft, both exactly (NIST SP 811).
  test.each([
    [5279, 'us', 5000],
    [5280, 'us', 5280],
    [12_000, 'us', 10_560],
    [1000, 'metric', 200 / 0.3048],
    [12_000, 'metric', 2000 / 0.3048],
  ] as const)('the bar of at most %d ft in %s is %d ft long', (most, system, expected) => {
    expect(scaleFeet(most, system)).toBeCloseTo(expected, 6);
  });

  test.each([
    [999, 500],
    [1000, 1000],
    [4999, 2000],
    [5000, 5000],
    [0.3, 0.2],
  ])('the round length up to %d is %d', (most, expected) => {
    expect(roundLength(most)).toBeCloseTo(expected, 9);
  });
});

describe('the map of the surroundings', () => {
  const near = (
    position: { latitudeDeg: number; longitudeDeg: number },
    distanceFt: number,
  ): PublicNearest => ({
    hydrantId: 'H-2',
    place: null,
    position,
    distanceFt,
    distanceBy: 'straight',
    bearing: 'N',
    hydrantClass: null,
    ratedFlowGpm: null,
    testedOn: null,
    notRetested: false,
    private: null,
  });

  test('stands each hydrant at its distance from the middle, in its direction', () => {
    const map = nearMap(at(39.2, -98.4), [near(at(39.201, -98.4), 0.001 * FEET_PER_DEGREE)])!;
    const ring = map.rings[0]!;
    const drawn = map.centre - map.hydrants[0]!.y;
    expect((drawn * ring.feet) / ring.radius).toBeCloseTo(0.001 * FEET_PER_DEGREE, 0);
    expect(map.hydrants[0]!.x).toBeCloseTo(map.centre, 1);
    expect(map.rings.at(-1)!.feet).toBeGreaterThanOrEqual(365);
  });

  test('reaches as far as the hydrants stand, however long the way along the streets is', () => {
    const place = at(39.201, -98.4);
    const along = { ...near(place, 4000), distanceBy: 'streets' as const };
    const straight = near(place, 0.001 * FEET_PER_DEGREE);
    expect(nearMap(at(39.2, -98.4), [along])!.rings).toEqual(nearMap(at(39.2, -98.4), [straight])!.rings);
  });

  test('is not drawn where rounded positions would contradict the distance', () => {
    expect(nearMap(at(39.2, -98.4), [near(at(39.2, -98.4), 365)])).toBeNull();
  });

  test('there is none without neighbours', () => {
    expect(nearMap(at(39.2, -98.4), [])).toBeNull();
  });
});

describe('a position that cannot be of this town', () => {
  const town = Array.from({ length: 12 }, (_, index) => at(39.2 + index / 1000, -94.5));
  const right = at(39.205, -94.501);
  const scaleOf = (out: Parameters<typeof townMap>[1]) => townMap(town, out)?.scale.feet;

  test.each([
    ['0, 0', at(0, 0)],
    ['90, 180', at(90, 180)],
    // 0.6° of latitude is 66.7 km (111.2 km a degree, IUGG radius).
    ['66 km to the north', at(39.8, -94.5)],
  ])('%s is left off, said, and does not shrink the town', (_, wrong) => {
    const map = townMap(town, [right, wrong]);
    expect(map).toMatchObject({ outBeyond: 1, markers: [{ index: 0 }] });
    expect(map?.scale.feet).toBe(scaleOf([right]));
    // In the inventory it is no better.
    expect(townMap([...town, wrong], [right])).toMatchObject({
      beyond: 1,
      scale: { feet: scaleOf([right]) },
    });
  });

  test('33 km to the north is a far hydrant, and drawn', () => {
    expect(townMap(town, [right, at(39.5, -94.5)])).toMatchObject({ outBeyond: 0, markers: [{}, {}] });
  });
});
