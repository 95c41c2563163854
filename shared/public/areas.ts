import * as z from 'zod';
import type { Hydrant } from '../inventory/hydrant.ts';
import { fitFrame, type Bounds } from './mapFrame.ts';
import type { PublicOutOfService, PublicPosition } from './snapshot.ts';
import { nearTown, townBox } from './town.ts';

/** Entries that one page lists. The first page is read at night on a phone; what is beyond stands on pages of areas. */
export const LIST_MOST = 100;

/** Squares of the town, as in a street atlas: letters from the west, numbers from the north. */
const MOST_ACROSS = 8;
const LETTERS = 'ABCDEFGH';

const publicArea = z.strictObject({
  /** `B3`, or `elsewhere` for what has no place in the town. */
  code: z.union([z.string().regex(/^[A-H][1-8]$/), z.literal('elsewhere')]),
  /** The inventory's words for the hydrant nearest to its middle; null when it has none. */
  around: z.string().nullable(),
  /** Hydrants of the area that should serve. */
  hydrants: z.int().min(0),
  /** Places in `outOfService`, newest first. */
  out: z.array(z.int().min(0)),
});

/** Where the list is too long for one page: the town's areas with what is out in each. */
export const publicAreas = z.strictObject({
  columns: z.int().min(1).max(MOST_ACROSS),
  rows: z.int().min(1).max(MOST_ACROSS),
  /** Those with a hydrant or an outage, row by row from the north-west; `elsewhere` last. */
  areas: z.array(publicArea),
});
export type PublicArea = z.infer<typeof publicArea>;
export type PublicAreas = z.infer<typeof publicAreas>;

type Served = Pick<Hydrant, 'latitudeDeg' | 'longitudeDeg' | 'place'>;

/**
 * The areas of a town, or null when one page holds the whole list. The squares follow from the inventory alone (the
 * middle 99 % of its hydrants, so that a slip of the pen does not stretch them), and so stay the same while hydrants go
 * out and come back. What lies beyond them but near the town counts to the nearest square.
 *
 * @param inventory all that it holds, the same array until another is loaded
 * @param serving those of it that are counted
 */
export function areasOf(
  inventory: readonly PublicPosition[],
  serving: readonly Served[],
  outOfService: readonly Pick<PublicOutOfService, 'position'>[],
): PublicAreas | null {
  if (outOfService.length <= LIST_MOST) return null;
  const town = inventory.length > 0 ? inventory : outOfService.flatMap(({ position }) => position ?? []);
  const isNear = nearTown(town);
  const grid = gridOf(town);

  const areas = new Map<number, Filling>();
  const fillingOf = (square: number): Filling => {
    const found = areas.get(square) ?? { hydrants: 0, out: [], around: null, aroundAt: Infinity };
    areas.set(square, found);
    return found;
  };
  let far = 0;
  for (const hydrant of serving) {
    if (!isNear(hydrant)) {
      far += 1;
      continue;
    }
    const { square, fromMiddle } = grid.at(hydrant);
    const filling = fillingOf(square);
    filling.hydrants += 1;
    if (hydrant.place === null || fromMiddle >= filling.aroundAt) continue;
    filling.around = hydrant.place;
    filling.aroundAt = fromMiddle;
  }
  const elsewhere: number[] = [];
  outOfService.forEach(({ position }, index) => {
    if (position === null || !isNear(position)) elsewhere.push(index);
    else fillingOf(grid.at(position).square).out.push(index);
  });
  return {
    columns: grid.columns,
    rows: grid.rows,
    areas: [
      ...[...areas]
        .toSorted(([a], [b]) => a - b)
        .map(([square, { hydrants, out, around }]) => ({
          code: `${LETTERS[square % grid.columns] ?? ''}${String(Math.floor(square / grid.columns) + 1)}`,
          around,
          hydrants,
          out,
        })),
      ...(elsewhere.length > 0 ? [{ code: 'elsewhere', around: null, hydrants: far, out: elsewhere }] : []),
    ],
  };
}

interface Filling {
  hydrants: number;
  out: number[];
  around: string | null;
  /** How far from the middle of its square that hydrant stands, squares. */
  aroundAt: number;
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly at: (position: PublicPosition) => { readonly square: number; readonly fromMiddle: number };
}

const grids = new WeakMap<readonly PublicPosition[], Grid>();
/** Of places none of which is anywhere. */
const nowhere = { south: 0, north: 0, west: 0, east: 0 };

/** The squares of a town, laid out once for as long as its inventory is in force. */
function gridOf(town: readonly PublicPosition[]): Grid {
  const found = grids.get(town) ?? laidOut(townBox(town.filter(nearTown(town))) ?? nowhere);
  grids.set(town, found);
  return found;
}

/** Squares on the ground, as many as fit eight along the longer side. */
function laidOut(bounds: Bounds): Grid {
  const { width, height, place } = fitFrame(bounds, { width: 800, least: 1, greatest: 800, margin: 0 });
  const side = Math.max(width, height) / MOST_ACROSS;
  const columns = Math.max(1, Math.ceil(width / side - 1e-3));
  const rows = Math.max(1, Math.ceil(height / side - 1e-3));
  const within = (value: number, count: number): number =>
    Math.min(count - 1, Math.max(0, Math.floor(value)));
  return {
    columns,
    rows,
    at(position) {
      const { x, y } = place(position);
      const [column, row] = [within(x / side, columns), within(y / side, rows)];
      return {
        square: row * columns + column,
        fromMiddle: Math.hypot(x / side - column - 0.5, y / side - row - 0.5),
      };
    },
  };
}

/** What one page of an area lists, from 1: places in `outOfService`. */
export function partOf({ out }: PublicArea, part: number): readonly number[] {
  return out.slice((part - 1) * LIST_MOST, part * LIST_MOST);
}
export const partsOf = ({ out }: PublicArea): number => Math.max(1, Math.ceil(out.length / LIST_MOST));

/** Address of a page of an area within a language: `areas/b3/`, `areas/b3/2/`. */
export const areaPath = (code: string, part = 1): string =>
  `areas/${code.toLowerCase()}/${part === 1 ? '' : `${String(part)}/`}`;
