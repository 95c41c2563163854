import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/**
 * A pumper outlet runs with voids in its stream, so the outlet equation reads high; the factor brings it back. By
 * pitot reading, psi. NFPA 291: 0.83 from 7 psi up (second-hand), the rest from memory.
 */
export const pumperFactors: readonly { readonly pitotPsi: number; readonly factor: number }[] = [
  { pitotPsi: 2, factor: 0.97 },
  { pitotPsi: 3, factor: 0.92 },
  { pitotPsi: 4, factor: 0.89 },
  { pitotPsi: 5, factor: 0.86 },
  { pitotPsi: 6, factor: 0.84 },
  { pitotPsi: 7, factor: 0.83 },
];

/** Below this the table has no factor; its first one is held, which is the lower flow, and the test is warned of it. */
export const PUMPER_TABLE_FROM_PSI = 2;

const argumentRanges = { pitotPsi: ranges.pitotPsi } as const;

/**
 * Extra factor for a pumper outlet without flow tube, straight line between the readings of the table, so that a higher
 * pitot reading never computes to a lower flow. @throws OutOfRange for a pitot outside its range.
 */
export function pumperFactor(pitotPsi: number): number {
  refuse(rangeProblems(argumentRanges, { pitotPsi }));
  const above = pumperFactors.findIndex((row) => row.pitotPsi >= pitotPsi);
  if (above === -1) return 0.83;
  const high = pumperFactors[above] as (typeof pumperFactors)[number];
  const low = pumperFactors[above - 1];
  if (!low) return high.factor;
  const share = (pitotPsi - low.pitotPsi) / (high.pitotPsi - low.pitotPsi);
  return low.factor + share * (high.factor - low.factor);
}

/**
 * Relative change of the factor for one psi more of pitot, 1/psi: 0 or negative, as the table falls. Taken over a psi, as
 * far as a reading is off, so that a corner of the table is no jump.
 */
export function pumperFactorSlope(pitotPsi: number): number {
  const low = Math.max(0.01, pitotPsi - 0.5);
  const high = Math.min(ranges.pitotPsi.maximum, pitotPsi + 0.5);
  return (pumperFactor(high) - pumperFactor(low)) / ((high - low) * pumperFactor(pitotPsi));
}

export const pumperFactorCard: FormulaCard<'pitotPsi'> = {
  id: 'pumper-factor',
  equation:
    'Q = f(p) · 29.84 · c · d² · √p; f = 0.97, 0.92, 0.89, 0.86, 0.84, 0.83 at p = 2, 3, 4, 5, 6, 7 psi and above',
  sources: [
    { text: 'NFPA 291, table of pumper outlet coefficients: 0.83 at 7 psi and above', marker: 'second-hand' },
    { text: 'NFPA 291, the same table below 7 psi', marker: 'memory' },
  ],
  arguments: argumentRanges,
  result: '1',
  example: {
    given: { pitotPsi: 10 },
    expected: 0.83,
    tolerance: 0,
    source: { text: "NFPA 291 as quoted in an engineer's post on a public forum", marker: 'second-hand' },
  },
  notes: ['Between readings of the table: straight line. Below 2 psi: 0.97 is held, with a warning.'],
  compute: ({ pitotPsi }) => pumperFactor(pitotPsi),
};
