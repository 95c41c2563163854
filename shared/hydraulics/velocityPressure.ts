import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { OUTLET_CONSTANT } from './outletFlow.ts';
import { ranges } from './ranges.ts';

const argumentRanges = { flowGpm: ranges.flowGpm, diameterIn: ranges.pipeDiameterIn } as const;

/**
 * Pressure that stands in the speed of the water, psi: (Q / (29.84 d²))², the outlet equation turned round with c = 1.
 * A fitting loses K of it. @throws OutOfRange naming every argument outside its range.
 */
export function velocityPressurePsi(given: {
  readonly flowGpm: number;
  readonly diameterIn: number;
}): number {
  refuse(rangeProblems(argumentRanges, { ...given }));
  return speedPsi(given.diameterIn, given.flowGpm);
}

/** The same without the checks, for loops that solve for the flow. */
export const speedPsi = (diameterIn: number, flowGpm: number): number =>
  (flowGpm / (OUTLET_CONSTANT * diameterIn * diameterIn)) ** 2;

export const velocityPressureCard: FormulaCard<keyof typeof argumentRanges> = {
  id: 'velocity-pressure',
  equation: 'p_v = (Q / (29.84 · d²))²; a fitting loses K · p_v',
  sources: [{ text: 'the outlet equation turned round, c = 1', marker: 'computed' }],
  arguments: argumentRanges,
  result: 'psi',
  example: {
    given: { flowGpm: 834, diameterIn: 2.5 },
    expected: 20,
    // 834 is printed to the whole gallon: 0.06 % of flow, twice that in pressure.
    tolerance: 0.025,
    source: {
      text: 'Hydraulic Institute Engineering Data Library, theoretical discharge at 20 psi, 2½ in',
      marker: 'seen',
    },
  },
  compute: velocityPressurePsi,
};
