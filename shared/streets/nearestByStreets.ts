import type { DistanceBy, WalkFt } from '../fireCover/cover.ts';
import { nearestInService, type Findable, type Neighbour, type NearestIndex } from '../nearest/nearest.ts';
import type { Position } from '../nearest/sphere.ts';
import { hydrantsWithin } from '../nearest/within.ts';

/** A hydrant as seen from a point, and whether its distance is that of a walk or of a bird. */
export interface WalkedNeighbour<T extends Findable = Findable> extends Neighbour<T> {
  readonly by: DistanceBy;
}

/**
 * The `count` hydrants nearest to a point along the streets, for which `isInService` is true. Those to which streets
 * lead within `reachFt` come first, by the length of the way. Where they are fewer than `count`, those nearest in a
 * straight line follow, however far, and say so: no street leads there in reach, or none that the layer knows.
 *
 * @param reachFt how far is walked, feet, 1,000 or more
 */
export function nearestByStreets<T extends Findable>(
  index: NearestIndex<T>,
  walkFt: WalkFt<T>,
  point: Position,
  count: number,
  isInService: (hydrant: T) => boolean,
  reachFt: number,
): WalkedNeighbour<T>[] {
  // No way is shorter than the straight line, so none is beyond the straight circle.
  const walked = hydrantsWithin(index, point, reachFt)
    .filter(({ hydrant }) => isInService(hydrant))
    .flatMap((near): WalkedNeighbour<T>[] => {
      const distanceFt = walkFt(point, near.hydrant, reachFt);
      return distanceFt === null ? [] : [{ ...near, distanceFt, by: 'streets' }];
    })
    .toSorted((a, b) => a.distanceFt - b.distanceFt || (a.hydrant.hydrantId < b.hydrant.hydrantId ? -1 : 1))
    .slice(0, count);
  if (walked.length === count) return walked;
  const taken = new Set(walked.map(({ hydrant }) => hydrant.hydrantId));
  const rest = nearestInService(
    index,
    point,
    count - walked.length,
    (hydrant) => isInService(hydrant) && !taken.has(hydrant.hydrantId),
  );
  return [...walked, ...rest.map((near): WalkedNeighbour<T> => ({ ...near, by: 'straight' }))];
}
