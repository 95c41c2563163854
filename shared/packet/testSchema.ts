import * as z from 'zod';
import { diameterBases } from '../hydraulics/flowReadings.ts';
import { outletShapeIds } from '../hydraulics/outletShapes.ts';
import { gaugeReads } from '../hydraulics/testGauge.ts';
import { instant, submissionId } from '../submissions/fields.ts';

/** Flow tests as a packet may tell of them: every reading that the result stands on, and no notes. */
const text = z.string().min(1).max(400);
const worker = z.strictObject({ workerId: text, trade: text.nullable() });

/** One flowing outlet, diffuser or meter; what does not belong to its kind, or was not asked, is null. */
export const packetOutlet = z.strictObject({
  hydrantId: text,
  kind: z.enum(['hose', 'pumper', 'diffuser', 'meter']),
  shape: z.enum(outletShapeIds).nullable(),
  diameterIn: z.number().nullable(),
  diameterBasis: z.enum(diameterBases).nullable(),
  coefficient: z.number().nullable(),
  pitotPsi: z.number().nullable(),
  kGpmPerSqrtPsi: z.number().nullable(),
  flowGpm: z.number().nullable(),
  accuracyFraction: z.number().nullable(),
  gaugeId: text.nullable(),
});
export type PacketOutlet = z.infer<typeof packetOutlet>;

const gauge = z.strictObject({
  gaugeId: text,
  /** Null: the record does not say what it read. */
  reads: z.array(z.enum(gaugeReads)).nullable(),
  rangePsi: z.number(),
  accuracyFraction: z.number().nullable(),
  resolutionPsi: z.number().nullable(),
  calibratedOn: z.iso.date().nullable(),
});

export const packetTest = z.strictObject({
  testedAt: instant,
  /** In the utility's time zone. */
  testedOn: z.iso.date(),
  residualHydrantId: text,
  oneHydrant: z.boolean(),
  purpose: z.enum(['after-repair', 'routine', 'request', 'other']),
  staticPsi: z.number(),
  residualPsi: z.number(),
  targetResidualPsi: z.number(),
  outlets: z.array(packetOutlet).max(36),
  meteredFlowGpm: z.number().nullable(),
  gauges: z.array(gauge).max(10),
  flowedMinutes: z.number().nullable(),
  /** Empty for a test of before the strike: who made it is nothing to the claim. */
  testedBy: z.array(worker),
  submissionId,
});
export type PacketTest = z.infer<typeof packetTest>;
