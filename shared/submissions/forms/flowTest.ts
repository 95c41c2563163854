import * as z from 'zod';
import { diameterBases, numberIn } from '../../hydraulics/flowReadings.ts';
import { outletShapeIds } from '../../hydraulics/outletShapes.ts';
import { ranges } from '../../hydraulics/ranges.ts';
import { gaugeReads } from '../../hydraulics/testGauge.ts';
import { newHydrantId } from '../../inventory/hydrant.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { chosenId, exhibit, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Pressures are gauge pressures at the outlet, psi; a main above 300 psi is not a water utility's. */
const psi = z.number().min(0).max(300);
const accuracyFraction = numberIn(ranges.accuracyFraction).optional();

/** What is optional here was not asked before; a test of those days reads on without it. */
const nozzle = {
  /** By what a finger feels inside; left out where the coefficient came from elsewhere. */
  shape: z.enum(outletShapeIds).optional(),
  diameterIn: z.number().min(1).max(8),
  diameterBasis: z.enum(diameterBases).optional(),
  /** Outlet coefficient c; 0.90 rounded, 0.80 square, 0.70 projecting are the usual ones. */
  coefficient: z.number().min(0.5).max(1),
  pitotPsi: z.number().gt(0).max(200),
  /** The pitot gauge, where more than one was used. */
  gaugeId: chosenId.optional(),
};

/** One flowing outlet: by pitot, through a diffuser that its maker rates, or through a meter. */
export const flowTestOutlet = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hose'), ...nozzle }),
  z.strictObject({ kind: z.literal('pumper'), ...nozzle }),
  z.strictObject({
    kind: z.literal('diffuser'),
    kGpmPerSqrtPsi: numberIn(ranges.kGpmPerSqrtPsi),
    pitotPsi: z.number().gt(0).max(200),
    accuracyFraction,
    gaugeId: chosenId.optional(),
  }),
  z.strictObject({ kind: z.literal('meter'), flowGpm: numberIn(ranges.measuredFlowGpm), accuracyFraction }),
]);

export const flowTest = form({
  kind: 'flow-test',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** The hydrant that is rated: static and residual are read here. */
      residualHydrantId: newHydrantId,
      testedAt: instant,
      staticPsi: psi,
      residualPsi: psi,
      /** Each hydrant that flowed, with its pitot readings (none when metered). The residual hydrant alone: a one-hydrant test. */
      flowHydrants: z
        .array(z.strictObject({ hydrantId: newHydrantId, outlets: z.array(flowTestOutlet).max(6) }))
        .max(6),
      /** Metered flow, in place of pitot readings. */
      measuredFlowGpm: z.number().gt(0).max(20_000).nullable(),
      targetResidualPsi: z.number().min(0).max(100),
      gauges: z
        .array(
          z.strictObject({
            gaugeId: chosenId,
            /** What it read; one gauge may read several. */
            reads: z.array(z.enum(gaugeReads)).max(gaugeReads.length).optional(),
            rangePsi: z.number().gt(0).max(600),
            /** Largest error of its grade, as a share of the range. */
            accuracyFraction,
            /** The finest step to which it was read. */
            resolutionPsi: numberIn(ranges.resolutionPsi).optional(),
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
    .check(
      relations(
        ({ staticPsi, residualPsi }, ctx) => {
          if (residualPsi >= staticPsi)
            ctx.addIssue(problemIssue('residual-not-below-static', ['residualPsi']));
        },
        ({ staticPsi, targetResidualPsi }, ctx) => {
          if (targetResidualPsi >= staticPsi)
            ctx.addIssue(problemIssue('target-not-below-static', ['targetResidualPsi']));
        },
        ({ measuredFlowGpm, flowHydrants }, ctx) => {
          const outlets = flowHydrants.flatMap((hydrant) => hydrant.outlets);
          if (measuredFlowGpm === null && outlets.length === 0)
            ctx.addIssue(problemIssue('flow-or-outlets', ['flowHydrants']));
          // Two answers to one question: nobody could say later which of them the rating stands on.
          if (measuredFlowGpm !== null && outlets.length > 0)
            ctx.addIssue(problemIssue('flow-given-twice', ['measuredFlowGpm']));
        },
        ({ flowHydrants, gauges }, ctx) => {
          const listed = new Set(gauges.map(({ gaugeId }) => gaugeId));
          flowHydrants.forEach(({ outlets }, at) =>
            outlets.forEach((outlet, index) => {
              if (outlet.kind === 'meter' || outlet.gaugeId === undefined || listed.has(outlet.gaugeId))
                return;
              ctx.addIssue(
                problemIssue('gauge-not-listed', ['flowHydrants', at, 'outlets', index, 'gaugeId'], {
                  gaugeId: outlet.gaugeId,
                }),
              );
            }),
          );
        },
      ),
    ),
});

/** A one-hydrant test reads residual and flow at the same hydrant; it is labelled so wherever it is shown. */
export function isOneHydrantTest({
  residualHydrantId,
  flowHydrants = [],
}: {
  readonly residualHydrantId?: string | undefined;
  readonly flowHydrants?: readonly { readonly hydrantId?: string | undefined }[] | undefined;
}): boolean {
  const [flowed] = flowHydrants;
  return (
    flowHydrants.length === 1 && flowed?.hydrantId !== undefined && flowed.hydrantId === residualHydrantId
  );
}
