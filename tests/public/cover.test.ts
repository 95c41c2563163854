import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { WalkFt } from '../../shared/fireCover/cover.ts';
import type { FireCoverRules } from '../../shared/fireCover/settings.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { greatCircleFt, type Position } from '../../shared/nearest/sphere.ts';
import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { aHydrant, anOutage, aStatus, aStrike, inventoryOf, townSettings } from '../support/town.ts';

const now = '2026-03-04T20:05:00.000Z';
const pumper: Hydrant['outlets'] = [{ kind: 'pumper', diameterIn: 4.5 }];

/** Ten-thousandths of a degree north: each is 36.48 ft (2πR/360 with R = 6 371 008.8 m, IUGG). */
const north = (tenThousandths: number): Partial<Hydrant> => ({ latitudeDeg: 39.2 + tenThousandths / 10_000 });

/** A at the place itself, B at 365 ft, C at 730 ft, D at 1,277 ft. */
const street = [
  aHydrant('A', { place: 'Alder St', ratedFlowGpm: 1200, outlets: pumper }),
  aHydrant('B', { ...north(10), ratedFlowGpm: 1600, outlets: pumper }),
  aHydrant('C', { ...north(20), ratedFlowGpm: 200, outlets: pumper }),
  aHydrant('D', { ...north(35), ratedFlowGpm: 900, outlets: pumper }),
];
const given = (
  out: readonly string[],
  hydrants: readonly Hydrant[] = street,
  more: Partial<PublicSources> = {},
) => ({
  inventory: inventoryOf(hydrants),
  statuses: out.map((hydrantId) => aStatus(hydrantId, [anOutage(`o-${hydrantId}`)])),
  strikes: [],
  flowTests: new Map(),
  ...more,
});
interface Set {
  readonly publishing?: Partial<UtilitySettings['publishing']>;
  readonly fireCover?: FireCoverRules;
}
const build = (sources: PublicSources, { publishing = {}, fireCover = {} }: Set = {}) =>
  buildEdition(
    sources,
    { ...townSettings, publishing: { ...townSettings.publishing, ...publishing }, fireCover },
    now,
  );
const entry = (sources: PublicSources, set: Set = {}, hydrantId = 'A') =>
  build(sources, set).snapshot.outOfService.find((each) => each.hydrantId === hydrantId)!;
const by = (walk: Readonly<Record<string, number>>): WalkFt => {
  return (_, { hydrantId }, mostFt) => {
    const feet = walk[hydrantId];
    return feet === undefined || feet > mostFt ? null : feet;
  };
};

