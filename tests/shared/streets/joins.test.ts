import { describe, expect, it } from 'vitest';
import type { StreetLine } from '../../../shared/layers/lines.ts';
import { greatCircleFt, type Position } from '../../../shared/nearest/sphere.ts';
import { buildStreets } from '../../../shared/streets/build.ts';
import { looseJoints } from '../../../shared/streets/joints.ts';
import { layOut } from '../../../shared/streets/network.ts';
import { streetWalk } from '../../../shared/streets/walk.ts';
import { seeded } from '../../support/seeded.ts';
import { positionOf, type Place } from './town.ts';

/** How lines become one network; what joins and what does not is worked out by hand on the lines themselves. */
const line = (...places: Place[]): StreetLine => ({ row: 1, places: places.flat(), level: 0 });
const walkOn = (lines: readonly StreetLine[]) => streetWalk(layOut(buildStreets(lines, 50).streets)!);
const at = (longitudeDeg: number, latitudeDeg: number): Position => ({ longitudeDeg, latitudeDeg });

describe('a network', () => {
  it('says of its parts how many streets each has, the largest first', () => {
    const alone = line([-61, 41], [-61, 41.001]);
    const three = [
      line([-60, 40], [-60, 40.001]),
      line([-60, 40.001], [-60, 40.002], [-60, 40.003]),
      line([-60, 40.001], [-59.999, 40.001]),
    ];
    expect(buildStreets([alone, ...three], 50).parts).toEqual([3, 1]);
  });

  it('takes two positions that round to one for one: a street is not cut there', () => {
    const written = line([-60, 40], [-60, 40.001], [-60.000_000_01, 40.001], [-60, 40.002]);
    expect(buildStreets([written], 50).streets.fromNode).toHaveLength(1);
  });

  it('gives no way that is shorter than the straight line, by as little as a rounding', () => {
    const roll = seeded(31);
    const ends: [Place, Place] = [
      [-60.0000001, 40.0000003],
      [-59.9967892, 40.0031237],
    ];
    const walk = walkOn([line(...ends)]);
    const onIt = (share: number): Position =>
      positionOf([
        ends[0][0] + (ends[1][0] - ends[0][0]) * share,
        ends[0][1] + (ends[1][1] - ends[0][1]) * share,
      ]);
    for (let turn = 0; turn < 200; turn += 1) {
      const [from, to] = [onIt(roll()), onIt(roll())];
      expect(walk.walkFt(from, to, 5000)).toBeGreaterThanOrEqual(greatCircleFt(from, to));
    }
  });
});

describe('streets that cross without a position in common', () => {
  // A long street from west to east, crossed by three, the farthest of which stands first in the file.
  const crossing = (longitude: number): StreetLine => line([longitude, 39.9995], [longitude, 40.0005]);
  const lines = [crossing(-59.997), crossing(-59.999), crossing(-59.998), line([-60, 40], [-59.996, 40])];
  const loose = looseJoints(lines, 0);

  it('are told, and are no network', () => {
    expect(loose.crossings).toHaveLength(3);
    expect(buildStreets(lines, 50).parts).toEqual([1, 1, 1, 1]);
  });

  it('are joined on demand, each where it crosses, in the order along the street', () => {
    const joined = loose.joined({ crossings: true, endsWithinFt: 0 });
    const { places } = joined[3]!;
    const longitudes = places.filter((_, index) => index % 2 === 0);
    expect(longitudes.map((longitude) => Math.round(longitude * 1e6) / 1e6)).toEqual([
      -60, -59.999, -59.998, -59.997, -59.996,
    ]);
    const up = greatCircleFt(at(-59.999, 40), at(-59.999, 40.0005));
    const along = greatCircleFt(at(-59.999, 40), at(-59.997, 40));
    expect(walkOn(joined).walkFt(at(-59.999, 40.0005), at(-59.997, 40.0005), 5000)).toBeCloseTo(
      2 * up + along,
      0,
    );
  });
});
