import * as z from 'zod';
import { publicAreas } from './areas.ts';
import { publicHydrantPage } from './hydrantPage.ts';
import { mapCell } from './mapCells.ts';
import { publicSnapshot } from './snapshot.ts';

/** Everything that one publication shows: nothing reaches a public page except through this schema. */
export const publicEdition = z.strictObject({
  snapshot: publicSnapshot,
  /** Hydrants in service and out of it, for the map alone, part by part. */
  cells: z.array(mapCell),
  /** The town in parts, for a list that is too long for one page; null when one page holds it. */
  listAreas: publicAreas.nullable(),
  /** Hydrants that have an event; the others have no page of their own. */
  hydrants: z.array(publicHydrantPage),
});
export type PublicEdition = z.infer<typeof publicEdition>;
