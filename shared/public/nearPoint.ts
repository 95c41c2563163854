import {
  compassPoint,
  greatCircleFt,
  initialBearingDeg,
  type CompassPoint,
  type Position,
} from '../nearest/sphere.ts';
import { cellBounds, leastDistanceFt } from './cellTree.ts';
import type { MapCell, MapHydrant } from './mapCells.ts';

/** A hydrant in service as seen from a point. */
export interface Near extends MapHydrant {
  /** Straight line on the ground, feet. */
  readonly distanceFt: number;
  readonly bearing: CompassPoint;
}
/** One that is out of service, as seen from a point. */
export type NearOut = MapCell['out'][number] & {
  readonly distanceFt: number;
  readonly bearing: CompassPoint;
};

export interface NearPoint {
  /** Nearest first, equal distances in the order of their ids. */
  readonly inService: readonly Near[];
  /** Those out of service that are no farther than the last one in service: they are the ones to be passed by. */
  readonly out: readonly NearOut[];
  /** The cell that must be read next, because something in it may be nearer; null: the answer is final. */
  readonly next: string | null;
}

const seenFrom = (point: Position, place: Position): { distanceFt: number; bearing: CompassPoint } => ({
  distanceFt: greatCircleFt(point, place),
  bearing: compassPoint(initialBearingDeg(point, place)),
});

function hydrantAt({ inService }: MapCell, row: number): MapHydrant {
  const [latitudeDeg, longitudeDeg] = [inService.latitudeDeg[row], inService.longitudeDeg[row]];
  const hydrantId = inService.hydrantId[row];
  if (hydrantId === undefined || latitudeDeg === undefined || longitudeDeg === undefined)
    throw new RangeError(`no row ${row}`);
  return {
    hydrantId,
    place: inService.place[row] ?? null,
    position: { latitudeDeg, longitudeDeg },
    hydrantClass: inService.hydrantClass[row] ?? null,
    ratedFlowGpm: inService.ratedFlowGpm[row] ?? null,
    testedOn: inService.testedOn[row] ?? null,
    notRetested: inService.notRetested.includes(row),
    private: inService.private.includes(row) ? true : null,
    ...(inService.maybeStruck.includes(row) ? { maybeStruck: true as const } : {}),
  };
}

/**
 * The `count` hydrants in service nearest to a point, from the cells that were read, and which cell is to be read next.
 * Asked again after each, it reads no cell that cannot matter, and ends with the same answer as a search of all.
 *
 * @param cells names of every cell there is
 * @param read cells that were read
 */
export function nearPoint(
  cells: readonly string[],
  read: ReadonlyMap<string, MapCell>,
  point: Position,
  count: number,
): NearPoint {
  const found = [...read.values()].flatMap((cell) =>
    cell.inService.latitudeDeg.map((latitudeDeg, row) => ({
      cell,
      row,
      distanceFt: greatCircleFt(point, {
        latitudeDeg,
        longitudeDeg: cell.inService.longitudeDeg[row] ?? NaN,
      }),
    })),
  );
  const inService = found
    .sort(
      (a, b) =>
        a.distanceFt - b.distanceFt ||
        ((a.cell.inService.hydrantId[a.row] ?? '') < (b.cell.inService.hydrantId[b.row] ?? '') ? -1 : 1),
    )
    .slice(0, count)
    .map(({ cell, row }) => {
      const hydrant = hydrantAt(cell, row);
      return { ...hydrant, ...seenFrom(point, hydrant.position) };
    });
  const reachFt = inService.length < count ? Infinity : (inService.at(-1)?.distanceFt ?? Infinity);
  const out = [...read.values()]
    .flatMap((cell) => cell.out)
    .map((row) => ({ ...row, ...seenFrom(point, row) }))
    .filter(({ distanceFt }) => distanceFt <= reachFt)
    .sort((a, b) => a.distanceFt - b.distanceFt);
  const unread = cells
    .filter((cell) => !read.has(cell))
    .map((cell) => ({ cell, leastFt: leastDistanceFt(cellBounds(cell), point) }))
    .sort((a, b) => a.leastFt - b.leastFt || (a.cell < b.cell ? -1 : 1))[0];
  return { inService, out, next: unread && unread.leastFt <= reachFt ? unread.cell : null };
}
