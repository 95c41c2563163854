import { factor } from '../units/convert.ts';
import { formatNumber, type Reader } from '../units/format.ts';
import type { System } from '../units/units.ts';
import { say } from '../words/index.ts';
import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/** How many L/min for the root of a bar are one gpm for the root of a psi: 14.416; 14.4 as it is printed. */
export const METRIC_PER_US_CONSTANT = factor('gpm', 'L/min') / Math.sqrt(factor('psi', 'bar'));

/** A diffuser's K of one system, for gpm and psi or for L/min and bar, in the other. */
export function convertDiffuserConstant(k: number, from: System, to: System): number {
  if (from === to) return k;
  return to === 'metric' ? k * METRIC_PER_US_CONSTANT : k / METRIC_PER_US_CONSTANT;
}

/** A diffuser's K with its unit, as its maker prints it in the reader's system. */
export function sayDiffuserConstant(kGpmPerSqrtPsi: number, { system, locale }: Reader): string {
  const k = convertDiffuserConstant(kGpmPerSqrtPsi, 'us', system);
  return `${formatNumber(k, locale, 2)} ${say(locale, `hydraulics.unit.k.${system}`)}`;
}

const argumentRanges = { kGpmPerSqrtPsi: ranges.kGpmPerSqrtPsi, pitotPsi: ranges.pitotPsi } as const;

/**
 * Flow through a diffuser, gpm, from its gauge, psi, and the constant K that its maker states for it. There is no
 * default K: it belongs to the device. @throws OutOfRange naming every argument outside its range.
 */
export function diffuserFlowGpm({
  kGpmPerSqrtPsi,
  pitotPsi,
}: {
  readonly kGpmPerSqrtPsi: number;
  readonly pitotPsi: number;
}): number {
  refuse(rangeProblems(argumentRanges, { kGpmPerSqrtPsi, pitotPsi }));
  return kGpmPerSqrtPsi * Math.sqrt(pitotPsi);
}

export const diffuserFlowCard: FormulaCard<keyof typeof argumentRanges> = {
  id: 'diffuser-flow',
  equation: 'Q = K · √p',
  sources: [
    { text: 'the outlet equation with 29.84 · c · d² as one constant of the device', marker: 'computed' },
  ],
  arguments: argumentRanges,
  result: 'gpm',
  example: {
    // A diffuser that were a smooth 2½ in outlet with c 0.9 would have K = 29.84 × 0.9 × 6.25 = 167.85.
    given: { kGpmPerSqrtPsi: 167.85, pitotPsi: 40 },
    expected: 1061,
    // Printed with 29.83 and to the whole gallon.
    tolerance: 0.9,
    source: { text: "engineer's post on a public forum (the outlet that it equals)", marker: 'second-hand' },
  },
  notes: ['K is the maker’s, for the gauge and the position that the maker says. There is no usual K.'],
  compute: diffuserFlowGpm,
};
