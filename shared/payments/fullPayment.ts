import { Temporal } from 'temporal-polyfill';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { ClaimRules } from './rules.ts';

/** What to think of before, or after, a payment that its payer marked as full is cashed. */
export interface FullPaymentCaution {
  readonly submissionId: string;
  readonly amountCents: number;
  readonly how: BodyOf<'payment-received'>['how'];
  /** Not cashed yet: there is still a choice. */
  readonly held: boolean;
  /** Whether the payer had disputed the claim, cut it or denied it: 3-311(a)(ii) asks for a bona fide dispute. */
  readonly disputed: boolean;
  /**
   * The last day, counted from the day it was received (which is no later than its payment), on which the state's rule
   * lets the money be tendered back; null where there is no such rule, or the cheque is held.
   */
  readonly repayBy: string | null;
  readonly rule: NonNullable<ClaimRules['fullPayment']> | null;
}

/**
 * Payments of one claim that are marked as full and less than what was left, by day. A payment of all that was left
 * settles nothing that was open, and one that was sent back obtained no payment. `askedCents`: what the claim asks.
 */
export function fullPaymentCautions(
  facts: readonly Effective[],
  askedCents: number,
  rules: ClaimRules | undefined,
): FullPaymentCaution[] {
  const rule = rules?.fullPayment ?? null;
  const disputedOn = firstDisputeOn(facts);
  const payments = ofKind(facts, 'payment-received').map(({ fact }) => fact);
  const cameBefore = (a: (typeof payments)[number], b: (typeof payments)[number]): boolean =>
    a.body.receivedOn !== b.body.receivedOn
      ? a.body.receivedOn < b.body.receivedOn
      : a.submissionId < b.submissionId;
  const leftBefore = (of: (typeof payments)[number]): number =>
    payments
      .filter((each) => each.body.deposited === 'deposited' && cameBefore(each, of))
      .reduce((left, { body }) => left - body.amountCents, askedCents);
  return ofKind(facts, 'payment-received')
    .filter(
      ({ fact }) =>
        fact.body.marked === 'full' &&
        fact.body.deposited !== 'returned' &&
        fact.body.amountCents < leftBefore(fact),
    )
    .map(({ fact: { submissionId, body } }): FullPaymentCaution => {
      const held = body.deposited === 'held';
      const mayRepay = rule !== null && rule.officeNamed === null && rule.repayWithinDays !== null && !held;
      return {
        submissionId,
        amountCents: body.amountCents,
        how: body.how,
        held,
        disputed:
          body.lines.some(({ shortCents }) => shortCents > 0) ||
          (disputedOn !== null && disputedOn <= body.receivedOn),
        repayBy: mayRepay
          ? Temporal.PlainDate.from(body.receivedOn)
              .add({ days: rule.repayWithinDays ?? 0 })
              .toString()
          : null,
        rule,
      };
    })
    .sort((a, b) => (a.submissionId < b.submissionId ? -1 : 1));
}

function firstDisputeOn(facts: readonly Effective[]): string | null {
  const days = [
    ...ofKind(facts, 'line-disputed').map(({ fact }) => fact.body.saidOn),
    ...ofKind(facts, 'claim-denied').map(({ fact }) => fact.body.deniedOn),
  ];
  return days.sort()[0] ?? null;
}
