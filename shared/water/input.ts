import * as z from 'zod';
import { numberIn } from '../hydraulics/flowReadings.ts';
import { ranges } from '../hydraulics/ranges.ts';
import { hydrantTypes } from '../inventory/hydrant.ts';
import { problemIssue } from '../problems/fromZod.ts';
import { has } from './has.ts';

const instant = z.iso.datetime();
const waterGal = z.number().min(0).max(1_000_000_000);
const accuracy = z.number().min(0).max(0.9);

const pipe = {
  diameterIn: numberIn(ranges.pipeDiameterIn),
  lengthFt: numberIn(ranges.lengthFt),
  /** Hazen-Williams C; left out where nobody knows it. */
  roughness: numberIn(ranges.roughness).nullish(),
};

/** What a crew saw. The names are those of a strike's `found`, so that it can be handed over as it is. */
const found = z.strictObject({
  mainValve: z.enum(['holds', 'does-not-hold', 'unknown']),
  flow: z.enum(['none', 'leak', 'jet', 'full-bore', 'unknown']),
  jetHeightIn: numberIn(ranges.seenIn).nullish(),
  throwDistanceIn: numberIn(ranges.seenIn).nullish(),
  /** How far the stream had fallen there; one foot where nobody says otherwise, which is a strike's own question. */
  throwDropIn: numberIn(ranges.seenIn).nullish(),
  openingDiameterIn: numberIn(ranges.openingIn).nullish(),
  /** How far the height or distance may be off, as a share; by eye, a fifth and a tenth. */
  seenAccuracyFraction: accuracy.nullish(),
});

const times = z.strictObject({
  struckAt: instant.nullish(),
  /** `witnessed` and `reported` are taken as the time; anything else only lies between the bounds. */
  struckAtBasis: z.enum(['witnessed', 'reported', 'bounded', 'unknown']).nullish(),
  /** Somebody saw it standing, or no water. */
  lastSeenSoundAt: instant.nullish(),
  /** The first call, alarm or sight of the water. */
  firstCallAt: instant.nullish(),
  waterShutAt: instant.nullish(),
  /** Where nobody wrote down when it was shut: last seen flowing, and first seen shut. */
  lastSeenFlowingAt: instant.nullish(),
  firstSeenShutAt: instant.nullish(),
});

export const figures = ['low', 'best', 'high'] as const;

export const waterLostInput = z
  .strictObject({
    hydrantType: z.enum(hydrantTypes).nullish(),
    found,
    times,
    /** What a meter or a tank level says was lost at this strike. */
    metered: z.strictObject({ waterGal, accuracyFraction: accuracy.nullish() }).nullish(),
    /** Pressure in the main with nothing flowing, psi. */
    staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }).nullish(),
    lateral: z.strictObject({ ...pipe, minorLossK: z.number().min(0).max(100).nullish() }).nullish(),
    main: z.strictObject(pipe).nullish(),
    /** The hydrant's own latest flow test. */
    flowTest: z
      .strictObject({
        staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }),
        residualPsi: numberIn(ranges.pressurePsi),
        flowGpm: numberIn(ranges.testFlowGpm),
        testedOn: z.iso.date().nullish(),
      })
      .refine(({ staticPsi, residualPsi }) => residualPsi < staticPsi, {
        params: { problem: 'residual-not-below-static' },
        path: ['residualPsi'],
      })
      .nullish(),
    /** What a network model says the hydrant could give at no pressure, gpm. */
    modelBoundGpm: numberIn(ranges.testFlowGpm).nullish(),
    /** Water that was not lost by the strike but used on the repair. */
    used: z
      .array(
        z
          .strictObject({
            use: z.enum(['flushing', 'flow-test']),
            waterGal: waterGal.nullish(),
            flowGpm: numberIn(ranges.testFlowGpm).nullish(),
            minutes: z.number().gt(0).max(10_000).nullish(),
          })
          .superRefine(({ waterGal: gallons, flowGpm, minutes }, ctx) => {
            const byTime = has(flowGpm) && has(minutes);
            if (!has(gallons) && !byTime)
              ctx.addIssue(problemIssue('gallons-or-flow-and-minutes', ['waterGal']));
            if (has(gallons) && (has(flowGpm) || has(minutes)))
              ctx.addIssue(problemIssue('gallons-given-twice', ['waterGal']));
          }),
      )
      .max(20)
      .optional(),
    /** Which figure the claim uses: the low one, unless somebody chooses otherwise and says why. */
    choice: z
      .strictObject({
        figure: z.enum([...figures, 'own']),
        waterGal: waterGal.nullish(),
        reason: z.string().trim().min(1).max(300).nullish(),
      })
      .superRefine(({ figure, waterGal: own, reason }, ctx) => {
        if (figure !== 'low' && !has(reason)) ctx.addIssue(problemIssue('figure-needs-reason', ['reason']));
        if (figure === 'own' && !has(own)) ctx.addIssue(problemIssue('own-figure-missing', ['waterGal']));
        if (figure !== 'own' && has(own)) ctx.addIssue(problemIssue('own-figure-not-chosen', ['waterGal']));
      })
      .nullish(),
  })
  .superRefine(
    (
      {
        found: { flow, mainValve, jetHeightIn, throwDistanceIn, throwDropIn, openingDiameterIn },
        hydrantType,
      },
      ctx,
    ) => {
      const sawWater =
        flow === 'leak' || flow === 'jet' || flow === 'full-bore' || has(jetHeightIn) || has(throwDistanceIn);
      if (mainValve === 'holds' && hydrantType === 'wet-barrel')
        ctx.addIssue(problemIssue('wet-barrel-no-main-valve', ['found', 'mainValve']));
      else if (mainValve === 'holds' && sawWater)
        ctx.addIssue(problemIssue('flow-though-valve-held', ['found', 'mainValve']));
      if (flow === 'none' && (has(jetHeightIn) || has(throwDistanceIn)))
        ctx.addIssue(
          problemIssue('jet-without-flow', ['found', has(jetHeightIn) ? 'jetHeightIn' : 'throwDistanceIn']),
        );
      if (has(throwDropIn) && !has(throwDistanceIn))
        ctx.addIssue(problemIssue('drop-without-throw', ['found', 'throwDistanceIn']));
      if ((has(jetHeightIn) || has(throwDistanceIn)) && !has(openingDiameterIn))
        ctx.addIssue(problemIssue('jet-needs-opening', ['found', 'openingDiameterIn']));
    },
  );
export type WaterLostInput = z.output<typeof waterLostInput>;
