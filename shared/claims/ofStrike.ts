import { problem, type Problem } from '../problems/problem.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { ClaimState } from './state.ts';

/** What counts of one claim when several of a strike share its statement (docs/decisions/0151). Whole cents. */
export interface ClaimShare {
  readonly claimId: string;
  readonly claimNumber: string;
  /** What its latest packet or demand asks. */
  readonly demandCents: number;
  readonly paidCents: number;
  /** Given up of that demand, by name, since it was issued. */
  readonly writtenOffCents: number;
  /** Closed, and no packet issued since. */
  readonly closed: boolean;
  /** A payment in the drawer may yet be cashed. */
  readonly heldCents?: number;
  /** Passed on to the utility's own insurer, which had paid first. */
  readonly sharedCents?: number;
  readonly ownInsurer?: boolean;
}

/**
 * How much of the statement a claim takes up: what it has been paid, and what it may still be paid. What was written off
 * against one payer, or left unpaid when its claim was closed, may be asked of another.
 */
export const countsCents = (share: ClaimShare): number => {
  const { demandCents, paidCents, writtenOffCents, closed, heldCents = 0 } = share;
  const hasCents = paidCents + heldCents;
  return closed ? hasCents : Math.max(hasCents, demandCents - writtenOffCents);
};

/** What a claim's own records make it count. `facts`: those of its stream after their corrections. */
export function shareOf(claim: ClaimState, facts: readonly Effective[]): ClaimShare {
  const packets = ofKind(facts, 'packet-frozen').sort((a, b) => a.fact.body.revision - b.fact.body.revision);
  const latest = packets.at(-1);
  // As instants: what was recorded before the packet was known to whoever issued it, and is in its sum.
  const since = latest ? Date.parse(latest.recordedAt) : -Infinity;
  const after = ({ recordedAt }: Effective): boolean => Date.parse(recordedAt) >= since;
  const closings = ofKind(facts, 'claim-closed');
  return {
    claimId: claim.claimId,
    claimNumber: claim.claimNumber,
    demandCents: latest?.fact.body.demandCents ?? 0,
    paidCents: claim.money.paidCents,
    writtenOffCents: ofKind(facts, 'written-off')
      .filter(after)
      .reduce((sum, { fact }) => sum + fact.body.amountCents, 0),
    closed: claim.life.closed && closings.some(after),
    heldCents: claim.money.heldCents,
    sharedCents: claim.money.sharedCents,
    ownInsurer: claim.payerKind === 'own-policy',
  };
}

export interface StrikeShares {
  /** The most that this claim may ask beside the others. */
  readonly mayAskCents: number;
  /** What it asks beyond that, because of what others were paid or asked since. */
  readonly tooMuchCents: number;
  /** What its payer may still be asked: a payment by another payer lowers it. */
  readonly dueCents: number;
  /** What all claims of the strike brought in beyond its statement, less what was passed on. */
  readonly overpaidCents: number;
}

/**
 * One claim among the claims of its strike: together they never ask more than the statement, and what one was paid the
 * others are no longer asked. `totalCents` is the statement's total.
 */
export function sharesOf(claim: ClaimShare, others: readonly ClaimShare[], totalCents: number): StrikeShares {
  const all = [claim, ...others];
  const sum = (of: (share: ClaimShare) => number, shares: readonly ClaimShare[] = all): number =>
    shares.reduce((total, share) => total + of(share), 0);
  const mayAskCents = Math.max(0, totalCents - sum(countsCents, others));
  const hasCents = ({ paidCents, heldCents = 0 }: ClaimShare): number => paidCents + heldCents;
  const keptCents = sum(({ paidCents }) => paidCents) - sum(({ sharedCents = 0 }) => sharedCents);
  return {
    mayAskCents,
    tooMuchCents: Math.max(0, countsCents(claim) - mayAskCents),
    dueCents: Math.max(0, Math.min(countsCents(claim) - hasCents(claim), totalCents - sum(hasCents))),
    overpaidCents: Math.max(0, keptCents - totalCents),
  };
}

/** Came in beyond what was asked: to be given back, and no sum that anybody is asked for. */
const tooMuchPaidCents = ({ demandCents, paidCents }: ClaimShare): number =>
  demandCents === 0 ? 0 : Math.max(0, paidCents - demandCents);

/** What the claims of one strike say together that cannot all be so. A path is a claim's id; '' is the strike. */
export function strikeProblems(shares: readonly ClaimShare[], totalCents: number): Problem[] {
  const [first] = shares;
  if (!first) return [];
  const counted = shares.reduce((sum, share) => sum + countsCents(share) - tooMuchPaidCents(share), 0);
  const { overpaidCents } = sharesOf(first, shares.slice(1), totalCents);
  const passedOn = shares.reduce((sum, { sharedCents = 0 }) => sum + sharedCents, 0);
  const insurerPaid = shares.reduce(
    (sum, { ownInsurer, paidCents }) => sum + (ownInsurer === true ? paidCents : 0),
    0,
  );
  // Without a claim on the own policy here, what the insurer paid is not on record and cannot be judged.
  const insured = shares.some(({ ownInsurer }) => ownInsurer === true);
  return [
    ...(counted > totalCents
      ? [problem('claims-above-statement', '', { tooMuchCents: counted - totalCents })]
      : []),
    ...(overpaidCents > 0 ? [problem('strike-overpaid', '', { overpaidCents })] : []),
    ...(insured && passedOn > insurerPaid
      ? [problem('shared-above-insurer-paid', '', { sharedCents: passedOn, insurerPaidCents: insurerPaid })]
      : []),
  ];
}
