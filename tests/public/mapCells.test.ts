import fc from 'fast-check';
import { around } from 'geokdbush';
import KDBush from 'kdbush';
import { describe, expect, test } from 'vitest';
import { EARTH_RADIUS_M, greatCircleFt, type Position } from '../../shared/nearest/sphere.ts';
import { cellBounds, cellLeaves, leastDistanceFt } from '../../shared/public/cellTree.ts';
import { mapCell, mapCells, MOST_IN_CELL, placesInService } from '../../shared/public/mapCells.ts';
import type { MapCell, MapHydrant } from '../../shared/public/mapCells.ts';
import { nearPoint, type NearPoint } from '../../shared/public/nearPoint.ts';
import type { PublicOutOfService } from '../../shared/public/snapshot.ts';

const degrees = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });
const onGlobe: fc.Arbitrary<Position> = fc.record({
  latitudeDeg: degrees(-90, 90),
  longitudeDeg: degrees(-180, 180),
});

const aHydrant = (hydrantId: string, position: Position): MapHydrant => ({
  hydrantId,
  place: null,
  position: { ...position },
  hydrantClass: 'A',
  ratedFlowGpm: 1200,
  testedOn: '2025-05-14',
  notRetested: false,
  private: false,
});
const anOut = (hydrantId: string | null, position: Position | null): PublicOutOfService => ({
  hydrantId,
  inInventory: true,
  place: null,
  position,
  hydrantClass: null,
  ratedFlowGpm: null,
  testedOn: null,
  outages: [
    {
      outageId: 's',
      cause: 'strike',
      since: '2026-03-04T12:00:00.000Z',
      expectedAt: null,
      waitingFor: null,
      stage: 'reported',
    },
  ],
  nearest: [],
});

const cellsOf = (hydrants: readonly MapHydrant[], out: readonly PublicOutOfService[] = []): MapCell[] =>
  mapCells(
    hydrants,
    ({ position }) => position,
    (hydrant) => hydrant,
    out,
  );

/** A city on a grid, two to a block: enough for several cells. */
const city = Array.from({ length: 5000 }, (_, index) =>
  aHydrant(`H-${index}`, {
    latitudeDeg: 39 + (index % 71) / 1000,
    longitudeDeg: -98.4 + Math.floor(index / 71) / 1000,
  }),
);

describe('cells', () => {
  test('hold every hydrant once, inside their bounds, and no more than they may', () => {
    const cells = cellsOf(city);
    expect(cells.length).toBeGreaterThan(4);
    expect(cells.flatMap(({ inService }) => inService.hydrantId).toSorted()).toEqual(
      city.map(({ hydrantId }) => hydrantId).toSorted(),
    );
    for (const cell of cells) {
      mapCell.parse(cell);
      expect(cell.inService.hydrantId.length).toBeLessThanOrEqual(MOST_IN_CELL);
      const { south, north, west, east } = cellBounds(cell.cell);
      for (const { latitudeDeg, longitudeDeg } of placesInService([cell])) {
        expect(latitudeDeg).toBeGreaterThanOrEqual(south);
        expect(latitudeDeg).toBeLessThanOrEqual(north);
        expect(longitudeDeg).toBeGreaterThanOrEqual(west);
        expect(longitudeDeg).toBeLessThanOrEqual(east);
      }
    }
  });

  test('a hydrant that goes out changes its own cell and no other', () => {
    const [, struck] = city;
    const before = cellsOf(city);
    const after = cellsOf(
      city.filter((hydrant) => hydrant !== struck),
      [anOut(struck!.hydrantId, struck!.position)],
    );
    const texts = new Set(before.map((cell) => JSON.stringify(cell)));
    const changed = after.filter((cell) => !texts.has(JSON.stringify(cell)));
    expect(changed).toHaveLength(1);
    expect(changed[0]!.out).toMatchObject([{ hydrantId: 'H-1', cause: 'strike' }]);
    expect(after.map(({ cell }) => cell)).toEqual(before.map(({ cell }) => cell));
  });

  test('a town of a thousand is one cell', () => {
    expect(cellsOf(city.slice(0, 1000)).map(({ cell }) => cell)).toEqual(['c']);
  });

  test('thousands in one place end in one cell instead of parting for ever', () => {
    const heap = Array.from({ length: 3000 }, () => ({ latitudeDeg: 1, longitudeDeg: 1 }));
    expect(cellLeaves(heap, (place) => place, 10)).toHaveLength(1);
  });

  test('an outage without a place is in none', () => {
    expect(cellsOf([], [anOut('X', null)])).toEqual([]);
  });

  test('what is no name of a cell has no bounds', () => {
    expect(() => cellBounds('c4')).toThrow(RangeError);
    expect(() => cellBounds('../c')).toThrow(RangeError);
  });

  test('nothing in a cell is nearer than the cell is said to be', () => {
    const name = fc
      .array(fc.integer({ min: 0, max: 3 }), { maxLength: 12 })
      .map((digits) => `c${digits.join('')}`);
    fc.assert(
      fc.property(name, onGlobe, degrees(0, 1), degrees(0, 1), (cell, point, up, over) => {
        const bounds = cellBounds(cell);
        const inside = {
          latitudeDeg: bounds.south + (bounds.north - bounds.south) * up,
          longitudeDeg: bounds.west + (bounds.east - bounds.west) * over,
        };
        // A ten-millionth of the distance, and a hundredth of a foot, for the rounding of sines.
        const farFt = greatCircleFt(point, inside);
        expect(leastDistanceFt(bounds, point)).toBeLessThanOrEqual(farFt * (1 + 1e-7) + 0.01);
      }),
      { numRuns: 2000 },
    );
  });

  // A quarter of a great circle, by hand: from the equator to the cell north of 0° and east of 0°, ninety degrees off.
  test('a cell a quarter of the Earth away is that far', () => {
    const quarterFt = (Math.PI / 2) * (EARTH_RADIUS_M / 0.3048);
    expect(leastDistanceFt(cellBounds('c3'), { latitudeDeg: 0, longitudeDeg: -90 })).toBeCloseTo(
      quarterFt,
      3,
    );
    // Across the date line it is next door, and from inside it is nothing.
    expect(leastDistanceFt(cellBounds('c3'), { latitudeDeg: 45, longitudeDeg: -180 })).toBeCloseTo(0, 3);
    expect(leastDistanceFt(cellBounds('c3'), { latitudeDeg: 45, longitudeDeg: 90 })).toBe(0);
  });
});

