import type { Hydrant } from './hydrant.ts';

/** A cell of the quadtree over longitude and latitude, with its hydrants by id. */
export interface Cell {
  readonly cell: string;
  readonly bounds: readonly [west: number, south: number, east: number, north: number];
  readonly hydrants: readonly Hydrant[];
}

/** At this depth a cell is a few feet wide; hydrants that still share one stand on one spot. */
const deepest = 26;

/**
 * Hydrants in cells of at most `most`, each cell quartered until it is small enough. A cell keeps its name and content
 * when hydrants change elsewhere, so a new edition shares every untouched file with the one before.
 */
export function cellsOf(hydrants: readonly Hydrant[], most: number): Cell[] {
  return split(hydrants, '', [-180, -90, 180, 90], most);
}

function split(hydrants: readonly Hydrant[], cell: string, area: Cell['bounds'], most: number): Cell[] {
  if (hydrants.length === 0) return [];
  if (hydrants.length <= most || cell.length >= deepest)
    return [{ cell, bounds: boundsOf(hydrants), hydrants: hydrants.toSorted(byId) }];
  const digitOf = quarterOf(area);
  const [first] = hydrants;
  const only =
    first && hydrants.every((hydrant) => digitOf(hydrant) === digitOf(first)) ? digitOf(first) : null;
  // From the whole Earth down to a town there is one quarter after another; no need to copy the list for each.
  if (only !== null) return split(hydrants, `${cell}${only}`, quarter(area, only), most);
  return [0, 1, 2, 3].flatMap((digit) =>
    split(
      hydrants.filter((hydrant) => digitOf(hydrant) === digit),
      `${cell}${digit}`,
      quarter(area, digit),
      most,
    ),
  );
}

const quarterOf =
  ([west, south, east, north]: Cell['bounds']) =>
  ({ longitudeDeg, latitudeDeg }: Hydrant): number =>
    (longitudeDeg >= (west + east) / 2 ? 1 : 0) + (latitudeDeg >= (south + north) / 2 ? 2 : 0);

function quarter([west, south, east, north]: Cell['bounds'], digit: number): Cell['bounds'] {
  const [middleX, middleY] = [(west + east) / 2, (south + north) / 2];
  return [
    digit % 2 === 1 ? middleX : west,
    digit >= 2 ? middleY : south,
    digit % 2 === 1 ? east : middleX,
    digit >= 2 ? north : middleY,
  ];
}

// By code units: the same on every machine, whatever its language.
const byId = (one: Hydrant, other: Hydrant): number =>
  one.hydrantId < other.hydrantId ? -1 : one.hydrantId > other.hydrantId ? 1 : 0;

function boundsOf(hydrants: readonly Hydrant[]): Cell['bounds'] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { longitudeDeg, latitudeDeg } of hydrants) {
    west = Math.min(west, longitudeDeg);
    east = Math.max(east, longitudeDeg);
    south = Math.min(south, latitudeDeg);
    north = Math.max(north, latitudeDeg);
  }
  return [west, south, east, north];
}
