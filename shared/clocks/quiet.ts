import type { ClaimState } from '../claims/state.ts';
import type { Deadline, DeadlineState } from './deadline.ts';
import type { ClockName } from './settings.ts';

/** A claim that nobody is reminded of: open, and no date of it runs that asks somebody to do the next thing. */
export interface QuietClaim extends Pick<
  ClaimState,
  'claimId' | 'claimNumber' | 'strikeId' | 'payerKind' | 'payerName'
> {
  readonly standing: ClaimState['life']['standing'];
  /** What else holds of it: paid too much, a check in the drawer. */
  readonly flags: ClaimState['life']['flags'];
  /** What is left to ask, whole cents; 0 while nothing was demanded. */
  readonly balanceCents: number;
}

/** Dates that come once in years or are of the utility's own papers: none of them makes anybody look at the claim. */
const remindsOfNothing: readonly ClockName[] = [
  'limitation',
  'government-notice',
  'own-policy-notice',
  'retention-end',
];
const runs: readonly DeadlineState[] = ['running', 'due-today', 'overdue'];

/**
 * The claim, if it is open, something is left to do about its money (nothing demanded yet, something owed, something
 * paid too much, a check in the drawer) and no date of it runs; else null.
 */
export function quietClaim(claim: ClaimState, deadlines: readonly Deadline[]): QuietClaim | null {
  const { claimId, claimNumber, strikeId, payerKind, payerName, stage, life, money } = claim;
  const { balanceCents } = money;
  const asks = stage !== 'billed' || balanceCents > 0 || money.overpaidCents > 0 || money.heldCents > 0;
  if (life.closed || !asks) return null;
  if (deadlines.some(({ clock, state }) => runs.includes(state) && !remindsOfNothing.includes(clock)))
    return null;
  const { standing, flags } = life;
  return { claimId, claimNumber, strikeId, payerKind, payerName, standing, flags, balanceCents };
}

/** What is owed most first; among equals by number. */
export const byBalance = (a: QuietClaim, b: QuietClaim): number =>
  b.balanceCents - a.balanceCents || a.claimNumber.localeCompare(b.claimNumber);
