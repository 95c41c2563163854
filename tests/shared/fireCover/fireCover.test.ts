import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverAt, type Covering } from '../../../shared/fireCover/cover.ts';
import { creditOf } from '../../../shared/fireCover/distanceCredit.ts';
import { gridAround } from '../../../shared/fireCover/grid.ts';
import { hoseReach } from '../../../shared/fireCover/hoseReach.ts';
import { lostCover } from '../../../shared/fireCover/lostCover.ts';
import { fireCoverFrom } from '../../../shared/fireCover/settings.ts';
import { nearestIndex } from '../../../shared/nearest/nearest.ts';
import { greatCircleFt } from '../../../shared/nearest/sphere.ts';
import { hydrantsWithin } from '../../../shared/nearest/within.ts';

const pumper = [{ kind: 'pumper' as const }, { kind: 'hose' as const }];
const fire = { latitudeDeg: 40.6, longitudeDeg: -60.4 };
/** A hydrant some feet north, on a sphere of the mean radius R₁ = 6 371 008.8 m (IUGG). */
const north = (hydrantId: string, ft: number, more: Partial<Covering> = {}): Covering => ({
  hydrantId,
  latitudeDeg: fire.latitudeDeg + (ft * 0.3048) / 6_371_008.8 / (Math.PI / 180),
  longitudeDeg: fire.longitudeDeg,
  ratedFlowGpm: 1500,
  outlets: pumper,
  ...more,
});
const cover = (hydrants: Covering[], out: readonly string[] = []) =>
  coverAt({ index: nearestIndex(hydrants), isInService: ({ hydrantId }) => !out.includes(hydrantId) }, fire);

describe('credit by distance (ISO Fire Suppression Rating Schedule, as printed in rating reports)', () => {
  it.each([
    [0, 1000],
    [300, 1000],
    [301, 670],
    [600, 670],
    [601, 250],
    [1000, 250],
    [1001, 0],
  ])('%d ft: %d gpm', (ft, gpm) => {
    expect(creditOf({ ratedFlowGpm: 1500, outlets: pumper }, ft)).toEqual({
      gpm,
      certain: true,
      unknown: [],
    });
  });

  it.each([-1, NaN])('is none of what is no distance: %d ft', (ft) => {
    expect(() => creditOf({ ratedFlowGpm: 1500, outlets: pumper }, ft)).toThrow(RangeError);
  });

  it('is no more than the hydrant gives', () => {
    expect(creditOf({ ratedFlowGpm: 480, outlets: pumper }, 100)).toMatchObject({
      gpm: 480,
      certain: true,
    });
  });

  // From memory: the schedule's limits for hydrants without a pumper outlet.
  it('is no more than its outlets allow, and at most where flow or outlets are unknown', () => {
    const hose = { kind: 'hose' as const };
    expect(creditOf({ ratedFlowGpm: 1500, outlets: [hose, hose] }, 100).gpm).toBe(750);
    expect(creditOf({ ratedFlowGpm: 1500, outlets: [hose] }, 100).gpm).toBe(500);
    expect(creditOf({ ratedFlowGpm: 1500, outlets: [], outletCount: 1 }, 100).gpm).toBe(500);
    expect(creditOf({ ratedFlowGpm: null, outlets: pumper }, 100)).toEqual({
      gpm: 1000,
      certain: false,
      unknown: ['flow'],
    });
    expect(creditOf({ ratedFlowGpm: 1500, outlets: [] }, 500)).toEqual({
      gpm: 670,
      certain: false,
      unknown: ['outlets'],
    });
    // Any outlet allows 500 gpm, so 250 gpm is certain whatever it has.
    expect(creditOf({ ratedFlowGpm: 1500, outlets: [] }, 900)).toMatchObject({ gpm: 250, certain: true });
  });

  it('hydrants at 200, 450, 900 and 1,100 ft: 1,920; without the first, 920 (computed from the rule by hand)', () => {
    const all = [north('A', 200), north('B', 450), north('C', 900), north('D', 1100)];
    expect(cover(all)).toMatchObject({ beforeGpm: 1920, leftGpm: 1920, certain: false });
    expect(cover(all, ['A'])).toMatchObject({
      beforeGpm: 1920,
      leftGpm: 920,
      rings: [
        { toFt: 300, before: 1, left: 0 },
        { toFt: 600, before: 2, left: 1 },
        { toFt: 1000, before: 3, left: 2 },
      ],
    });
  });

  it('along streets is certain, and a hydrant that none reaches counts for nothing', () => {
    const index = nearestIndex([north('A', 200), north('B', 450)]);
    const walkFt = (_: unknown, { hydrantId }: Covering) => (hydrantId === 'A' ? 620 : null);
    expect(coverAt({ index, isInService: () => true, walkFt }, fire)).toMatchObject({
      beforeGpm: 250,
      certain: true,
      rings: [{ before: 0 }, { before: 0 }, { before: 1 }],
    });
  });

  it('along streets is "at most" all the same where what a hydrant gives is not known', () => {
    const index = nearestIndex([north('A', 200), north('B', 300, { ratedFlowGpm: null })]);
    const walkFt = () => 500;
    expect(coverAt({ index, isInService: () => true, walkFt }, fire)).toMatchObject({
      beforeGpm: 1340,
      certain: false,
    });
  });

  it('counts a hydrant within a ring as it credits it there: 300 ft are within 300 ft', () => {
    const [one] = nearestIndex([north('A', 200)]).hydrants;
    const walkFt = () => 300;
    expect(coverAt({ index: nearestIndex([one!]), isInService: () => true, walkFt }, fire)).toMatchObject({
      beforeGpm: 1000,
      rings: [{ before: 1 }, { before: 1 }, { before: 1 }],
    });
  });
});

