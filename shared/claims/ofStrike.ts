/** What counts of one claim when several of a strike share its statement. */
export interface ClaimShare {
  readonly claimId: string;
  readonly claimNumber: string;
  /** What its latest packet or demand asks, whole cents. */
  readonly demandCents: number;
  readonly paidCents: number;
  readonly writtenOffCents: number;
  readonly closed: boolean;
}

/**
 * How much of the statement a claim takes up: what it has been paid, and what it may still be paid. What was written off
 * against one payer, or left unpaid when its claim was closed, may be asked of another.
 */
export const countsCents = ({ demandCents, paidCents, writtenOffCents, closed }: ClaimShare): number =>
  closed ? paidCents : Math.max(paidCents, demandCents - writtenOffCents);

export interface StrikeShares {
  /** The most that this claim may ask beside the others. */
  readonly mayAskCents: number;
  /** What it asks beyond that, because of what others were paid or asked since. */
  readonly tooMuchCents: number;
  /** What all claims of the strike were paid beyond its statement. */
  readonly overpaidCents: number;
}

/**
 * One claim among the claims of its strike: together they never ask more than the statement, and what one was paid the
 * others are no longer asked. `totalCents` is the statement's total.
 */
export function sharesOf(claim: ClaimShare, others: readonly ClaimShare[], totalCents: number): StrikeShares {
  const taken = others.reduce((sum, other) => sum + countsCents(other), 0);
  const mayAskCents = Math.max(0, totalCents - taken);
  const paidCents = [claim, ...others].reduce((sum, each) => sum + each.paidCents, 0);
  return {
    mayAskCents,
    tooMuchCents: Math.max(0, countsCents(claim) - mayAskCents),
    overpaidCents: Math.max(0, paidCents - totalCents),
  };
}
