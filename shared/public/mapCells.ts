import * as z from 'zod';
import { hydrantClasses } from '../hydraulics/hydrantClass.ts';
import { cellLeaves, cellName } from './cellTree.ts';
import {
  publicCauses,
  type PublicNearest,
  type PublicOutOfService,
  type PublicPosition,
} from './snapshot.ts';

/**
 * The hydrants of one part of the map, as its script reads them. In columns, one entry a hydrant in each, because names
 * of fields a thousand times over would be most of the file.
 */
export const mapCell = z.strictObject({
  cell: z.string().regex(cellName),
  inService: z.strictObject({
    hydrantId: z.array(z.string().min(1).max(64)),
    place: z.array(z.string().nullable()),
    latitudeDeg: z.array(z.number().min(-90).max(90)),
    longitudeDeg: z.array(z.number().min(-180).max(180)),
    hydrantClass: z.array(z.enum(hydrantClasses).nullable()),
    ratedFlowGpm: z.array(z.number().int().min(0).nullable()),
    testedOn: z.array(z.iso.date().nullable()),
    /** Rows, from 0, of those to which it applies. */
    notRetested: z.array(z.number().int().min(0)),
    private: z.array(z.number().int().min(0)),
    maybeStruck: z.array(z.number().int().min(0)),
  }),
  out: z.array(
    z.strictObject({
      hydrantId: z.string().min(1).max(64).nullable(),
      place: z.string().nullable(),
      latitudeDeg: z.number().min(-90).max(90),
      longitudeDeg: z.number().min(-180).max(180),
      /** Of its latest outage. */
      cause: z.enum(publicCauses),
      /** Of its earliest outage. */
      since: z.iso.datetime(),
    }),
  ),
});
export type MapCell = z.infer<typeof mapCell>;

/** What the map says of a hydrant in service. */
export type MapHydrant = Pick<
  PublicNearest,
  | 'hydrantId'
  | 'place'
  | 'position'
  | 'hydrantClass'
  | 'ratedFlowGpm'
  | 'testedOn'
  | 'notRetested'
  | 'private'
  | 'maybeStruck'
>;

/**
 * Hydrants in a cell, at most. A cell's file is 4 to 15 kB compressed, and covers some square miles of a town: who
 * asks for it tells no more of where he stands than that (decision 0215).
 */
export const MOST_IN_CELL = 1000;

/** Where something stands, asked once: parting looks at it a dozen times. */
interface Item<T> {
  readonly at: PublicPosition;
  readonly of: { readonly hydrant: T } | { readonly out: PublicOutOfService };
}

/**
 * Parts hydrants in service and places out of service into cells. `place` and `describe` are each asked once a hydrant;
 * both give the published position. An outage without a place is in no cell.
 */
export function mapCells<T>(
  hydrants: readonly T[],
  place: (hydrant: T) => PublicPosition,
  describe: (hydrant: T) => MapHydrant,
  out: readonly PublicOutOfService[],
): MapCell[] {
  const items: Item<T>[] = hydrants.map((hydrant) => ({ at: place(hydrant), of: { hydrant } }));
  for (const entry of out) if (entry.position) items.push({ at: entry.position, of: { out: entry } });
  return cellLeaves(items, ({ at }) => at, MOST_IN_CELL).map(({ cell, items: held }) => ({
    cell,
    inService: columns(held.flatMap(({ of }) => ('hydrant' in of ? [describe(of.hydrant)] : []))),
    out: held.flatMap(({ at, of }) => ('out' in of ? [outRow(of.out, at)] : [])),
  }));
}

function columns(rows: readonly MapHydrant[]): MapCell['inService'] {
  const rowsWith = (has: (row: MapHydrant) => boolean): number[] =>
    rows.flatMap((row, index) => (has(row) ? [index] : []));
  return {
    hydrantId: rows.map(({ hydrantId }) => hydrantId),
    place: rows.map((row) => row.place),
    latitudeDeg: rows.map(({ position }) => position.latitudeDeg),
    longitudeDeg: rows.map(({ position }) => position.longitudeDeg),
    hydrantClass: rows.map(({ hydrantClass }) => hydrantClass),
    ratedFlowGpm: rows.map(({ ratedFlowGpm }) => ratedFlowGpm),
    testedOn: rows.map(({ testedOn }) => testedOn),
    notRetested: rowsWith(({ notRetested }) => notRetested),
    private: rowsWith((row) => row.private === true),
    maybeStruck: rowsWith(({ maybeStruck }) => maybeStruck === true),
  };
}

function outRow(
  { hydrantId, place, outages }: PublicOutOfService,
  { latitudeDeg, longitudeDeg }: PublicPosition,
): MapCell['out'][number] {
  const [first] = outages;
  const last = outages.at(-1);
  if (!first || !last) throw new Error(`no outage of ${hydrantId ?? 'a place'}`);
  return { hydrantId, place, latitudeDeg, longitudeDeg, cause: last.cause, since: first.since };
}

/** Where the hydrants in service stand, cell by cell. */
export function* placesInService(cells: readonly MapCell[]): Generator<PublicPosition> {
  for (const { inService } of cells)
    for (const [row, latitudeDeg] of inService.latitudeDeg.entries()) {
      const longitudeDeg = inService.longitudeDeg[row];
      if (longitudeDeg !== undefined) yield { latitudeDeg, longitudeDeg };
    }
}
