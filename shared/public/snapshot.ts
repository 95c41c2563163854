import * as z from 'zod';
import { hydrantClasses, hydrantColors, standardBands } from '../hydraulics/hydrantClass.ts';
import { RATING_RESIDUAL_PSI } from '../hydraulics/ratingResidual.ts';
import { hydrantId } from '../inventory/hydrant.ts';
import { compassPoints } from '../nearest/sphere.ts';
import { hoseReaches } from '../fireCover/hoseReach.ts';
import { valveClosed } from '../outages/hydrantStatus.ts';
import { outageCauses } from '../submissions/forms/outage.ts';
import { waitingFor } from '../submissions/forms/expectedReturn.ts';
import { proofs } from '../outages/proofs.ts';
import { mapTiles } from './mapTiles.ts';
import { distanceBy, publicCover, publicFireCover } from './coverSchema.ts';
import { publicPosition } from './position.ts';
import { publicSummary } from './summary.ts';

export { publicPosition, type PublicPosition } from './position.ts';

/**
 * What the public may know, and nothing else (design decision 12). Strict objects throughout: a field that is not
 * listed here cannot leave. Free words typed by people are not listed, because they may name a person.
 */
const hydrantClass = z.enum(hydrantClasses);
export const publicCauses = ['strike', ...outageCauses, valveClosed] as const;
/** What keeps a return from taking effect, as the public needs it. Words: `public.held.<code>`. */
export const publicHolds = ['valve', 'test', 'open', 'record'] as const;
export const publicStages = ['reported', 'shut-off', 'waiting', 'under-repair', 'repaired', 'other'] as const;

/** Class and flow as last known, before whatever happened since. */
const rating = {
  hydrantClass: hydrantClass.nullable(),
  /** Whole gpm at the rating residual; null when it is not known, or when the utility keeps flows to itself. */
  ratedFlowGpm: z.number().int().min(0).nullable(),
  /** Date of the test in the utility's time zone; null for a rating that came with the inventory, undated. */
  testedOn: z.iso.date().nullable(),
} as const;

export const publicNearest = z.strictObject({
  hydrantId,
  place: z.string().nullable(),
  position: publicPosition,
  /** Feet, on the ground or along the streets as `distanceBy` says. */
  distanceFt: z.number().min(0),
  /** Snapshots of before have straight lines only. */
  distanceBy: distanceBy.default('straight'),
  /** Whether the hose that an engine carries reaches; on a straight line at best "perhaps". */
  hoseReach: z.enum(hoseReaches).optional(),
  /** Compass eighth, seen from the hydrant that is out. */
  bearing: z.enum(compassPoints),
  ...rating,
  /** Back in service although a proof was put off. */
  notRetested: z.boolean(),
  /** Not the utility's own; null when the inventory does not say. */
  private: z.boolean().nullable(),
  /** Where a hydrant without a known number is reported struck, and so near that it may be this one. */
  maybeStruck: z.literal(true).optional(),
});

export const publicOutage = z.strictObject({
  /** Stable: the strike's or the outage's id. */
  outageId: z.string(),
  cause: z.enum(publicCauses),
  since: z.iso.datetime(),
  expectedAt: z.iso.datetime().nullable(),
  waitingFor: z.enum(waitingFor).nullable(),
  stage: z.enum(publicStages),
  /** Why the latest return on record does not end it; left out where none is recorded. */
  heldBy: z.array(z.enum(publicHolds)).optional(),
});

/** One hydrant, or one place where a hydrant was reported, with every outage of it that is open. */
export const publicOutOfService = z.strictObject({
  /** The inventory's id, or the one in the report when `inInventory` is false; null when only a place was given. */
  hydrantId: hydrantId.nullable(),
  inInventory: z.boolean(),
  /** The inventory's own place text, never what somebody typed in a report. */
  place: z.string().nullable(),
  position: publicPosition.nullable(),
  ...rating,
  /** Earliest first. */
  outages: z.array(publicOutage).min(1),
  /** In service at the check, nearest first. */
  nearest: z.array(publicNearest).max(5),
  /** What covers its place now, against before; left out where there is no place or no inventory. */
  cover: publicCover.optional(),
});

/** A hydrant that is back although a proof was put off: fire crews must know that it was not re-tested. */
export const publicNotRetested = z.strictObject({
  hydrantId,
  place: z.string().nullable(),
  returnedAt: z.iso.datetime(),
  proofs: z.array(z.enum(proofs)).min(1),
});

/** How hydrants are classed: highest first. A name of the utility's own stands in place of the letters. */
const publicClass = z.strictObject({
  hydrantClass,
  name: z.string().optional(),
  fromGpm: z.number().int().min(0),
  color: z.enum(hydrantColors),
});

export const publicUtility = z.strictObject({
  name: z.string().min(1),
  timeZone: z.string(),
  locale: z.enum(['en', 'es']),
  units: z.enum(['us', 'metric']),
  emergencyPhone: z.string().min(1),
  publishedEveryMinutes: z.number().int().min(1),
  /** Under which terms others may use the data; null when the utility has not said. */
  license: z.strictObject({ name: z.string(), url: z.url() }).nullable(),
  /** Where the map may take streets from; a snapshot of before has none. */
  mapTiles: mapTiles.nullable().default(null),
  /** Rules of rating. A snapshot of before has none and was made by the standard ones. */
  classes: z
    .array(publicClass)
    .min(1)
    .default(() => standardBands.map((band) => ({ ...band }))),
  /** Residual at which a hydrant is rated, psi. */
  ratingResidualPsi: z.number().default(RATING_RESIDUAL_PSI),
});

/** Reports recorded before the check that are in nothing published yet, and when the first of them was. */
export const publicNotYetShown = z.strictObject({ reports: z.int().min(1), since: z.iso.datetime() });

export const publicSnapshot = z
  .strictObject({
    version: z.literal(1),
    utility: publicUtility,
    /** Every fact recorded before this instant is in the snapshot, but for what `notYetShown` counts. */
    checkedAt: z.iso.datetime(),
    relyUntil: z.iso.datetime(),
    /** Null: no inventory has been loaded, and the page says that it is not set up. */
    inventory: z
      .strictObject({
        /** Hydrants that should serve; abandoned and planned ones are not counted. */
        hydrants: z.number().int().min(1),
        outOfService: z.number().int().min(0),
        loadedAt: z.iso.datetime(),
        sha256: z.string(),
        /** Not in use by the inventory's own word, and with no outage on record: neither counted above nor offered. */
        inactive: z.number().int().min(0).default(0),
      })
      .nullable(),
    summary: publicSummary.optional(),
    /** Left out without an inventory. */
    fireCover: publicFireCover.optional(),
    /** What is in nothing below yet: every page and feed must say so. Left out: there is none. */
    notYetShown: publicNotYetShown.optional(),
    /** Newest first. */
    outOfService: z.array(publicOutOfService),
    notRetested: z.array(publicNotRetested),
  })
  .refine(({ checkedAt, relyUntil }) => Date.parse(relyUntil) > Date.parse(checkedAt), {
    error: 'rely-until-before-check',
  });

export type PublicSnapshot = z.infer<typeof publicSnapshot>;
export type PublicOutOfService = z.infer<typeof publicOutOfService>;
export type PublicOutage = z.infer<typeof publicOutage>;
export type PublicNearest = z.infer<typeof publicNearest>;
