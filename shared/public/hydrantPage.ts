import * as z from 'zod';
import { verdicts } from '../hydraulics/capacityChange.ts';
import { hydrantClasses } from '../hydraulics/hydrantClass.ts';
import { flowCauses } from '../hydraulics/readingSpread.ts';
import { hydrantId, hydrantTypes } from '../inventory/hydrant.ts';
import { proofs } from '../outages/proofs.ts';
import { publicPlannedWork } from './plannedWork.ts';
import { publicCauses, publicOutOfService, publicPosition } from './snapshot.ts';

/** How far the readings may be off together, for the band of the supply curve: `ReadingSpread` without what was assumed. */
const publicSpread = z.strictObject({
  staticVariance: z.number(),
  residualVariance: z.number(),
  pressureCovariance: z.number(),
  staticFlowCovariance: z.number(),
  residualFlowCovariance: z.number(),
  flowVariance: z.record(z.enum(flowCauses), z.number()),
});

/**
 * A flow test as the public may see it. `readings` is null where the utility keeps flows to itself: everything that a
 * flow could be worked out from stands in it, the interval and the spread too, so that neither tells what is kept.
 */
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
      /** What the rating is for: 20 psi, or what the utility's rule says. */
      ratingResidualPsi: z.number(),
      ratedFlowGpm: z.number().int().min(0).nullable(),
      /** Of the rated capacity at 95 %; null without one. */
      interval: z
        .strictObject({ lowGpm: z.number(), highGpm: z.number(), classChance: z.number().min(0).max(1) })
        .nullable(),
      spread: publicSpread,
      /** Whether the pressure fell enough to project beyond the test. */
      minimumDropFraction: z.number(),
    })
    .nullable(),
});

/** How the capacity changed between two tests; `figures` is null where the utility keeps flows to itself. */
export const publicChange = z.strictObject({
  verdict: z.enum(verdicts),
  fromTestedAt: z.iso.datetime(),
  toTestedAt: z.iso.datetime(),
  figures: z
    .strictObject({
      /** Both at the rating residual of the later test. */
      fromGpm: z.number(),
      toGpm: z.number(),
      /** Negative is a loss. */
      fraction: z.number(),
    })
    .nullable(),
});

/** The last rated test before a strike and the first after its repair. */
export const publicRepair = z.strictObject({
  struckAt: z.iso.datetime(),
  before: publicTest,
  after: publicTest,
  change: publicChange.nullable(),
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
  /** What is not over yet, earliest first. */
  plannedWork: z.array(publicPlannedWork),
  /** Newest first. */
  past: z.array(publicPastOutage),
  /** Newest first, ten at most. */
  tests: z.array(publicTest).max(10),
  /** The newest test that rates the hydrant, against the rated one before it and against the first; at most these two. */
  changes: z.array(publicChange).max(2),
  /** Newest first; those only that have a rated test on both sides. */
  repairs: z.array(publicRepair).max(5),
});
export type PublicHydrantPage = z.infer<typeof publicHydrantPage>;
export type PublicTest = z.infer<typeof publicTest>;
export type PublicChange = z.infer<typeof publicChange>;
export type PublicRepair = z.infer<typeof publicRepair>;
