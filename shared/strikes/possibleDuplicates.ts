import { greatCircleMetres } from '../nearest/sphere.ts';
import type { StrikeState } from './state.ts';

/** Two reports further apart than this are two events (common practice, no source). */
export const DUPLICATE_WITHIN_HOURS = 24;
/** Two reports of a hydrant that is not in the inventory: a phone's position is good to some tens of metres. */
export const DUPLICATE_WITHIN_M = 60;

/**
 * Other strikes that may be this one, reported by somebody else: the same hydrant, or the same place where a hydrant
 * is not named, within a day. A person decides and sends a link; nothing is joined by a guess.
 */
export function possibleDuplicates(strike: StrikeState, others: readonly StrikeState[]): string[] {
  return others
    .filter((other) => !strike.memberIds.includes(other.strikeId))
    .filter(
      ({ since }) =>
        Math.abs(Date.parse(since) - Date.parse(strike.since)) <= DUPLICATE_WITHIN_HOURS * 3_600_000,
    )
    .filter((other) => samePlace(strike, other))
    .map(({ strikeId }) => strikeId)
    .sort();
}

function samePlace(a: StrikeState, b: StrikeState): boolean {
  if (a.hydrantId !== null && b.hydrantId !== null) return a.hydrantId === b.hydrantId;
  if (a.position === null || b.position === null) return false;
  return greatCircleMetres(a.position, b.position) <= DUPLICATE_WITHIN_M;
}
