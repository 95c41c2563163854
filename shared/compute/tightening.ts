import * as z from 'zod';
import { tighteningCautions } from '../hydraulics/cautions.ts';
import { MOST_BOLTS } from '../tightening/order.ts';
import { tighteningPlan } from '../tightening/plan.ts';
import { backOffRecord, torqueRecord } from '../tightening/record.ts';
import { tighteningRing } from '../tightening/ring.ts';
import { ringDescription, ringSvg } from '../tightening/ringSvg.ts';
import { sayBackOff, sayPlan } from '../tightening/say.ts';
import { say } from '../words/index.ts';
import { computation } from './computation.ts';

export const tightening = computation({
  name: 'tightening',
  summary: 'tightening.compute.summary',
  output: 'tightening.compute.output',
  input: z.strictObject({
    bolts: z.number().int().min(2).max(MOST_BOLTS).optional(),
    record: torqueRecord.nullish(),
    /** A nut that carries thrust, where the joint has one. */
    nut: backOffRecord.nullish(),
    wrenchToleranceFraction: z.number().min(0).max(0.5).optional(),
  }),
  // An invented hydrant model: no torque here is anybody's default.
  example: {
    record: {
      kind: 'torque',
      joint: 'bonnet',
      bolts: 8,
      torque: 72,
      unit: 'lbf.ft',
      manual: 'Invented Model 7, service manual',
      page: '14',
    },
    wrenchToleranceFraction: 0.04,
  },
  run: ({ bolts, record, nut, wrenchToleranceFraction }, reader) => {
    const plan = tighteningPlan({ record: record ?? null, bolts, wrenchToleranceFraction });
    const ring = tighteningRing(plan.bolts);
    return {
      steps: [...sayPlan(plan, reader), ...(nut ? [sayBackOff(nut, reader.locale)] : [])],
      ...plan,
      cautions: tighteningCautions.map((code) => say(reader.locale, `hydraulics.caution.${code}`)),
      description: ringDescription(ring, reader.locale),
      svg: ringSvg(ring, { locale: reader.locale, idPrefix: 'ring' }),
    };
  },
});
