import type { DistanceBy } from './cover.ts';

export const hoseReaches = ['reaches', 'perhaps', 'too-far'] as const;
export type HoseReach = (typeof hoseReaches)[number];

/**
 * Whether the hose that an engine carries reaches from a hydrant to a place. A straight line says at best "perhaps": hose
 * is laid along streets and around corners.
 *
 * @param hoseFt length carried, feet; the rating schedule supposes 1,200 ft, the utility's own is a setting
 */
export function hoseReach(
  distance: { readonly ft: number; readonly by: DistanceBy },
  hoseFt: number,
): HoseReach {
  if (distance.ft > hoseFt) return 'too-far';
  return distance.by === 'streets' ? 'reaches' : 'perhaps';
}
