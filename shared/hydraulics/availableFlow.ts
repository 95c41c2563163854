import { problem } from '../problems/problem.ts';
import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/** Exponent of flow in pressure drop, 1/1.85 rounded as NFPA 291 prints it. */
export const DROP_EXPONENT = 0.54;

/** What one test fixes: the pressure with nothing flowing, and the pressure at one flow. */
export interface TestPoint {
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly flowGpm: number;
}

const point = {
  staticPsi: ranges.pressurePsi,
  residualPsi: ranges.pressurePsi,
  flowGpm: ranges.testFlowGpm,
} as const;
const availableRanges = { ...point, targetResidualPsi: ranges.pressurePsi } as const;
const residualRanges = { ...point, atFlowGpm: ranges.flowGpm } as const;

function refuseNoDrop({ staticPsi, residualPsi }: TestPoint): void {
  if (residualPsi >= staticPsi) refuse([problem('residual-not-below-static', 'residualPsi')]);
}

/**
 * Flow at a chosen residual pressure, gpm, from one test: Q = Q_F · ((S − R_target) / (S − R))^0.54.
 *
 * Holds for a main that loses pressure by friction from one source. In looped, pumped networks it can be a fifth off
 * when the drop is small, which is why `pressureDrop` is asked first.
 *
 * @throws OutOfRange when an argument is outside its range, the residual is not below the static, or the target is above
 * the static (at the static itself nothing flows: 0).
 */
export function availableFlowGpm(given: TestPoint & { readonly targetResidualPsi: number }): number {
  refuse(rangeProblems(availableRanges, { ...given }));
  refuseNoDrop(given);
  const { staticPsi, residualPsi, flowGpm, targetResidualPsi } = given;
  if (targetResidualPsi > staticPsi) refuse([problem('target-not-below-static', 'targetResidualPsi')]);
  return flowGpm * ((staticPsi - targetResidualPsi) / (staticPsi - residualPsi)) ** DROP_EXPONENT;
}

/**
 * The inverse: residual pressure at a chosen flow, psi. Negative where the supply cannot give that flow at all; the
 * caller says so ("more than the supply can give") and does not show it as a pressure.
 *
 * @throws OutOfRange as `availableFlowGpm` does.
 */
export function residualAtFlowPsi(given: TestPoint & { readonly atFlowGpm: number }): number {
  refuse(rangeProblems(residualRanges, { ...given }));
  refuseNoDrop(given);
  const { staticPsi, residualPsi, flowGpm, atFlowGpm } = given;
  return staticPsi - (staticPsi - residualPsi) * (atFlowGpm / flowGpm) ** (1 / DROP_EXPONENT);
}

export const availableFlowCard: FormulaCard<keyof typeof availableRanges> = {
  id: 'available-flow',
  equation: 'Q_R = Q_F · ((S − R_target) / (S − R))^0.54',
  sources: [
    { text: 'K. Kolb, course slides on water supply, slide 1', marker: 'seen' },
    { text: 'NFPA 291, flow available at a residual pressure', marker: 'seen' },
  ],
  arguments: availableRanges,
  result: 'gpm',
  example: {
    given: { staticPsi: 50, residualPsi: 12, flowGpm: 453, targetResidualPsi: 20 },
    expected: 399,
    // Printed to the whole gallon from a flow printed to the whole gallon.
    tolerance: 1,
    source: {
      text: 'Colorado Water Conservation Board archive, Table 6, Fire Hydrant Flow Tests, 30 Sep 1975',
      marker: 'seen',
    },
  },
  notes: [
    'For one source it meets EPANET to 0.03 %; in looped, pumped networks it is off by a fifth or more when the drop is small.',
    'Fed by a pump with no tank it is on the low side: by a quarter even from a drop of a fifth of static.',
  ],
  compute: availableFlowGpm,
};

export const residualAtFlowCard: FormulaCard<keyof typeof residualRanges> = {
  id: 'residual-at-flow',
  equation: 'R(Q) = S − (S − R) · (Q / Q_F)^(1/0.54)',
  sources: [{ text: 'the available-flow relation solved for pressure', marker: 'computed' }],
  arguments: residualRanges,
  result: 'psi',
  example: {
    given: { staticPsi: 86, residualPsi: 42, flowGpm: 789, atFlowGpm: 500 },
    expected: 67,
    // Read off a graph to the whole psi.
    tolerance: 1,
    source: { text: 'K. Kolb, course slides on water supply, slides 15 and 16', marker: 'seen' },
  },
  compute: residualAtFlowPsi,
};
