import { EARTH_RADIUS_M, type Position } from '../nearest/sphere.ts';

/**
 * A tree of cells over the globe, each halved to the north and to the east as often as it holds too much: a name is
 * `c` and one digit a halving, 0 south-west, 1 south-east, 2 north-west, 3 north-east. A cell's bounds follow from its
 * name alone.
 */
export type CellName = `c${string}`;
export const cellName = /^c[0-3]{0,24}$/;

export interface CellBounds {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

const globe: CellBounds = { south: -90, north: 90, west: -180, east: 180 };
/** A cell of this depth is about 40 ft high: what still shares it stands in one place, and is not parted further. */
const DEEPEST = 20;

const middleOf = ({ south, north, west, east }: CellBounds): { latitude: number; longitude: number } => ({
  latitude: (south + north) / 2,
  longitude: (west + east) / 2,
});

function childBounds(bounds: CellBounds, digit: number): CellBounds {
  const { latitude, longitude } = middleOf(bounds);
  return {
    south: digit >= 2 ? latitude : bounds.south,
    north: digit >= 2 ? bounds.north : latitude,
    west: digit % 2 === 1 ? longitude : bounds.west,
    east: digit % 2 === 1 ? bounds.east : longitude,
  };
}

/** The corner degrees of a cell. @throws RangeError for what is no name of a cell. */
export function cellBounds(name: string): CellBounds {
  if (!cellName.test(name)) throw new RangeError(`no cell: ${name}`);
  return Array.from(name.slice(1), Number).reduce(childBounds, globe);
}

export interface Leaf<T> {
  readonly cell: CellName;
  readonly items: readonly T[];
}

/** Parts what has a place into cells of at most `most` items each; cells without any are left out. Keeps their order. */
export function cellLeaves<T>(items: readonly T[], place: (item: T) => Position, most: number): Leaf<T>[] {
  const leaves: Leaf<T>[] = [];
  type Placed = Position & { readonly item: T };
  const part = (held: readonly Placed[], cell: CellName, bounds: CellBounds): void => {
    if (held.length === 0) return;
    if (held.length <= most || cell.length > DEEPEST) {
      leaves.push({ cell, items: held.map(({ item }) => item) });
      return;
    }
    const { latitude, longitude } = middleOf(bounds);
    const parts: Placed[][] = [[], [], [], []];
    for (const placed of held)
      parts[(placed.latitudeDeg >= latitude ? 2 : 0) + (placed.longitudeDeg >= longitude ? 1 : 0)]?.push(
        placed,
      );
    parts.forEach((one, digit) => {
      part(one, `${cell}${digit}`, childBounds(bounds, digit));
    });
  };
  // Each is asked for its place once, however deep its cell.
  const placed = items.map((item) => {
    const { latitudeDeg, longitudeDeg } = place(item);
    return { item, latitudeDeg, longitudeDeg };
  });
  part(placed, 'c', globe);
  return leaves;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * A distance, feet, that nothing in a cell is nearer than: 0 inside it. On the sphere no place is nearer than its
 * parallel is or than its meridian is, so the greater of the two holds.
 */
export function leastDistanceFt(bounds: CellBounds, { latitudeDeg, longitudeDeg }: Position): number {
  const toParallel = Math.max(bounds.south - latitudeDeg, latitudeDeg - bounds.north, 0);
  const turns = [bounds.west - longitudeDeg, longitudeDeg - bounds.east];
  const inside = turns.every((turn) => turn <= 0);
  // The shorter way round, because east of 180° it goes on at -180°.
  const aside = inside ? 0 : Math.min(...turns.map((turn) => ((turn % 360) + 360) % 360), 180);
  const polar = Math.cos(radians(latitudeDeg));
  const toMeridian =
    aside >= 90 ? Math.PI / 2 - Math.abs(radians(latitudeDeg)) : Math.asin(polar * Math.sin(radians(aside)));
  return (Math.max(radians(toParallel), toMeridian) * EARTH_RADIUS_M) / 0.3048;
}
