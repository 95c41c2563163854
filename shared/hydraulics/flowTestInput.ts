import * as z from 'zod';
import { problem, type Problem } from '../problems/problem.ts';
import { problemIssue } from '../problems/fromZod.ts';
import { rangeProblems } from './card.ts';
import { flowReading, numberIn, readingProblems, type FlowReading } from './flowReadings.ts';
import { MOST_OUTLETS, ranges } from './ranges.ts';
import { ratingRules, type RatingRule } from './ratingResidual.ts';
import { testGauge, type TestGauge } from './testGauge.ts';

export { numberIn, testOutlet, type TestOutlet } from './flowReadings.ts';

/** The last test of the same hydrant, for the doubts that only a comparison raises. */
export interface PreviousTest {
  readonly testedOn: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly measuredFlowGpm: number;
}

/**
 * A flow test as the engine takes it: static and residual at the residual hydrant, and either every flowing outlet of
 * every flow hydrant (by pitot, diffuser or meter) or one metered flow. One of the two, never both. Everything below
 * `ratingRule` sharpens the doubts and the interval; a test without it is still a test.
 */
export interface FlowTestInput {
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly outlets?: readonly FlowReading[] | undefined;
  readonly measuredFlowGpm?: number | undefined;
  /** Residual at which the available flow is wanted, psi; the rating residual when left out. */
  readonly targetResidualPsi?: number | undefined;
  readonly ratingRule?: RatingRule | undefined;
  /** Where static and residual were read; compared with the hydrants that flowed. */
  readonly residualHydrantId?: string | undefined;
  /** Largest error of the meter behind `measuredFlowGpm`, as a share; else the setting. */
  readonly measuredFlowAccuracyFraction?: number | undefined;
  readonly gauges?: readonly TestGauge[] | undefined;
  /** Local date of the test, from which the age of a calibration is counted. */
  readonly testedOn?: string | undefined;
  readonly previous?: PreviousTest | undefined;
}

/** The relations between readings; what has no number yet is left to the checks of its own field. */
function relationProblems(input: Partial<Record<keyof FlowTestInput, unknown>>): Problem[] {
  const found: Problem[] = [];
  const { staticPsi, residualPsi, targetResidualPsi, outlets, measuredFlowGpm } = input;
  if (typeof staticPsi === 'number' && typeof residualPsi === 'number' && residualPsi >= staticPsi)
    found.push(problem('residual-not-below-static', 'residualPsi'));
  if (
    typeof staticPsi === 'number' &&
    typeof targetResidualPsi === 'number' &&
    targetResidualPsi >= staticPsi
  )
    found.push(problem('target-not-below-static', 'targetResidualPsi'));
  if (outlets === undefined && measuredFlowGpm === undefined)
    found.push(problem('flow-or-outlets', 'outlets'));
  if (outlets !== undefined && measuredFlowGpm !== undefined)
    found.push(problem('flow-given-twice', 'measuredFlowGpm'));
  return found;
}

export const flowTestInput = z
  .strictObject({
    staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }),
    residualPsi: numberIn(ranges.pressurePsi),
    outlets: z.array(flowReading).min(1).max(MOST_OUTLETS).optional(),
    measuredFlowGpm: numberIn(ranges.measuredFlowGpm).optional(),
    targetResidualPsi: numberIn(ranges.pressurePsi).optional(),
    ratingRule: z.enum(ratingRules).optional(),
    residualHydrantId: z.string().trim().min(1).max(64).optional(),
    measuredFlowAccuracyFraction: numberIn(ranges.accuracyFraction).optional(),
    gauges: z.array(testGauge).max(10).optional(),
    testedOn: z.iso.date().optional(),
    previous: z
      .strictObject({
        testedOn: z.iso.date(),
        staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }),
        residualPsi: numberIn(ranges.pressurePsi),
        measuredFlowGpm: numberIn(ranges.measuredFlowGpm),
      })
      .refine(({ staticPsi, residualPsi }) => residualPsi < staticPsi, {
        params: { problem: 'residual-not-below-static' },
        path: ['residualPsi'],
      })
      .optional(),
  })
  .check(
    z.superRefine(
      (value, ctx) => {
        for (const { code, path, params } of relationProblems(value))
          ctx.addIssue(problemIssue(code, path.split('.'), params));
      },
      // Also when a field is wrong by itself: a person is told everything at once.
      { when: ({ value }) => typeof value === 'object' && value !== null && !Array.isArray(value) },
    ),
  );

const testRanges = { staticPsi: ranges.pressurePsi, residualPsi: ranges.pressurePsi } as const;
const targetRange = { targetResidualPsi: ranges.pressurePsi } as const;
const meteredRange = { measuredFlowGpm: ranges.measuredFlowGpm } as const;

/** Every reason for which a test cannot be evaluated; empty when it can. Same codes as the schema, without zod's cost. */
export function flowTestProblems(input: FlowTestInput): Problem[] {
  const { staticPsi, residualPsi, targetResidualPsi, measuredFlowGpm, outlets } = input;
  return [
    ...rangeProblems(testRanges, { staticPsi, residualPsi }),
    ...(targetResidualPsi === undefined ? [] : rangeProblems(targetRange, { targetResidualPsi })),
    ...(measuredFlowGpm === undefined ? [] : rangeProblems(meteredRange, { measuredFlowGpm })),
    ...(outlets?.length === 0 ? [problem('too-few', 'outlets', { minimum: 1 })] : []),
    ...(outlets ?? []).flatMap((reading, index) =>
      readingProblems(reading).map((found) => ({ ...found, path: `outlets.${index}.${found.path}` })),
    ),
    ...relationProblems(input),
  ];
}