/** Reads cells as the answer asks for them, until it asks for none. */
function search(cells: readonly MapCell[], point: Position, count: number): NearPoint & { reads: number } {
  const names = cells.map(({ cell }) => cell);
  const read = new Map<string, MapCell>();
  for (;;) {
    const answer = nearPoint(names, read, point, count);
    if (answer.next === null) return { ...answer, reads: read.size };
    read.set(
      answer.next,
      cells.find(({ cell }) => cell === answer.next)!,
    );
  }
}

describe('nearest to a point', () => {
  const cells = cellsOf(city);
  // Another search altogether: geokdbush on a k-d tree of the same places.
  const tree = new KDBush(city.length);
  for (const { position } of city) tree.add(position.longitudeDeg, position.latitudeDeg);
  tree.finish();

  test('is what a search of all gives, from anywhere, and reads few cells in the city', () => {
    const near = fc.record({ latitudeDeg: degrees(38.99, 39.08), longitudeDeg: degrees(-98.41, -98.32) });
    fc.assert(
      fc.property(fc.oneof(near, onGlobe), (point) => {
        const found = search(cells, point, 5);
        const expected = around(tree, point.longitudeDeg, point.latitudeDeg, 5).map((row) =>
          greatCircleFt(point, city[row]!.position),
        );
        found.inService.forEach(({ distanceFt }, index) => {
          // The two libraries' cosines differ in the last digits: places as far as one another may change.
          expect(distanceFt).toBeCloseTo(expected[index]!, 1);
        });
        expect(found.inService).toHaveLength(5);
      }),
      { numRuns: 200 },
    );
    expect(search(cells, { latitudeDeg: 39.01, longitudeDeg: -98.395 }, 5).reads).toBeLessThanOrEqual(2);
  });

  test('names those out of service that are nearer than the last, and none beyond', () => {
    const here = { latitudeDeg: 39.0301, longitudeDeg: -98.3699 };
    const out = [
      anOut('NEAR', { latitudeDeg: 39.03, longitudeDeg: -98.37 }),
      anOut('FAR', { latitudeDeg: 39.07, longitudeDeg: -98.37 }),
    ];
    const found = search(cellsOf(city, out), here, 3);
    expect(found.out.map(({ hydrantId }) => hydrantId)).toEqual(['NEAR']);
    expect(found.inService).toHaveLength(3);
  });

  test('keeps marks with the hydrant that they belong to', () => {
    const marked = city.slice(0, 3).map((hydrant, index) => ({
      ...hydrant,
      notRetested: index === 1,
      private: index === 2,
      ...(index === 2 ? { maybeStruck: true as const } : {}),
    }));
    const found = search(cellsOf(marked), marked[0]!.position, 3).inService;
    expect(found.map((near) => [near.notRetested, near.private, near.maybeStruck])).toEqual([
      [false, null, undefined],
      [true, null, undefined],
      [false, true, true],
    ]);
    // A thousandth of a degree to the north, on the mean sphere (IUGG): 2π × 6 371 008.8 m / 360 000 / 0.3048.
    expect(found[1]).toMatchObject({ hydrantId: 'H-1', bearing: 'N' });
    expect(found[1]!.distanceFt).toBeCloseTo(364.81, 1);
  });

  test('of nothing is nothing', () => {
    expect(search([], { latitudeDeg: 0, longitudeDeg: 0 }, 5)).toMatchObject({ inService: [], next: null });
  });
});
