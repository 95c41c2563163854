import { rangeProblems, refuse, type FormulaCard } from '../hydraulics/card.ts';
import { ranges } from '../hydraulics/ranges.ts';

const argumentRanges = { diameterIn: ranges.openingIn, distanceIn: ranges.seenIn } as const;

/**
 * Flow from a level pipe that runs full, gpm, by how far the stream has gone when it has fallen one foot: Q = A · D (in²,
 * in). From the fall of a body it is 1.04 A · D; the printed rule is kept, and is 4 % on the low side.
 *
 * @throws OutOfRange naming every argument outside its range.
 */
export function horizontalThrowGpm(given: {
  readonly diameterIn: number;
  readonly distanceIn: number;
}): number {
  refuse(rangeProblems(argumentRanges, { ...given }));
  return (Math.PI / 4) * given.diameterIn ** 2 * given.distanceIn;
}

/** The fall at which the printed rule reads the distance, in. */
export const RULE_DROP_IN = 12;

/**
 * A throw read at another fall than one foot, in, as what it was at one foot: a level stream goes as far as its fall
 * takes time, and a body falls y in √(2 y / g), so the distance grows with √y.
 */
export const throwAtOneFootIn = ({
  distanceIn,
  dropIn,
}: {
  readonly distanceIn: number;
  readonly dropIn: number;
}): number => distanceIn * Math.sqrt(RULE_DROP_IN / dropIn);

/** The rule with a distance judged by eye (common practice, no source). */
export const THROW_ACCURACY_FRACTION = 0.15;

export const horizontalThrowCard: FormulaCard<keyof typeof argumentRanges> = {
  id: 'horizontal-throw',
  equation: 'Q = A · D at a fall of 12 in; A = π d² / 4',
  sources: [{ text: 'NABARD handbook, p. 41', marker: 'seen' }],
  arguments: argumentRanges,
  result: 'gpm',
  example: {
    given: { diameterIn: 3, distanceIn: 36 },
    expected: 254.34,
    // Printed with π = 3.14: 0.05 %.
    tolerance: 0.14,
    source: { text: 'NABARD handbook, p. 41, its worked example (r 1.5 in)', marker: 'seen' },
  },
  notes: ['The pipe is level and runs full. Measured from its end, along the top of the stream.'],
  compute: horizontalThrowGpm,
};