describe('what is left around a hydrant that is out', () => {
  // By hand from the rule (ISO Fire Suppression Rating Schedule, as printed in cities' rating reports): before, A
  // 1,000 (its ring's most), B 670, C 200 (its flow, under the ring's 250), D beyond 1,000 ft. Left, B and C.
  test('on straight lines: counts within 300, 600 and 1,000 ft, credit "at most"', () => {
    expect(entry(given(['A'])).cover).toEqual({
      by: 'straight',
      rings: [
        { toFt: 300, before: 1, left: 0 },
        { toFt: 600, before: 2, left: 1 },
        { toFt: 1000, before: 3, left: 2 },
      ],
      beforeGpm: 1870,
      leftGpm: 870,
      certain: false,
      doubts: { noFlow: 0, noOutlets: 0, notRetested: 0, maybeStruck: 0, classOnly: false },
    });
  });

  // Along streets B is 620 ft away (250 gpm) and C is reached by none.
  test('along streets: what the walk says, and certain where flows and outlets are known', () => {
    const streets = { walkFt: by({ A: 0, B: 620, D: 1400 }) };
    const { cover, nearest } = entry(given(['A'], street, { streets }));
    expect(cover).toMatchObject({ by: 'streets', beforeGpm: 1250, leftGpm: 250, certain: true });
    expect(cover?.rings.map(({ left }) => left)).toEqual([0, 0, 1]);
    // Nearest along the streets first; one that no street reaches comes last, by its straight line.
    expect(nearest).toMatchObject([
      { hydrantId: 'B', distanceFt: 620, distanceBy: 'streets', hoseReach: 'reaches', bearing: 'N' },
      { hydrantId: 'D', distanceFt: 1400, distanceBy: 'streets', hoseReach: 'too-far' },
      { hydrantId: 'C', distanceBy: 'straight', hoseReach: 'perhaps' },
    ]);
  });

  test('hose of the length that is set: on a straight line it may reach, and beyond it does not', () => {
    // 36.48 ft × 10, 20, 35 = 365, 730, 1,277 ft; 1,200 ft is the standard complement.
    const reach = (set: Set) => entry(given(['A']), set).nearest.map(({ hoseReach }) => hoseReach);
    expect(reach({})).toEqual(['perhaps', 'perhaps', 'too-far']);
    expect(reach({ fireCover: { hoseFt: 700 } })).toEqual(['perhaps', 'too-far', 'too-far']);
    expect(build(given(['A']), { fireCover: { hoseFt: 700 } }).snapshot.fireCover?.hoseFt).toBe(700);
  });

  test('what is not on record is counted, where it could make a difference', () => {
    const bare = street.map((hydrant) => ({ ...hydrant, outlets: [], ratedFlowGpm: null }));
    // B in the 670 gpm ring may lack a pumper outlet; C within 1,000 ft gets 250 gpm with any outlet.
    expect(entry(given(['A'], bare)).cover).toMatchObject({
      leftGpm: 920,
      certain: false,
      doubts: { noFlow: 2, noOutlets: 1 },
    });
  });

  test('one that came back without its tests, or may be the struck one, makes it uncertain', () => {
    const streets = { walkFt: by({ A: 0, B: 620 }) };
    const deferred = [{ proof: 'flow-test' as const, reason: 'ice', byWorkerId: 'w-1' }];
    const back = aStatus('B', [anOutage('s-9', { endedAt: '2026-03-04T18:00:00Z', deferred })]);
    const sources = given(['A'], street, { streets });
    expect(entry({ ...sources, statuses: [...sources.statuses, back] }).cover).toMatchObject({
      certain: false,
      doubts: { notRetested: 1 },
    });
    const reported = aStrike('s-1', { position: { latitudeDeg: 39.201, longitudeDeg: -98.4 } });
    const doubted = build({ ...sources, strikes: [reported] }).snapshot;
    expect(doubted.outOfService.find(({ hydrantId }) => hydrantId === 'A')?.cover).toMatchObject({
      certain: false,
      doubts: { maybeStruck: 1 },
    });
    expect(doubted.fireCover?.notCounted).toBe(1);
  });

  test('abandoned, planned and inactive hydrants cover nobody and are never the nearest; inactive ones are counted apart', () => {
    const services = ['active', 'abandoned', 'planned', 'inactive'] as const;
    const mixed = street.map((hydrant, index) => ({ ...hydrant, service: services[index] ?? 'active' }));
    const { snapshot } = build(given(['A'], mixed));
    expect(snapshot.outOfService[0]).toMatchObject({ nearest: [], cover: { beforeGpm: 1000, leftGpm: 0 } });
    expect(snapshot.inventory).toMatchObject({ hydrants: 1, outOfService: 1, inactive: 1 });
  });

  test('where no inventory or no place is known, nothing is said', () => {
    const { snapshot } = build({ ...given(['A']), inventory: null });
    expect(snapshot.outOfService[0]).not.toHaveProperty('cover');
    expect(snapshot).not.toHaveProperty('fireCover');
    expect(entry(given(['Z-9']), {}, 'Z-9')).not.toHaveProperty('cover');
  });
});

describe('a utility that keeps flows to itself', () => {
  const kept = { publishing: { showFlow: false } };

  // B is class AA (1,500 gpm and more: its ring's 670). C is class C: less than 500 gpm, so at most its ring's 250.
  test('counts each hydrant as the most of its class, and says so', () => {
    expect(entry(given(['A']), kept).cover).toMatchObject({
      leftGpm: 920,
      certain: false,
      doubts: { classOnly: true },
    });
  });

  test('tells nothing of a flow beyond its class, whatever the flow', () => {
    const classC = fc.integer({ min: 0, max: 499 });
    const classB = fc.integer({ min: 500, max: 999 });
    const world = (b: number, c: number) =>
      JSON.stringify(
        build(
          given(
            ['A'],
            street.map((hydrant) => ({
              ...hydrant,
              ratedFlowGpm: { A: 1200, B: b, C: c, D: 900 }[hydrant.hydrantId] ?? null,
            })),
          ),
          kept,
        ),
      );
    fc.assert(
      fc.property(classB, classB, classC, classC, (b1, b2, c1, c2) => world(b1, c1) === world(b2, c2)),
      { numRuns: 25 },
    );
  });
});

