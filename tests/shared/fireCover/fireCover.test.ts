import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverAt, type Covering } from '../../../shared/fireCover/cover.ts';
import { creditOf } from '../../../shared/fireCover/distanceCredit.ts';
import { gridAround } from '../../../shared/fireCover/grid.ts';
import { hoseReach } from '../../../shared/fireCover/hoseReach.ts';
import { lostCover } from '../../../shared/fireCover/lostCover.ts';
import { nearestIndex } from '../../../shared/nearest/nearest.ts';
import { greatCircleFt } from '../../../shared/nearest/sphere.ts';
import { hydrantsWithin } from '../../../shared/nearest/within.ts';

const pumper = [{ kind: 'pumper' as const }, { kind: 'hose' as const }];
const fire = { latitudeDeg: 40.6, longitudeDeg: -60.4 };
/** A hydrant some feet north: one minute of arc of a great circle is a nautical mile, 6,076.115 ft, on a mean earth. */
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
});

describe('hose', () => {
  it('along streets reaches or does not; in a straight line it may', () => {
    expect(hoseReach({ ft: 900, by: 'streets' }, 1000)).toBe('reaches');
    expect(hoseReach({ ft: 900, by: 'straight' }, 1000)).toBe('perhaps');
    expect(hoseReach({ ft: 1001, by: 'straight' }, 1000)).toBe('too-far');
  });
});
