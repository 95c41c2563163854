import * as z from 'zod';
import { modelJoint } from '../tightening/modelJoint.ts';
import { passNames } from '../tightening/tightened.ts';
import { instant, submissionId } from '../submissions/fields.ts';
import { flowMethods, limitKinds } from '../water/record.ts';
import { waterBases } from '../water/estimate.ts';
import { waterLostInput } from '../water/input.ts';

/** How joints were closed and what water was lost, as a packet may tell of them. */
const text = z.string().min(1).max(400);
const worker = z.strictObject({ workerId: text, trade: text.nullable() });
const answerable = z.strictObject({ workerId: text, trade: text.nullable(), name: text.nullable() });

/** A joint as it was closed; what does not belong to its kind, or was not written down, is null. */
const closed = z.strictObject({
  bolts: z.number().nullable(),
  passes: z.array(z.enum(passNames)),
  torqueLbfFt: z.number().nullable(),
  wrenchId: text.nullable(),
  wrenchCalibratedOn: z.iso.date().nullable(),
  turns: z.number().nullable(),
  lockLinedUp: z.boolean().nullable(),
  manual: text.nullable(),
  page: text.nullable(),
  doneAt: instant,
  by: worker,
});

export const packetTightening = z.strictObject({
  modelId: text.nullable(),
  /** In the order of the model's record, then what else was closed. */
  joints: z
    .array(z.strictObject({ joint: text, printed: modelJoint.nullable(), used: closed.nullable() }))
    .max(60),
});
export type PacketTightening = z.infer<typeof packetTightening>;

const {
  struckAt,
  struckAtBasis,
  lastSeenSoundAt,
  firstCallAt,
  waterShutAt,
  lastSeenFlowingAt,
  firstSeenShutAt,
} = waterLostInput.shape.times.shape;

export const packetWater = z
  .strictObject({
    claimedGal: z.number().min(0),
    method: z.enum(['metered', 'flow-times-duration', 'none-lost', 'other']),
    /** As its writer put it for an insurer. */
    basis: z.string().min(1).max(3000),
    by: worker,
    submissionId,
    flowingFrom: instant.nullable(),
    flowingTo: instant.nullable(),
    /** What the duration stands on; null in a record of before, which says it in its sentence. */
    times: z
      .strictObject({
        struckAt,
        struckAtBasis,
        lastSeenSoundAt,
        firstCallAt,
        waterShutAt,
        lastSeenFlowingAt,
        firstSeenShutAt,
      })
      .nullable(),
    /** What was seen and known, as `compute water-lost` takes it; null in a record of before. */
    question: waterLostInput.nullable(),
    estimate: z
      .strictObject({
        by: z.enum(waterBases),
        lowGal: z.number(),
        bestGal: z.number(),
        highGal: z.number().nullable(),
        flowMethod: z.enum(flowMethods).nullable(),
        accuracyFraction: z.number().nullable(),
        limitedBy: z.enum(limitKinds).nullable(),
        flushingGal: z.number(),
        flowTestGal: z.number(),
      })
      .nullable(),
    choice: z
      .strictObject({ figure: z.enum(['low', 'best', 'high', 'own']), reason: text.nullable() })
      .nullable(),
    /** A figure that was challenged, and by whom and how it was answered. */
    challenges: z.array(
      z.strictObject({
        code: z.string().max(60),
        path: z.string().max(200),
        params: z.record(z.string(), z.union([z.string(), z.number()])),
      }),
    ),
    challengeAnswer: z.strictObject({ text: z.string().min(1).max(4000), by: answerable }).nullable(),
  })
  .nullable();
export type PacketWater = z.infer<typeof packetWater>;
