import * as z from 'zod';
import { hydrantId } from '../../inventory/hydrant.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { chosenId, exhibit, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Pressures are gauge pressures at the outlet, psi; a main above 300 psi is not a water utility's. */
const psi = z.number().min(0).max(300);

export const flowTestOutlet = z.strictObject({
  kind: z.enum(['hose', 'pumper']),
  diameterIn: z.number().min(1).max(8),
  /** Outlet coefficient c; 0.90 rounded, 0.80 square, 0.70 projecting are the usual ones. */
  coefficient: z.number().min(0.5).max(1),
  pitotPsi: z.number().gt(0).max(200),
});

export const flowTest = form({
  kind: 'flow-test',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** The hydrant that is rated: static and residual are read here. */
      residualHydrantId: hydrantId,
      testedAt: instant,
      staticPsi: psi,
      residualPsi: psi,
      /** Each hydrant that flowed, with its pitot readings (none when metered). The residual hydrant alone: a one-hydrant test. */
      flowHydrants: z.array(z.strictObject({ hydrantId, outlets: z.array(flowTestOutlet).max(6) })).max(6),
      /** Metered flow, in place of pitot readings. */
      measuredFlowGpm: z.number().gt(0).max(20_000).nullable(),
      targetResidualPsi: z.number().min(0).max(100),
      gauges: z
        .array(
          z.strictObject({
            gaugeId: chosenId,
            rangePsi: z.number().gt(0).max(600),
            calibratedOn: z.iso.date().nullable(),
          }),
        )
        .max(10),
      flowedMinutes: z.number().gt(0).max(600).nullable(),
      testedByWorkerIds: z.array(chosenId).min(1).max(10),
      purpose: z.enum(['after-repair', 'routine', 'request', 'other']),
      photos: z.array(exhibit).max(20),
      note: longText.nullable(),
    })
    .superRefine((value, ctx) => {
      if (value.residualPsi >= value.staticPsi)
        ctx.addIssue(problemIssue('residual-not-below-static', ['residualPsi']));
      if (value.targetResidualPsi >= value.staticPsi)
        ctx.addIssue(problemIssue('target-not-below-static', ['targetResidualPsi']));
      const pitots = value.flowHydrants.flatMap(({ outlets }) => outlets);
      if (value.measuredFlowGpm === null && pitots.length === 0)
        ctx.addIssue(problemIssue('flow-or-outlets', ['flowHydrants']));
      // Two answers to one question: nobody could say later which of them the rating stands on.
      if (value.measuredFlowGpm !== null && pitots.length > 0)
        ctx.addIssue(problemIssue('flow-given-twice', ['measuredFlowGpm']));
    }),
});

/** A one-hydrant test reads residual and flow at the same hydrant; it is labelled so wherever it is shown. */
export function isOneHydrantTest(body: z.infer<typeof flowTest.body>): boolean {
  return body.flowHydrants.length === 1 && body.flowHydrants[0]?.hydrantId === body.residualHydrantId;
}
