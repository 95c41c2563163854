import { around } from 'geokdbush';
import { neighbour, type Findable, type Neighbour, type NearestIndex } from './nearest.ts';
import type { Position } from './sphere.ts';

/** A little more than asked for is searched, because the library's earth and ours differ in the sixth digit. */
const SLACK = 1.001;
const FT_PER_KM = 1000 / 0.3048;

/**
 * Every hydrant within `mostFt` of a point (great circle, whole feet and fractions), nearest first.
 *
 * @throws RangeError for a distance that is negative or no number
 */
export function hydrantsWithin<T extends Findable>(
  { hydrants, tree }: NearestIndex<T>,
  point: Position,
  mostFt: number,
): Neighbour<T>[] {
  if (!(mostFt >= 0)) throw new RangeError(`no distance: ${mostFt}`);
  if (tree === null) return [];
  return around(tree, point.longitudeDeg, point.latitudeDeg, Infinity, (mostFt * SLACK) / FT_PER_KM)
    .flatMap((place) => {
      const hydrant = hydrants[place];
      return hydrant ? [neighbour(point, hydrant)] : [];
    })
    .filter(({ distanceFt }) => distanceFt <= mostFt);
}
