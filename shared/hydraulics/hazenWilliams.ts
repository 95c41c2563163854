import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/** Weight of water that the outlet constant 29.84 stands for, 62.37 lb/ft³, over 144 in² a ft². */
export const PSI_PER_FT = 62.37 / 144;

const argumentRanges = {
  flowGpm: ranges.flowGpm,
  diameterIn: ranges.pipeDiameterIn,
  roughness: ranges.roughness,
  lengthFt: ranges.lengthFt,
} as const;

export interface Pipe {
  /** Inside diameter, in. */
  readonly diameterIn: number;
  readonly lengthFt: number;
  /** Hazen-Williams C: 140 new plastic or lined, 100 old iron, 60 badly scaled. */
  readonly roughness: number;
}

/**
 * Head lost to friction in a pipe, ft of water: h = 0.2083 (100/C)^1.852 q^1.852 / d^4.8655 for each 100 ft (gpm, in).
 * Published constants differ by up to 3.5 %; this is the form pinned here. For water at ordinary temperature.
 *
 * @throws OutOfRange naming every argument outside its range.
 */
export function hazenWilliamsLossFt(given: Pipe & { readonly flowGpm: number }): number {
  refuse(rangeProblems(argumentRanges, { ...given }));
  return frictionFt(given, given.flowGpm);
}

/** The same without the checks, for loops that solve for the flow. */
export const frictionFt = ({ diameterIn, lengthFt, roughness }: Pipe, flowGpm: number): number =>
  (lengthFt / 100) * 0.2083 * (100 / roughness) ** 1.852 * (flowGpm ** 1.852 / diameterIn ** 4.8655);

export const hazenWilliamsCard: FormulaCard<keyof typeof argumentRanges> = {
  id: 'hazen-williams',
  equation: 'h = L/100 · 0.2083 · (100/C)^1.852 · q^1.852 / d^4.8655',
  sources: [{ text: 'Engineering ToolBox, Hazen-Williams equation', marker: 'seen' }],
  arguments: argumentRanges,
  result: 'ft',
  example: {
    given: { flowGpm: 200, diameterIn: 3.048, roughness: 140, lengthFt: 30 },
    expected: 2.7,
    // Printed as 9.0 ft per 100 ft: half of a tenth, over 30 ft.
    tolerance: 0.015,
    source: { text: 'Engineering ToolBox, its worked example', marker: 'seen' },
  },
  notes: ['Published constants differ by up to 3.5 %; the roughness is known to a tenth at best.'],
  compute: hazenWilliamsLossFt,
};
