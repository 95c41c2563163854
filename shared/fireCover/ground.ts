import { convert } from '../units/convert.ts';

/** Square feet in an acre, and square meters in a hectare (NIST Handbook 44, appendix C). */
const FT2_PER_ACRE = 43_560;
const M2_PER_HECTARE = 10_000;

/** The ground that points of a grid stand for, each for a square of its spacing, feet. */
export function groundOf(
  points: number,
  stepFt: number,
): { readonly acres: number; readonly hectares: number } {
  return {
    acres: (points * stepFt ** 2) / FT2_PER_ACRE,
    hectares: (points * convert(stepFt, 'ft', 'm') ** 2) / M2_PER_HECTARE,
  };
}
