import type { Hydrant } from '../inventory/hydrant.ts';
import { nearestInService, type NearestIndex } from '../nearest/nearest.ts';
import type { OpenPlace } from './openOutages.ts';

/** How far a place that was tapped or read off a device is off when it does not say, metres (common practice, no source). */
const USUAL_ACCURACY_M = 15;
/** A device that is less sure than this says nothing of one hydrant more than of its neighbors. */
const MOST_ACCURACY_M = 100;
/** Hydrants that can stand within that. */
const MOST = 50;

/**
 * Hydrants in the inventory that may be the very one that is out, because somebody reported a hydrant there without its
 * number or with one that the inventory does not know. They may still be named as the nearest, and never without saying so.
 */
export function possiblyStruck(
  places: readonly OpenPlace[],
  index: NearestIndex<Hydrant> | null,
  isKnown: (hydrantId: string) => boolean,
): ReadonlySet<string> {
  const found = new Set<string>();
  if (!index) return found;
  for (const { hydrantId, reportedPosition } of places) {
    if (!reportedPosition || (hydrantId !== null && isKnown(hydrantId))) continue;
    const withinM = Math.min(MOST_ACCURACY_M, Math.max(USUAL_ACCURACY_M, reportedPosition.accuracyM ?? 0));
    for (const { hydrant, distanceFt } of nearestInService(index, reportedPosition, MOST, () => true))
      if (distanceFt * 0.3048 <= withinM) found.add(hydrant.hydrantId);
  }
  return found;
}
