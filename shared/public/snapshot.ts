import * as z from 'zod';
import { hydrantId, hydrantTypes } from '../inventory/hydrant.ts';
import { outageCauses } from '../submissions/forms/outage.ts';
import { waitingFor } from '../submissions/forms/expectedReturn.ts';
import { proofs } from '../outages/proofs.ts';

/**
 * What the public may know, and nothing else (design decision 12). Strict objects throughout: a field that is not
 * listed here cannot leave. Free words typed by people are not listed, because they may name a person.
 */
const publicPlace = z.strictObject({ latitudeDeg: z.number(), longitudeDeg: z.number() });

export const publicNearest = z.strictObject({
  hydrantId,
  place: z.string().nullable(),
  distanceFt: z.number().min(0),
  /** Compass eighth from the hydrant that is out: N, NE, E … */
  bearing: z.enum(['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW']),
  hydrantClass: z.enum(['AA', 'A', 'B', 'C']).nullable(),
  ratedFlowGpm: z.number().nullable(),
  testedOn: z.iso.date().nullable(),
});

export const publicOutage = z.strictObject({
  /** Stable: the strike's or the outage's id. */
  outageId: z.string(),
  /** Null when a hydrant that is not in the inventory was reported; then only its position is shown. */
  hydrantId: hydrantId.nullable(),
  /** The inventory's own place text; for an unknown hydrant null. */
  place: z.string().nullable(),
  position: publicPlace.nullable(),
  cause: z.enum(['strike', ...outageCauses]),
  since: z.iso.datetime(),
  expectedAt: z.iso.datetime().nullable(),
  waitingFor: z.enum(waitingFor).nullable(),
  stage: z.enum(['reported', 'shut-off', 'waiting', 'under-repair', 'repaired', 'other']),
  hydrantClass: z.enum(['AA', 'A', 'B', 'C']).nullable(),
  ratedFlowGpm: z.number().nullable(),
  nearest: z.array(publicNearest).max(5),
});

/** A hydrant that is back although a proof was put off: fire crews must know it was not re-tested. */
export const publicNotRetested = z.strictObject({
  hydrantId,
  place: z.string().nullable(),
  returnedAt: z.iso.datetime(),
  proofs: z.array(z.enum(proofs)).min(1),
});

export const publicHydrant = z.strictObject({
  hydrantId,
  place: z.string().nullable(),
  position: publicPlace,
  type: z.enum(hydrantTypes),
  inService: z.boolean(),
  hydrantClass: z.enum(['AA', 'A', 'B', 'C']).nullable(),
});

export const publicSnapshot = z.strictObject({
  version: z.literal(1),
  utility: z.strictObject({
    name: z.string(),
    timeZone: z.string(),
    locale: z.enum(['en', 'es']),
    units: z.enum(['us', 'metric']),
    emergencyPhone: z.string(),
    showFlow: z.boolean(),
  }),
  checkedAt: z.iso.datetime(),
  relyUntil: z.iso.datetime(),
  /** Null: no inventory has been loaded, and the page says that it is not set up. */
  inventory: z
    .strictObject({ hydrants: z.number().int().min(0), loadedAt: z.iso.datetime(), sha256: z.string() })
    .nullable(),
  outOfService: z.array(publicOutage),
  notRetested: z.array(publicNotRetested),
});
export type PublicSnapshot = z.infer<typeof publicSnapshot>;
export type PublicOutage = z.infer<typeof publicOutage>;
