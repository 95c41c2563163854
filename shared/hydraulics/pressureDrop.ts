import { problem } from '../problems/problem.ts';
import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/** Least drop from which a rating may be projected, as a share of static. NFPA 291, second-hand. A setting. */
export const MINIMUM_DROP_FRACTION = 0.1;

export interface PressureDrop {
  readonly psi: number;
  /** Share of the static pressure, 0 to 1. */
  readonly fraction: number;
  /** Enough to project from. Exactly the least drop is enough. */
  readonly sufficient: boolean;
  /** The drop that would have been enough, psi. */
  readonly neededPsi: number;
}

const argumentRanges = { staticPsi: ranges.pressurePsi, residualPsi: ranges.pressurePsi } as const;

// 86 − 77.4 is 8.599999999999994: readings to a tenth must not miss the line by the last bit.
const LAST_BIT = 1e-9;

/** How far the pressure fell while water flowed. @throws OutOfRange when it did not fall, or a reading is out of range. */
export function pressureDrop(
  { staticPsi, residualPsi }: { readonly staticPsi: number; readonly residualPsi: number },
  minimumFraction: number = MINIMUM_DROP_FRACTION,
): PressureDrop {
  refuse(rangeProblems(argumentRanges, { staticPsi, residualPsi }));
  if (residualPsi >= staticPsi) refuse([problem('residual-not-below-static', 'residualPsi')]);
  const psi = staticPsi - residualPsi;
  const fraction = psi / staticPsi;
  return {
    psi,
    fraction,
    sufficient: fraction >= minimumFraction - LAST_BIT,
    neededPsi: minimumFraction * staticPsi,
  };
}

export const pressureDropCard: FormulaCard<'staticPsi' | 'residualPsi'> = {
  id: 'pressure-drop',
  equation: 'drop = (S − R) / S; enough from 0.10',
  sources: [
    { text: 'NFPA 291: at least 10 % of the static pressure', marker: 'second-hand' },
    { text: "one fire department's form asks 25 % or 15 psi", marker: 'seen' },
  ],
  arguments: argumentRanges,
  result: '1',
  example: {
    given: { staticPsi: 90, residualPsi: 85 },
    expected: 0.056,
    tolerance: 0.0005,
    source: {
      text: 'College Station TX report, 2004 (its readings; the share is arithmetic)',
      marker: 'computed',
    },
  },
  compute: (given) => pressureDrop(given).fraction,
};
