import { groups, tighteningOrder } from './order.ts';

/** One bolt on the ring, for whoever draws it: places are shares of the ring's radius from its middle, y upward. */
export interface RingBolt {
  /** Place on the ring, clockwise from 1 at the top. */
  readonly place: number;
  /** When it is tightened in the cross pattern, from 1. */
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

export interface Ring {
  readonly bolts: readonly RingBolt[];
  readonly groups: readonly (readonly number[])[];
}

/** Where the bolts of a ring are and when each is tightened. @throws OutOfRange as `tighteningOrder`. */
export function tighteningRing(bolts: number): Ring {
  const order = tighteningOrder(bolts);
  return {
    groups: groups(bolts),
    bolts: Array.from({ length: bolts }, (_, index) => {
      const angle = (2 * Math.PI * index) / bolts;
      return { place: index + 1, turn: order.indexOf(index + 1) + 1, x: Math.sin(angle), y: Math.cos(angle) };
    }),
  };
}
