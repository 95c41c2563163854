import * as z from 'zod';
import { publicAreaDrawing } from './coverSchema.ts';
import { publicAreas } from './areas.ts';
import { publicYears } from '../yearly/schema.ts';
import { publicHydrantPage } from './hydrantPage.ts';
import { mapCell } from './mapCells.ts';
import { publicPlannedWork } from './plannedWork.ts';
import { publicStation } from '../stations/page.ts';
import { publicSnapshot } from './snapshot.ts';

/** Everything that one publication shows: nothing reaches a public page except through this schema. */
export const publicEdition = z.strictObject({
  snapshot: publicSnapshot,
  /** Hydrants in service and out of it, for the map alone, part by part. */
  cells: z.array(mapCell),
  /** Drawings of the first areas in `snapshot.fireCover.areas`, in their order; none where places are kept coarse. */
  areaDrawings: z.array(publicAreaDrawing),
  /** Figures of the years. */
  yearly: publicYears,
  /** The town in parts, for a list that is too long for one page; null when one page holds it. */
  listAreas: publicAreas.nullable(),
  /** Hydrants that have an event; the others have no page of their own. */
  hydrants: z.array(publicHydrantPage),
  /** Areas of the fire stations, each with a page; none where the utility has loaded none. */
  stations: z.array(publicStation),
  /** Work to come at hydrants, earliest first. */
  plannedWork: z.array(publicPlannedWork),
});
export type PublicEdition = z.infer<typeof publicEdition>;
