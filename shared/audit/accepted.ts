import { ofKind, type Effective } from '../submissions/effective.ts';
import type { AnsweredObjection } from './objections.ts';

/** An objection that a person accepted although the money is still on the bill. */
export interface StillBilled {
  readonly objection: AnsweredObjection;
  /** What credits that name it have taken off, whole cents. */
  readonly creditedCents: number;
  /** What would come off beside those, whole cents, above zero. */
  readonly leftCents: number;
}

/**
 * Objections that were accepted and for which no credit was recorded, or a smaller one than the money at stake: to accept
 * is only to say so, and what is demanded falls with a credit or a correction. `strikeFacts` hold the strike's credits.
 */
export function acceptedStillBilled(
  objections: readonly AnsweredObjection[],
  strikeFacts: readonly Effective[],
): StillBilled[] {
  const credits = ofKind(strikeFacts, 'credit').map(({ fact }) => fact.body);
  return objections.flatMap((objection) => {
    if (objection.answered?.answer !== 'accepted') return [];
    const creditedCents = credits
      .filter((credit) => credit.objection === objection.key)
      .reduce((sum, { amountCents }) => sum + amountCents, 0);
    const leftCents = objection.atStakeCents - creditedCents;
    return leftCents > 0 ? [{ objection, creditedCents, leftCents }] : [];
  });
}
