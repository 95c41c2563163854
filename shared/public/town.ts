import { nearestInService, type NearestIndex } from '../nearest/nearest.ts';
import { greatCircleFt } from '../nearest/sphere.ts';
import type { Bounds } from './mapFrame.ts';
import type { PublicPosition } from './position.ts';

/** No town reaches this far from the middle half of its hydrants: such a place is a mistake, e.g. 0, 0. */
const FARTHEST_FROM_MIDDLE_FT = 50_000 / 0.3048;
/** With fewer places nobody can say which of them is the mistake. */
const MIDDLE_FROM = 4;
/** One in so many is left off at each end, so that a slip of the pen in an inventory does not stretch the town. */
const CUT_ONE_IN = 200;

const latitude = ({ latitudeDeg }: PublicPosition): number => latitudeDeg;
const longitude = ({ longitudeDeg }: PublicPosition): number => longitudeDeg;

/** A city has 250,000 places: numbers by themselves, filled in one by one, sort ten times as fast as places do. */
function ascending(
  places: readonly PublicPosition[],
  of: (position: PublicPosition) => number,
): Float64Array {
  const numbers = new Float64Array(places.length);
  for (const [index, place] of places.entries()) numbers[index] = of(place);
  return numbers.sort();
}

/** Inventories stay the same object until another is loaded, and are asked at every publication and message. */
const known = new WeakMap<readonly PublicPosition[], (position: PublicPosition) => boolean>();

/**
 * Whether a place can belong to a town with these hydrants: at most 50 km from the box of their middle half. The same
 * array gives the same answer again, so it must not be changed afterwards.
 */
export function nearTown(places: readonly PublicPosition[]): (position: PublicPosition) => boolean {
  const found = known.get(places) ?? nearMiddle(places);
  known.set(places, found);
  return found;
}

function nearMiddle(places: readonly PublicPosition[]): (position: PublicPosition) => boolean {
  if (places.length < MIDDLE_FROM) return () => true;
  const half = (of: (position: PublicPosition) => number): [number, number] => {
    const sorted = ascending(places, of);
    const at = (share: number): number => sorted[Math.floor((sorted.length - 1) * share)] ?? 0;
    return [at(0.25), at(0.75)];
  };
  const [south, north] = half(latitude);
  const [west, east] = half(longitude);
  const between = (value: number, least: number, most: number): number =>
    Math.min(most, Math.max(least, value));
  return (position) =>
    greatCircleFt(position, {
      latitudeDeg: between(position.latitudeDeg, south, north),
      longitudeDeg: between(position.longitudeDeg, west, east),
    }) <= FARTHEST_FROM_MIDDLE_FT;
}

/**
 * Whether a position can be right for a utility with these hydrants: in its town, or in another of its towns, where at
 * least four of them stand within 50 km. The nearest to a mistake is nobody's nearest.
 */
export function mayStandAt(index: NearestIndex, position: PublicPosition): boolean {
  if (nearTown(index.hydrants)(position)) return true;
  const around = nearestInService(index, position, MIDDLE_FROM, () => true);
  return (around[MIDDLE_FROM - 1]?.distanceFt ?? Infinity) <= FARTHEST_FROM_MIDDLE_FT;
}

/** The box of the middle 99 % of places in each direction; null without any. */
export function townBox(places: readonly PublicPosition[]): Bounds | null {
  if (places.length === 0) return null;
  const ends = (of: (position: PublicPosition) => number): [number, number] => {
    const sorted = ascending(places, of);
    const cut = Math.floor(sorted.length / CUT_ONE_IN);
    return [sorted[cut] ?? 0, sorted[sorted.length - 1 - cut] ?? 0];
  };
  const [south, north] = ends(latitude);
  const [west, east] = ends(longitude);
  return { south, north, west, east };
}
