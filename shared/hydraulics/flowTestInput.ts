import * as z from 'zod';
import { problem, type Problem } from '../problems/problem.ts';
import { problemIssue } from '../problems/fromZod.ts';
import { rangeProblems, type Range } from './card.ts';
import { MOST_OUTLETS, ranges } from './ranges.ts';
import { ratingRules, type RatingRule } from './ratingResidual.ts';

/** One flowing outlet. `kind` unknown counts as a hose outlet, with a warning when it is as wide as a pumper outlet. */
export interface TestOutlet {
  readonly diameterIn: number;
  readonly coefficient: number;
  readonly pitotPsi: number;
  readonly kind?: 'hose' | 'pumper' | undefined;
}

/**
 * A flow test as the engine takes it: static and residual at the residual hydrant, and either every flowing outlet of
 * every flow hydrant or a metered flow. One of the two, never both.
 */
export interface FlowTestInput {
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly outlets?: readonly TestOutlet[] | undefined;
  readonly measuredFlowGpm?: number | undefined;
  /** Residual at which the available flow is wanted, psi; the rating residual when left out. */
  readonly targetResidualPsi?: number | undefined;
  readonly ratingRule?: RatingRule | undefined;
}

/** A zod number with the card's range, so that a range is written once. */
export function numberIn(range: Range): z.ZodNumber {
  const number = z.number().max(range.maximum);
  return range.exclusiveMinimum ? number.gt(range.minimum) : number.min(range.minimum);
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

export const testOutlet = z.strictObject({
  diameterIn: numberIn(ranges.diameterIn),
  coefficient: numberIn(ranges.coefficient),
  pitotPsi: numberIn(ranges.pitotPsi),
  kind: z.enum(['hose', 'pumper']).optional(),
});

export const flowTestInput = z
  .strictObject({
    staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }),
    residualPsi: numberIn(ranges.pressurePsi),
    outlets: z.array(testOutlet).min(1).max(MOST_OUTLETS).optional(),
    measuredFlowGpm: numberIn(ranges.measuredFlowGpm).optional(),
    targetResidualPsi: numberIn(ranges.pressurePsi).optional(),
    ratingRule: z.enum(ratingRules).optional(),
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

/** Every reason for which a test cannot be evaluated; empty when it can. Same codes as the schema, without zod's cost. */
export function flowTestProblems(input: FlowTestInput): Problem[] {
  const { staticPsi, residualPsi, targetResidualPsi, measuredFlowGpm, outlets } = input;
  return [
    ...rangeProblems(
      { staticPsi: ranges.pressurePsi, residualPsi: ranges.pressurePsi },
      { staticPsi, residualPsi },
    ),
    ...(targetResidualPsi === undefined
      ? []
      : rangeProblems({ targetResidualPsi: ranges.pressurePsi }, { targetResidualPsi })),
    ...(measuredFlowGpm === undefined
      ? []
      : rangeProblems({ measuredFlowGpm: ranges.measuredFlowGpm }, { measuredFlowGpm })),
    ...(outlets?.length === 0 ? [problem('too-few', 'outlets', { minimum: 1 })] : []),
    ...(outlets ?? []).flatMap(({ diameterIn, coefficient, pitotPsi }, index) =>
      rangeProblems(
        { diameterIn: ranges.diameterIn, coefficient: ranges.coefficient, pitotPsi: ranges.pitotPsi },
        { diameterIn, coefficient, pitotPsi },
      ).map((found) => ({ ...found, path: `outlets.${index}.${found.path}` })),
    ),
    ...relationProblems(input),
  ];
}
