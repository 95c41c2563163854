import * as z from 'zod';
import { publicHydrantPage } from './hydrantPage.ts';
import { publicPosition, publicSnapshot } from './snapshot.ts';

/** Everything that one publication shows: nothing reaches a public page except through this schema. */
export const publicEdition = z.strictObject({
  snapshot: publicSnapshot,
  /** Places of the hydrants in service, for the map alone. */
  dots: z.array(publicPosition),
  /** Hydrants that have an event; the others have no page of their own. */
  hydrants: z.array(publicHydrantPage),
});
export type PublicEdition = z.infer<typeof publicEdition>;