describe('areas that lost cover', () => {
  const lost = (sources: PublicSources, set: Set = {}) => build(sources, set).snapshot.fireCover!;

  test('nothing out: nothing was looked at, and that is what is said', () => {
    expect(lost(given([]))).toMatchObject({
      lookedAt: { points: 0 },
      areasFound: 0,
      areas: [],
      pointsLost: 0,
    });
  });

  test('loaded places stand in for the grid; each area is named by what is out, nearest to its middle', () => {
    const at = (id: string, tenThousandths: number) => ({
      id,
      latitudeDeg: 39.2 + tenThousandths / 10_000,
      longitudeDeg: -98.4,
    });
    // At −20 A was the only hydrant within 1,000 ft (730 ft) and is out; at −5 B (547 ft: 670 gpm) and C
    // (912 ft: its 200 gpm) are still there.
    const points = [at('1', -20), at('2', -5), at('3', -24)];
    const mustCover = { count: 3, around: () => points };
    const found = lost(given(['A'], street, { mustCover }));
    expect(found).toMatchObject({
      lookedAt: { kind: 'places', stepFt: null, points: 3 },
      pointsLost: 2,
      pointsWithNone: 2,
      areasFound: 1,
      areas: [
        {
          hydrantId: 'A',
          place: 'Alder St',
          lost: 'none',
          points: 2,
          // 730 and 876 ft: the ring's 250 gpm.
          worst: { beforeGpm: 250, leftGpm: 0 },
          hydrants: ['A'],
          hydrantsOut: 1,
        },
      ],
    });
    // With a need of 900 gpm the point that keeps 870 lost its cover, too: before it had A's 1,000 besides.
    expect(lost(given(['A'], street, { mustCover }), { fireCover: { needGpm: 900 } })).toMatchObject({
      pointsLost: 3,
      pointsWithNone: 2,
    });
  });

  test('places within 300 ft of each other are one area, and farther apart are two', () => {
    const areas = (...places: (readonly [north: number, east: number])[]) => {
      const points = places.map(([north, east], index) => ({
        id: String(index),
        latitudeDeg: 39.2 + north / 10_000,
        longitudeDeg: -98.4 + east / 10_000,
      }));
      // Each place has a hydrant of its own, and all of them are out.
      const alone = points.map(({ id, ...at }) => aHydrant(id, at));
      const out = points.map(({ id }) => id);
      return lost(given(out, alone, { mustCover: { count: 2, around: () => points } })).areasFound;
    };
    // 8 steps of 36.48 ft are 292 ft, 9 are 328 ft.
    expect(areas([5, 0], [13, 0])).toBe(1);
    expect(areas([5, 0], [14, 0])).toBe(2);
    // 7 steps north and 9 east, of 28.27 ft (36.48 × cos 39.2°), are 360 ft apart, though neither way is 300: 255, 254.
    expect(areas([5, 0], [12, 9])).toBe(2);
  });

  test('pieces to either side of the same hydrant are one area, with the worse of them told', () => {
    const points = [-20, 8].map((at) => ({
      id: String(at),
      latitudeDeg: 39.2 + at / 10_000,
      longitudeDeg: -98.4,
    }));
    const alone = street.slice(0, 1);
    const found = lost(given(['A'], alone, { mustCover: { count: 2, around: () => points } }));
    // 730 ft south (250 gpm) and 292 ft north (1,000 gpm), 1,021 ft apart.
    expect(found).toMatchObject({ areasFound: 1, areas: [{ points: 2, worst: { beforeGpm: 1000 } }] });
  });

  test('a place is named as coarsely as hydrants are, and then nothing is drawn', () => {
    const fine = build(given(['A']));
    expect(fine.areaDrawings).toHaveLength(fine.snapshot.fireCover!.areas.length);
    expect(fine.areaDrawings[0]!.out).toEqual([
      { number: 1, position: { latitudeDeg: 39.2, longitudeDeg: -98.4 } },
    ]);
    const coarse = build(given(['A']), { publishing: { positionDecimals: 3 } });
    expect(coarse.areaDrawings).toEqual([]);
    expect(JSON.stringify(coarse.snapshot.fireCover)).not.toMatch(/Deg":-?\d+\.\d{4,}/);
  });

  /** The rule once more, from its text, over plain loops. */
  function bruteForce(hydrants: readonly Hydrant[], out: ReadonlySet<string>, needGpm: number) {
    const credit = (feet: number, flow: number | null): number =>
      Math.min(flow ?? Infinity, feet <= 300 ? 1000 : feet <= 600 ? 670 : feet <= 1000 ? 250 : 0);
    return ({ latitudeDeg, longitudeDeg }: { latitudeDeg: number; longitudeDeg: number }) => {
      let [before, left, beforeGpm, leftGpm] = [0, 0, 0, 0];
      for (const hydrant of hydrants) {
        const feet = greatCircleFt({ latitudeDeg, longitudeDeg }, hydrant);
        if (feet > 1000) continue;
        before += 1;
        beforeGpm += credit(feet, hydrant.ratedFlowGpm);
        if (out.has(hydrant.hydrantId)) continue;
        left += 1;
        leftGpm += credit(feet, hydrant.ratedFlowGpm);
      }
      if (before === left) return null;
      if (left === 0) return 'none';
      return beforeGpm >= needGpm && leftGpm < needGpm ? 'short' : null;
    };
  }
  const spread = fc.double({ min: -0.006, max: 0.006, noNaN: true });
  const town = fc.array(
    fc.record({
      latitudeDeg: spread.map((by) => 39.2 + by),
      longitudeDeg: spread.map((by) => -98.4 + by),
      ratedFlowGpm: fc.option(fc.integer({ min: 0, max: 1800 })),
      isOut: fc.boolean(),
    }),
    { minLength: 4, maxLength: 40 },
  );

  test('are what plain loops over every point and hydrant find', () => {
    fc.assert(
      fc.property(town, fc.constantFrom(0, 250, 500, 1500), (places, needGpm) => {
        const hydrants = places.map(({ isOut: _, ...place }, n) => aHydrant(`H-${n}`, place));
        const out = hydrants.filter((_, n) => places[n]?.isOut).map(({ hydrantId }) => hydrantId);
        // A raster of 150 ft over more than the town.
        const points = Array.from({ length: 41 * 41 }, (_, n) => ({
          id: String(n),
          latitudeDeg: 39.2 + ((n % 41) - 20) * 0.0004,
          longitudeDeg: -98.4 + (Math.floor(n / 41) - 20) * 0.0005,
        }));
        const mustCover = { count: points.length, around: () => points };
        const found = lost(given(out, hydrants, { mustCover }), { fireCover: { needGpm } });
        const kinds = points.map(bruteForce(hydrants, new Set(out), needGpm));
        expect(found.pointsWithNone).toBe(kinds.filter((kind) => kind === 'none').length);
        expect(found.pointsLost).toBe(kinds.filter((kind) => kind !== null).length);
        const nearestOf = <Place extends Position>(from: Position, places: readonly Place[]): Place =>
          places.toSorted((a, b) => greatCircleFt(from, a) - greatCircleFt(from, b))[0]!;
        // Groups whose middles have the same hydrant nearest among those that they lost are one area.
        const names = groups(points.filter((_, n) => kinds[n] !== null)).map((group) => {
          const mean = (of: (point: Position) => number): number =>
            group.reduce((sum, point) => sum + of(point), 0) / group.length;
          const center = {
            latitudeDeg: mean((point) => point.latitudeDeg),
            longitudeDeg: mean((point) => point.longitudeDeg),
          };
          const gone = hydrants.filter(
            (each) =>
              out.includes(each.hydrantId) && group.some((point) => greatCircleFt(point, each) <= 1000),
          );
          return nearestOf(nearestOf(center, group), gone).hydrantId;
        });
        expect(found.areasFound).toBe(new globalThis.Set(names).size);
      }),
      { numRuns: 30 },
    );
  });

  /** Groups by flooding: two points within 300 ft are of one. */
  function groups(points: readonly Position[]): Position[][] {
    const left = new globalThis.Set(points);
    const found: Position[][] = [];
    for (const start of left) {
      const group = [start];
      found.push(group);
      left.delete(start);
      const border = [start];
      for (let from = border.pop(); from !== undefined; from = border.pop())
        for (const other of left)
          if (greatCircleFt(from, other) <= 300) {
            left.delete(other);
            group.push(other);
            border.push(other);
          }
    }
    return found;
  }

  test('the worst comes first: more points without any hydrant, then more points at all', () => {
    const far = (hydrantId: string, east: number, more: Partial<Hydrant> = {}) =>
      aHydrant(hydrantId, { longitudeDeg: -98.4 + east, ratedFlowGpm: 1500, outlets: pumper, ...more });
    // Two lone hydrants half a mile apart would lose as much; one of them has a neighbor 700 ft north that keeps half.
    const hydrants = [far('A', 0), far('B', 0.02), far('N', 0.02, north(19))];
    const { areas } = lost(given(['A', 'B'], hydrants));
    expect(areas.map(({ hydrantId }) => hydrantId)).toEqual(['A', 'B']);
    expect(areas[0]!.pointsWithNone).toBeGreaterThan(areas[1]!.pointsWithNone);
  });
});