describe('everything within a distance', () => {
  const place = fc.record({
    latitudeDeg: fc.double({ min: 40.59, max: 40.61, noNaN: true }),
    longitudeDeg: fc.double({ min: -60.41, max: -60.39, noNaN: true }),
  });
  it('is what a plain loop finds', () => {
    fc.assert(
      fc.property(
        fc.array(place, { maxLength: 60 }),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        (places, ft) => {
          const hydrants = places.map((at, n) => ({ ...at, hydrantId: String(n) }));
          const found = hydrantsWithin(nearestIndex(hydrants), fire, ft).map(
            ({ hydrant }) => hydrant.hydrantId,
          );
          const looped = hydrants
            .filter((each) => greatCircleFt(fire, each) <= ft)
            .map(({ hydrantId }) => hydrantId);
          expect(found.sort()).toEqual(looped.sort());
        },
      ),
    );
  });
});

describe('points that lost their cover', () => {
  it('are those that counting in full says, along streets and on straight lines', () => {
    const hydrants = fc.array(
      fc.record({
        feet: fc.integer({ min: 0, max: 1200 }),
        /** A street is no shorter than the straight line; null: none leads there. */
        further: fc.option(fc.integer({ min: 0, max: 600 })),
        out: fc.boolean(),
        flow: fc.integer({ min: 0, max: 1500 }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(hydrants, fc.constantFrom(0, 250, 500, 1000, 2000), fc.boolean(), (given, need, walked) => {
        const all = given.map(({ feet, flow }, n) => ({ ...north(String(n), feet), ratedFlowGpm: flow }));
        const walkFt = (_: unknown, to: Covering, mostFt: number): number | null => {
          const { feet = 0, further = null } = given[Number(to.hydrantId)] ?? {};
          return further === null || feet + further > mostFt ? null : feet + further;
        };
        const question = {
          index: nearestIndex(all),
          isInService: ({ hydrantId }: Covering) => given[Number(hydrantId)]?.out !== true,
          ...(walked ? { walkFt } : {}),
        };
        const { rings, beforeGpm, leftGpm } = coverAt(question, fire);
        const { before, left } = rings.at(-1)!;
        const none = before > 0 && left === 0;
        const short = left < before && beforeGpm >= need && leftGpm < need;
        expect(lostCover(question, [{ id: 'fire', ...fire }], need).map(({ lost }) => lost)).toEqual(
          none ? ['none'] : short ? ['short'] : [],
        );
      }),
    );
  });

  const at = (id: string) => ({ id, ...fire });
  const lost = (hydrants: Covering[], out: string[], needGpm: number) =>
    lostCover(
      { index: nearestIndex(hydrants), isInService: ({ hydrantId }) => !out.includes(hydrantId) },
      [at('fire')],
      needGpm,
    ).map((each) => each.lost);
  it('every hydrant in reach is out', () => {
    expect(lost([north('A', 200), north('B', 900)], ['A', 'B'], 0)).toEqual(['none']);
    expect(lost([north('A', 200), north('B', 900)], ['A'], 0)).toEqual([]);
  });
  it('one in service that is beyond 1,000 ft is no cover, in whatever direction', () => {
    // 800 ft north and 800 ft east: 1,131 ft (Pythagoras).
    const corner = {
      ...north('C', 800),
      longitudeDeg: fire.longitudeDeg + 800 / (364_811 * Math.cos(0.7086)),
    };
    expect(lost([north('A', 500), corner], ['A'], 0)).toEqual(['none']);
    expect(lost([north('A', 500), corner], ['A'], 500)).toEqual(['none']);
  });
  it('what is left is under the need, and was not before', () => {
    const two = [north('A', 200), north('B', 900)];
    expect(lost(two, ['A'], 500)).toEqual(['short']);
    expect(lost(two, ['A'], 250)).toEqual([]);
    // Never had it: not lost to an outage.
    expect(lost(two, ['A'], 2000)).toEqual([]);
  });
  it('one that never had a hydrant is not lost', () => {
    expect(lost([north('A', 1400)], ['A'], 500)).toEqual([]);
  });
  it('one that only a hydrant out of use stands near has lost it: that one covers nobody', () => {
    const question = {
      index: nearestIndex([north('A', 200), north('abandoned', 250)]),
      serves: ({ hydrantId }: Covering) => hydrantId !== 'abandoned',
      isInService: ({ hydrantId }: Covering) => hydrantId !== 'A',
    };
    expect(lostCover(question, [at('fire')], 500).map((each) => each.lost)).toEqual(['none']);
  });
  it('those with none left come first, though more credit went at another', () => {
    // By the rule: near A 250 gpm went and nothing is left; near B 2,000 gpm went and C's 250 gpm is left.
    const far = { latitudeDeg: fire.latitudeDeg + 1, longitudeDeg: fire.longitudeDeg };
    const beside = (hydrantId: string, ft: number): Covering => ({
      ...north(hydrantId, ft),
      latitudeDeg: north(hydrantId, ft).latitudeDeg + 1,
    });
    const hydrants = [north('A', 900), beside('B', 100), beside('B2', 200), beside('C', 900)];
    const found = lostCover(
      { index: nearestIndex(hydrants), isInService: ({ hydrantId }) => hydrantId === 'C' },
      [
        { id: 'far', ...far },
        { id: 'near', ...fire },
      ],
      500,
    );
    expect(found.map(({ point, lost: how }) => [point.id, how])).toEqual([
      ['near', 'none'],
      ['far', 'short'],
    ]);
  });
});

describe('the grid', () => {
  it('has every point within 1,000 ft once, and the spacing that it says', () => {
    const other = { latitudeDeg: fire.latitudeDeg + 0.001, longitudeDeg: fire.longitudeDeg };
    const points = gridAround([fire, other], 250);
    expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
    for (const point of points)
      expect(Math.min(greatCircleFt(fire, point), greatCircleFt(other, point))).toBeLessThan(1001);
    // A circle of 1,000 ft holds about π (1000 / 250)² = 50 points.
    expect(gridAround([fire], 250).length).toBeGreaterThan(45);
    expect(gridAround([fire], 250).length).toBeLessThan(56);
    const [a, b] = gridAround([fire], 250);
    expect(greatCircleFt(a!, b!)).toBeCloseTo(250, 0);
  });
  it('has points that stand above each other through a tenth of a degree, off its spacing by less than 0.2 %', () => {
    // By hand at 60°: tan 60° times half a tenth of a degree (0.000873 rad) is 0.15 %.
    for (const latitudeDeg of [40.65, 59.91, 59.99]) {
      const points = gridAround([{ latitudeDeg, longitudeDeg: -60.4 }], 250);
      const columns = Map.groupBy(points, ({ id }) => id.split(':')[1]);
      for (const column of columns.values())
        expect(new Set(column.map(({ longitudeDeg }) => longitudeDeg)).size).toBe(1);
      for (const row of Map.groupBy(points, ({ id }) => id.split(':')[0]).values()) {
        const [one, next] = row;
        if (one && next) expect(Math.abs(greatCircleFt(one, next) - 250)).toBeLessThan(0.5);
      }
    }
  });
  it.each([49, 1001, NaN])('has no spacing of %d ft', (stepFt) => {
    expect(() => gridAround([fire], stepFt)).toThrow(RangeError);
  });
});

// Second-hand: the hose that the rating schedule supposes, as cities print it in their rating reports, and the least needed
// fire flow of any building, as fire departments quote the rater's guide. The grid: common practice, no source.
describe('what a utility has not set', () => {
  it('is 1,200 ft of hose, 500 gpm, and a grid of 250 ft', () => {
    expect(fireCoverFrom()).toEqual({ hoseFt: 1200, needGpm: 500, gridStepFt: 250 });
    expect(fireCoverFrom({ hoseFt: 900 })).toEqual({ hoseFt: 900, needGpm: 500, gridStepFt: 250 });
  });
});

describe('hose', () => {
  it('along streets reaches or does not; in a straight line it may', () => {
    expect(hoseReach({ ft: 900, by: 'streets' }, 1000)).toBe('reaches');
    expect(hoseReach({ ft: 1000, by: 'streets' }, 1000)).toBe('reaches');
    expect(hoseReach({ ft: 900, by: 'straight' }, 1000)).toBe('perhaps');
    expect(hoseReach({ ft: 1001, by: 'straight' }, 1000)).toBe('too-far');
  });
});
