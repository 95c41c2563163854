import type { Position } from '../nearest/sphere.ts';
import { coverAt, type Cover, type CoverQuestion, type Covering } from './cover.ts';

/** A place that must be covered: an address, the middle of a street, or a point of a stated grid. */
export interface CoverPoint extends Position {
  readonly id: string;
}

export interface LostPoint {
  readonly point: CoverPoint;
  readonly cover: Cover;
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
): readonly LostPoint[] {
  const found: LostPoint[] = [];
  for (const point of points) {
    const cover = coverAt(question, point);
    const widest = cover.rings.at(-1);
    if (!widest || widest.before === widest.left) continue;
    if (widest.left === 0) found.push({ point, cover, lost: 'none' });
    else if (cover.beforeGpm >= needGpm && cover.leftGpm < needGpm)
      found.push({ point, cover, lost: 'short' });
  }
  const went = ({ cover }: LostPoint): number => cover.beforeGpm - cover.leftGpm;
  return found.sort(
    (a, b) =>
      Number(a.lost === 'short') - Number(b.lost === 'short') ||
      went(b) - went(a) ||
      (a.point.id < b.point.id ? -1 : 1),
  );
}
