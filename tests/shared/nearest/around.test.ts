import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestByStreets } from '../../../shared/nearest/byStreets.ts';
import { nearestIndex } from '../../../shared/nearest/nearest.ts';
import { greatCircleFt, type Position } from '../../../shared/nearest/sphere.ts';
import { hydrantsWithin } from '../../../shared/nearest/within.ts';

/** Places around a point of the globe, some miles to every side of it, wherever that is. */
const around = ({ latitudeDeg, longitudeDeg }: Position) => {
  const shrink = Math.max(0.001, Math.cos((latitudeDeg * Math.PI) / 180));
  const by = fc.double({ min: -0.02, max: 0.02, noNaN: true });
  return fc.record({ north: by, east: by }).map(({ north, east }) => ({
    latitudeDeg: Math.max(-90, Math.min(90, latitudeDeg + north)),
    // Back into −180 to 180 where it crosses the date line.
    longitudeDeg: ((((longitudeDeg + east / shrink + 180) % 360) + 360) % 360) - 180,
  }));
};
const named = (places: readonly Position[]) =>
  places.map((place, index) => ({ ...place, hydrantId: `H-${index}` }));

describe.each([
  ['a town', { latitudeDeg: 40, longitudeDeg: -98 }],
  ['the date line', { latitudeDeg: 52, longitudeDeg: 179.995 }],
  ['the other side of it', { latitudeDeg: -17, longitudeDeg: -179.999 }],
  ['the north pole', { latitudeDeg: 89.999, longitudeDeg: 30 }],
  ['the south pole', { latitudeDeg: -90, longitudeDeg: 0 }],
  ['the equator at Greenwich', { latitudeDeg: 0, longitudeDeg: 0 }],
])('everything within a distance of %s', (_, middle) => {
  it('is what a plain loop finds, nearest first', () => {
    const places = fc.array(around(middle), { maxLength: 50 });
    fc.assert(
      fc.property(places, around(middle), fc.constantFrom(300, 1000, 5000), (spots, point, ft) => {
        const hydrants = named(spots);
        const looped = hydrants
          .map((hydrant) => ({ hydrant, ft: greatCircleFt(point, hydrant) }))
          .filter((each) => each.ft <= ft)
          .sort((a, b) => a.ft - b.ft || (a.hydrant.hydrantId < b.hydrant.hydrantId ? -1 : 1));
        expect(
          hydrantsWithin(nearestIndex(hydrants), point, ft).map(({ hydrant }) => hydrant.hydrantId),
        ).toEqual(looped.map(({ hydrant }) => hydrant.hydrantId));
      }),
    );
  });
});

describe('the nearest along streets', () => {
  const town = { latitudeDeg: 40, longitudeDeg: -98 };
  // Never shorter than the straight line; 0 stands for a hydrant that no street reaches.
  const detour = fc.oneof(fc.constant(0), fc.double({ min: 1, max: 6, noNaN: true }));
  it('are what sorting all of them gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(around(town), detour, fc.boolean()), { maxLength: 60 }),
        fc.integer({ min: 0, max: 6 }),
        (rows, count) => {
          const hydrants = named(rows.map(([place]) => place));
          const way = new Map(
            hydrants.map((hydrant, index) => [
              hydrant.hydrantId,
              greatCircleFt(town, hydrant) * (rows[index]?.[1] || Infinity),
            ]),
          );
          const walkFt = (_: Position, { hydrantId }: { hydrantId: string }, mostFt: number) => {
            const feet = way.get(hydrantId) ?? Infinity;
            return feet <= mostFt ? feet : null;
          };
          const serves = (index: number): boolean => rows[index]?.[2] ?? false;
          const sorted = hydrants
            .filter((hydrant, index) => serves(index) && (way.get(hydrant.hydrantId) ?? Infinity) <= 5280)
            .sort((a, b) => (way.get(a.hydrantId) ?? 0) - (way.get(b.hydrantId) ?? 0))
            .slice(0, count);
          const found = nearestByStreets(
            nearestIndex(hydrants),
            town,
            { count, mostFt: 5280, walkFt },
            ({ hydrantId }) => serves(hydrants.findIndex((each) => each.hydrantId === hydrantId)),
          );
          expect(found.map(({ hydrant }) => hydrant.hydrantId)).toEqual(sorted.map((each) => each.hydrantId));
          for (const { hydrant, distanceFt } of found) expect(distanceFt).toBe(way.get(hydrant.hydrantId));
        },
      ),
    );
  });
});
