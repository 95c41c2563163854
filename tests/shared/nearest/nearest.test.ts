import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayServe } from '../../../shared/inventory/hydrant.ts';
import { nearestIndex, nearestInService, type Findable } from '../../../shared/nearest/nearest.ts';
import { greatCircleFt } from '../../../shared/nearest/sphere.ts';

const hydrant = (hydrantId: string, latitudeDeg: number, longitudeDeg: number): Findable => ({
  hydrantId,
  latitudeDeg,
  longitudeDeg,
});
const all = () => true;

/** The plain way: look at every hydrant. */
function bruteForce(
  hydrants: readonly Findable[],
  point: { latitudeDeg: number; longitudeDeg: number },
  count: number,
  isInService: (hydrant: Findable) => boolean,
) {
  return hydrants
    .filter(isInService)
    .map((each) => ({ hydrantId: each.hydrantId, distanceFt: greatCircleFt(point, each) }))
    .sort((one, other) => one.distanceFt - other.distanceFt)
    .slice(0, count);
}

describe('the nearest hydrants in service', () => {
  const town = nearestIndex([
    hydrant('A', 41.2, -70.1),
    hydrant('B', 41.201, -70.1),
    hydrant('C', 41.2, -70.098),
    hydrant('D', 41.19, -70.11),
  ]);
  const here = { latitudeDeg: 41.2, longitudeDeg: -70.1 };

  it('come nearest first, with distance and direction', () => {
    const [first, second, third] = nearestInService(town, here, 3, ({ hydrantId }) => hydrantId !== 'A');
    // PROJ 9.1.1 geod on WGS 84 gives 111.0578 m (364.36 ft) and 167.7607 m (550.40 ft); the sphere may be 0.56 % off.
    expect(first).toMatchObject({ hydrant: { hydrantId: 'B' }, bearing: 'N' });
    expect(first!.distanceFt / 364.36).toBeCloseTo(1, 2);
    expect(second).toMatchObject({ hydrant: { hydrantId: 'C' }, bearing: 'E' });
    expect(second!.distanceFt / 550.4).toBeCloseTo(1, 2);
    expect(third).toMatchObject({ hydrant: { hydrantId: 'D' }, bearing: 'SW' });
  });

  it('are fewer where there are no more, and none where none is in service', () => {
    expect(nearestInService(town, here, 9, all)).toHaveLength(4);
    expect(nearestInService(town, here, 3, () => false)).toEqual([]);
    expect(nearestInService(town, here, 0, all)).toEqual([]);
    expect(nearestInService(nearestIndex([]), here, 3, all)).toEqual([]);
  });

  it('come in the order of their ids where they are equally far', () => {
    const twins = nearestIndex([
      hydrant('b', 41.2, -70.1),
      hydrant('B', 41.2, -70.1),
      hydrant('a', 41.2, -70.1),
    ]);
    expect(nearestInService(twins, here, 3, all).map((each) => each.hydrant.hydrantId)).toEqual([
      'B',
      'a',
      'b',
    ]);
  });

  it.each([NaN, 91, -91])('refuse a point at latitude %d', (latitudeDeg) => {
    expect(() => nearestInService(town, { latitudeDeg, longitudeDeg: 0 }, 1, all)).toThrow(RangeError);
    expect(() => nearestIndex([hydrant('X', latitudeDeg, 0)])).toThrow(RangeError);
  });
  it.each([-1, 1.5, NaN])('refuse a count of %d', (count) =>
    expect(() => nearestInService(town, here, count, all)).toThrow(RangeError),
  );

  const spot = (spread: number) =>
    fc.tuple(
      fc.double({ min: -spread, max: spread, noNaN: true }),
      fc.double({ min: -spread, max: spread, noNaN: true }),
    );
  const anywhere = fc.tuple(
    fc.double({ min: -90, max: 90, noNaN: true }),
    fc.double({ min: -180, max: 180, noNaN: true }),
  );
  it.each([
    ['in a town', spot(0.05), ([lat, lon]: [number, number]) => [41.2 + lat, -70.1 + lon]],
    [
      'across the date line',
      spot(1),
      ([lat, lon]: [number, number]) => [lat, lon > 0 ? 180 - lon : -180 - lon],
    ],
    [
      'around a pole',
      fc.tuple(fc.double({ min: 0, max: 2, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true })),
      ([lat, lon]: [number, number]) => [90 - lat, lon],
    ],
    ['on the whole globe', anywhere, ([lat, lon]: [number, number]) => [lat, lon]],
  ])('are those that brute force finds, %s', (_, places, move) => {
    fc.assert(
      fc.property(
        fc.array(places, { minLength: 1, maxLength: 300 }),
        places,
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 4 }),
        (spots, from, count, every) => {
          const hydrants = spots.map((each, row) => {
            const [lat = 0, lon = 0] = move(each);
            return hydrant(`H-${row}`, lat, lon);
          });
          const [latitudeDeg = 0, longitudeDeg = 0] = move(from);
          const inService = ({ hydrantId }: Findable): boolean => Number(hydrantId.slice(2)) % every === 0;
          const found = nearestInService(
            nearestIndex(hydrants),
            { latitudeDeg, longitudeDeg },
            count,
            inService,
          );
          const plain = bruteForce(hydrants, { latitudeDeg, longitudeDeg }, count, inService);
          // Of hydrants equally far either may be named; the distances must agree. Rounding may swap points less than 0.001 ft apart.
          expect(found.map(({ distanceFt }) => distanceFt)).toEqual(
            plain.map(({ distanceFt }) => expect.closeTo(distanceFt, 2)),
          );
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('what the inventory itself says', () => {
  it.each([
    ['active', true],
    ['unknown', true],
    ['inactive', false],
    ['abandoned', false],
    ['planned', false],
  ] as const)('%s may serve: %s', (service, may) => expect(mayServe({ service })).toBe(may));
});
