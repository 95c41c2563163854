import { OutOfRange } from '../hydraulics/card.ts';
import { problem } from '../problems/problem.ts';

/** A flange of more bolts than this is not a hydrant's. */
export const MOST_BOLTS = 100;

/**
 * The places on the ring, numbered clockwise from 1, in the order in which they are tightened: across, then across at a
 * right angle, so that each bolt is followed by the one opposite and the gasket is never pinched on one side.
 *
 * For 4, 8, 12 and 16 bolts this is the printed legacy cross pattern (ASME PCC-1, second-hand); six bolts are opposite
 * pairs (from memory). Other even counts follow the same rule: groups of two pairs at a right angle (one pair where the
 * count is not a multiple of four), begun at the odd places first and then at the even ones.
 *
 * @throws OutOfRange for an odd count, fewer than 2 or more than 100.
 */
export function tighteningOrder(bolts: number): number[] {
  if (!Number.isInteger(bolts)) throw new OutOfRange([problem('not-a-whole-number', 'bolts')]);
  if (bolts < 2) throw new OutOfRange([problem('below-minimum', 'bolts', { minimum: 2 })]);
  if (bolts > MOST_BOLTS) throw new OutOfRange([problem('above-maximum', 'bolts', { maximum: MOST_BOLTS })]);
  if (bolts % 2 !== 0) throw new OutOfRange([problem('bolts-not-even', 'bolts', { bolts })]);
  return groups(bolts).flat();
}

/** The same in the groups in which it is printed: 1-5-3-7, 2-6-4-8. */
export function groups(bolts: number): number[][] {
  const half = bolts / 2;
  const quarter = bolts / 4;
  return Number.isInteger(quarter)
    ? starts(quarter).map((first) => [first, first + half, first + quarter, first + half + quarter])
    : starts(half).map((first) => [first, first + half]);
}

/** Where the groups begin: odd places before even ones. Three are printed in their order, for twelve bolts. */
function starts(count: number): number[] {
  const all = Array.from({ length: count }, (_, index) => index + 1);
  if (count === 3) return all;
  return [...all.filter((place) => place % 2 === 1), ...all.filter((place) => place % 2 === 0)];
}

/**
 * How much of the torque each pass brings: 30, 60 and 100 % in the cross pattern, then once round the ring at full torque
 * (a gasket maker's guidance crediting the Fluid Sealing Association, seen).
 */
export const passes = [
  { share: 0.3, pattern: 'cross' },
  { share: 0.6, pattern: 'cross' },
  { share: 1, pattern: 'cross' },
  { share: 1, pattern: 'round' },
] as const;
export type Pass = (typeof passes)[number];
