import * as z from 'zod';
import { hydrantClasses } from '../hydraulics/hydrantClass.ts';
import { hydrantId, hydrantTypes } from '../inventory/hydrant.ts';
import { proofs } from '../outages/proofs.ts';
import { publicCauses, publicOutOfService, publicPosition } from './snapshot.ts';

/** A flow test as the public may see it. `readings` is null where the utility keeps flows to itself. */
export const publicTest = z.strictObject({
  testedAt: z.iso.datetime(),
  hydrantClass: z.enum(hydrantClasses).nullable(),
  /** Flow and pressure read at the same hydrant, which says less than a test with a flow hydrant beside it. */
  oneHydrant: z.boolean(),
  readings: z
    .strictObject({
      staticPsi: z.number(),
      residualPsi: z.number(),
      measuredFlowGpm: z.number(),
      targetResidualPsi: z.number(),
      ratedFlowGpm: z.number().int().min(0).nullable(),
    })
    .nullable(),
});

export const publicPastOutage = z.strictObject({
  outageId: z.string(),
  cause: z.enum(publicCauses),
  since: z.iso.datetime(),
  endedAt: z.iso.datetime(),
  /** Proofs that were put off when it came back. */
  deferred: z.array(z.enum(proofs)),
});

/** What the public may know of one hydrant that has an event. */
export const publicHydrantPage = z.strictObject({
  hydrantId,
  inInventory: z.boolean(),
  place: z.string().nullable(),
  position: publicPosition.nullable(),
  type: z.enum(hydrantTypes),
  outOfService: publicOutOfService.nullable(),
  /** Proofs put off at its return and not made up for since. */
  notRetested: z.array(z.enum(proofs)),
  /** Newest first. */
  past: z.array(publicPastOutage),
  /** Newest first, ten at most. */
  tests: z.array(publicTest).max(10),
});
export type PublicHydrantPage = z.infer<typeof publicHydrantPage>;
export type PublicTest = z.infer<typeof publicTest>;
