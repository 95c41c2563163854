import { rangeProblems, refuse, type FormulaCard } from '../hydraulics/card.ts';
import { OUTLET_CONSTANT } from '../hydraulics/outletFlow.ts';
import { ranges } from '../hydraulics/ranges.ts';

/** A hole in a wall: about 0.62. A broken edge can be rounder, up to 0.8 (common practice, no source). */
export const holeCoefficient = { low: 0.6, best: 0.62, high: 0.8 } as const;

const argumentRanges = {
  diameterIn: ranges.openingIn,
  coefficient: ranges.orificeCoefficient,
  pressurePsi: ranges.pressurePsi,
} as const;

/** Flow through a hole under pressure, gpm: 29.84 C d² √p. @throws OutOfRange naming every argument out of range. */
export function holeFlowGpm(given: {
  readonly diameterIn: number;
  readonly coefficient: number;
  readonly pressurePsi: number;
}): number {
  refuse(rangeProblems(argumentRanges, { ...given }));
  return OUTLET_CONSTANT * given.coefficient * given.diameterIn ** 2 * Math.sqrt(given.pressurePsi);
}

export const holeFlowCard: FormulaCard<keyof typeof argumentRanges> = {
  id: 'hole-flow',
  equation: 'Q = 29.84 · C · d² · √p; C about 0.62',
  sources: [
    { text: 'the outlet equation; coefficient of a sharp-edged hole, as in any handbook', marker: 'memory' },
  ],
  arguments: argumentRanges,
  result: 'gpm',
  example: {
    given: { diameterIn: 0.25, coefficient: 0.62, pressurePsi: 60 },
    // 13,000 gal a day over 1,440 minutes.
    expected: 13_000 / 1440,
    // Printed to the thousand gallons.
    tolerance: 500 / 1440,
    source: { text: 'Durant OK utility, leaks at 60 psi: ¼ in loses 13,000 gal/day', marker: 'seen' },
  },
  compute: holeFlowGpm,
};

/**
 * Holes that a word stands for where nobody measured one, in: common practice, no source, and as wide as that. A word
 * never stands for more than a person saw.
 */
export const openingClasses = {
  leak: { low: 1 / 8, best: 1 / 4, high: 1 / 2 },
  jet: { low: 1 / 2, best: 1, high: 2 },
} as const;
