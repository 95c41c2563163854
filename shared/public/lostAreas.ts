import KDBush from 'kdbush';
import { lostCover, type CoverPoint, type LostPoint } from '../fireCover/lostCover.ts';
import type { CoverQuestion } from '../fireCover/cover.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { greatCircleFt, type Position } from '../nearest/sphere.ts';
import { placesAround } from '../nearest/within.ts';

/** Lost points that belong together, the worst of them first: next to each other, or to either side of the same hydrant. */
export interface LostArea {
  readonly points: readonly LostPoint<Hydrant>[];
  /** The lost point nearest to the middle of them all. */
  readonly middle: CoverPoint;
  readonly lost: 'none' | 'short';
  readonly withNone: number;
  /** Hydrants that are out within 1,000 ft of its points, nearest to the middle first. */
  readonly out: readonly Hydrant[];
}

export interface LookedAt {
  readonly points: readonly CoverPoint[];
  /** How far two lost points may lie apart and still be one area, feet. */
  readonly joinFt: number;
}

/**
 * Where cover was lost, as areas: ranked by how many of their points have no hydrant left within 1,000 ft, then by how
 * many lost their cover at all, then by the credit that went at the worst of them.
 */
export function lostAreas(
  question: CoverQuestion<Hydrant>,
  { points, joinFt }: LookedAt,
  needGpm: number,
): readonly LostArea[] {
  const lost = lostCover(question, points, needGpm);
  const rank = (area: LostArea): readonly number[] => {
    const cover = area.points[0]?.cover;
    return [area.withNone, area.points.length, cover ? cover.beforeGpm - cover.leftGpm : 0];
  };
  // Two pieces to either side of one hydrant would both be called by its name, and are one loss.
  const named = Map.groupBy(joined(lost, joinFt), (points) => areaOf(points).out[0]?.hydrantId ?? '');
  return [...named.values()]
    .map((pieces) => areaOf(pieces.flat()))
    .sort((a, b) => {
      const [ranksA, ranksB] = [rank(a), rank(b)];
      const differs = ranksA.findIndex((value, index) => value !== ranksB[index]);
      if (differs >= 0) return (ranksB[differs] ?? 0) - (ranksA[differs] ?? 0);
      return a.middle.id < b.middle.id ? -1 : 1;
    });
}

function treeOf(places: readonly Position[]): KDBush | null {
  if (places.length === 0) return null;
  const tree = new KDBush(places.length);
  for (const { latitudeDeg, longitudeDeg } of places) tree.add(longitudeDeg, latitudeDeg);
  return tree.finish();
}

/** Parts the points into groups in which each is within `joinFt` of another; each keeps the order it was given. */
function joined(lost: readonly LostPoint<Hydrant>[], joinFt: number): readonly LostPoint<Hydrant>[][] {
  const tree = treeOf(lost.map(({ point }) => point));
  const groupOf = new Array<number>(lost.length).fill(-1);
  const groups: LostPoint<Hydrant>[][] = [];
  for (const start of lost.keys()) {
    if (groupOf[start] !== -1) continue;
    const members: number[] = [];
    const waiting = [start];
    groupOf[start] = groups.length;
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      const from = lost[at];
      if (!from) continue;
      members.push(at);
      for (const other of placesAround(tree, from.point, joinFt)) {
        const to = lost[other];
        if (!to || groupOf[other] !== -1 || greatCircleFt(from.point, to.point) > joinFt) continue;
        groupOf[other] = groups.length;
        waiting.push(other);
      }
    }
    groups.push(members.sort((a, b) => a - b).flatMap((member) => lost[member] ?? []));
  }
  return groups;
}

function areaOf(points: readonly LostPoint<Hydrant>[]): LostArea {
  const mean = (of: (point: CoverPoint) => number): number =>
    points.reduce((sum, { point }) => sum + of(point), 0) / points.length;
  const center = {
    latitudeDeg: mean(({ latitudeDeg }) => latitudeDeg),
    longitudeDeg: mean(({ longitudeDeg }) => longitudeDeg),
  };
  const near = <Place extends Position>(from: Position, places: readonly Place[]): Place[] =>
    places
      .map((place) => ({ place, ft: greatCircleFt(from, place) }))
      .sort((a, b) => a.ft - b.ft)
      .map(({ place }) => place);
  const [middle] = near(
    center,
    points.map(({ point }) => point),
  );
  if (!middle) throw new Error('an area without points');
  const out = new Map<string, Hydrant>();
  for (const { cover } of points)
    for (const { hydrant, inService } of cover.hydrants) if (!inService) out.set(hydrant.hydrantId, hydrant);
  const withNone = points.filter(({ lost }) => lost === 'none').length;
  return {
    points,
    middle,
    lost: withNone > 0 ? 'none' : 'short',
    withNone,
    out: near(middle, [...out.values()]),
  };
}
