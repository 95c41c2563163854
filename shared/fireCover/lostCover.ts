import { greatCircleFt, type Position } from '../nearest/sphere.ts';
import { placesAround } from '../nearest/within.ts';
import { coverAt, creditFor, type Cover, type CoverQuestion, type Covering } from './cover.ts';
import { FARTHEST_FT } from './distanceCredit.ts';

/** A place that must be covered: an address, the middle of a street, or a point of a stated grid. */
export interface CoverPoint extends Position {
  readonly id: string;
}

export interface LostPoint<T extends Covering = Covering> {
  readonly point: CoverPoint;
  readonly cover: Cover<T>;
  /** `none`: every hydrant within 1,000 ft is out. `short`: what is left is under the need, and was not before. */
  readonly lost: 'none' | 'short';
}

/**
 * Which points lost their cover to what is out. A point that had none, or too little, with every hydrant in service is
 * not lost to an outage and is left out. Worst first: none before short, then by the credit that went.
 *
 * @param needGpm credit that a point must have, gpm; 0 asks only for a hydrant in reach
 */
export function lostCover<T extends Covering>(
  question: CoverQuestion<T>,
  points: Iterable<CoverPoint>,
  needGpm: number,
): readonly LostPoint<T>[] {
  const found: LostPoint<T>[] = [];
  for (const point of points) {
    if (isPlainlyCovered(question, point, needGpm)) continue;
    const cover = coverAt(question, point);
    const widest = cover.rings.at(-1);
    if (!widest || widest.before === widest.left) continue;
    if (widest.left === 0) found.push({ point, cover, lost: 'none' });
    else if (cover.beforeGpm >= needGpm && cover.leftGpm < needGpm)
      found.push({ point, cover, lost: 'short' });
  }
  const went = ({ cover }: LostPoint<T>): number => cover.beforeGpm - cover.leftGpm;
  return found.sort(
    (a, b) =>
      Number(a.lost === 'short') - Number(b.lost === 'short') ||
      went(b) - went(a) ||
      (a.point.id < b.point.id ? -1 : 1),
  );
}

/**
 * Whether one look says that a point lost nothing: nothing near it is out, or what is in service gives what is needed
 * (nearly always the first hydrant or two, at a hundred thousand points).
 */
function isPlainlyCovered<T extends Covering>(
  question: CoverQuestion<T>,
  point: Position,
  needGpm: number,
): boolean {
  const { index, serves, isInService, walkFt } = question;
  const near = placesAround(index.tree, point, FARTHEST_FT);
  const counted = (place: number): T | null => {
    const hydrant = index.hydrants[place];
    return hydrant && (!serves || serves(hydrant)) ? hydrant : null;
  };
  const nothingIsOut = (): boolean =>
    near.every((place) => {
      const hydrant = counted(place);
      return hydrant === null || isInService(hydrant);
    });
  // Walking is the slow part; by straight lines the first hydrant or two tell sooner.
  if (walkFt && nothingIsOut()) return true;
  let leftGpm = 0;
  for (const place of near) {
    const hydrant = counted(place);
    if (!hydrant || !isInService(hydrant)) continue;
    const distanceFt = walkFt ? walkFt(point, hydrant, FARTHEST_FT) : greatCircleFt(point, hydrant);
    if (distanceFt === null || distanceFt > FARTHEST_FT) continue;
    leftGpm += creditFor(question, hydrant, distanceFt).gpm;
    if (leftGpm >= needGpm) return true;
  }
  return nothingIsOut();
}
