import type KDBush from 'kdbush';
import { around } from 'geokdbush';
import { neighbour, type Findable, type Neighbour, type NearestIndex } from './nearest.ts';
import { EARTH_RADIUS_M, type Position } from './sphere.ts';

/** A little more than asked for is searched, because the library's earth and ours differ in the sixth digit. */
const SLACK = 1.001;
const FT_PER_KM = 1000 / 0.3048;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Places in the index of everything within `mostFt` of a point, and of little more: the box around the circle. Where the
 * box would hold a pole or cross the date line, the library's own search takes over.
 *
 * @throws RangeError for a distance that is negative or no number
 */
export function placesAround(tree: KDBush | null, point: Position, mostFt: number): readonly number[] {
  if (!(mostFt >= 0)) throw new RangeError(`no distance: ${mostFt}`);
  if (tree === null) return [];
  const { latitudeDeg, longitudeDeg } = point;
  const turn = (mostFt * SLACK * 0.3048) / EARTH_RADIUS_M;
  const [south, north] = [latitudeDeg - degrees(turn), latitudeDeg + degrees(turn)];
  if (south > -90 && north < 90) {
    // The widest part of a circle on a sphere lies poleward of its middle: sin(half) = sin(turn) / cos(latitude).
    const half = degrees(Math.asin(Math.sin(turn) / Math.cos((latitudeDeg * Math.PI) / 180)));
    if (longitudeDeg - half >= -180 && longitudeDeg + half <= 180)
      return tree.range(longitudeDeg - half, south, longitudeDeg + half, north);
  }
  return around(tree, longitudeDeg, latitudeDeg, Infinity, (mostFt * SLACK) / FT_PER_KM);
}

/**
 * Every hydrant within `mostFt` of a point (great circle, whole feet and fractions), nearest first; equal distances in
 * the order of their ids.
 *
 * @throws RangeError for a distance that is negative or no number
 */
export function hydrantsWithin<T extends Findable>(
  { hydrants, tree }: NearestIndex<T>,
  point: Position,
  mostFt: number,
): Neighbour<T>[] {
  return placesAround(tree, point, mostFt)
    .flatMap((place) => {
      const hydrant = hydrants[place];
      return hydrant ? [neighbour(point, hydrant)] : [];
    })
    .filter(({ distanceFt }) => distanceFt <= mostFt)
    .sort(
      (one, other) =>
        one.distanceFt - other.distanceFt || (one.hydrant.hydrantId < other.hydrant.hydrantId ? -1 : 1),
    );
}
