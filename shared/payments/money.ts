import { problem, type Problem } from '../problems/problem.ts';
import type { Effective } from '../submissions/effective.ts';
import { moneyEntries, type MoneyEntry } from './entry.ts';
import { cutsOf, lostOf, type Cut, type Lost } from './cuts.ts';
import { linesPaid, type LinePaid } from './lines.ts';

/** A claim's money as its facts say it stands, whole cents; none below zero. */
export interface ClaimMoney {
  readonly entries: readonly MoneyEntry[];
  /** What the latest demand that a packet bears out asks for. */
  readonly askedCents: number;
  /** Deposited, before what went back. */
  readonly receivedCents: number;
  readonly reversedCents: number;
  readonly refundedCents: number;
  /** What the payer has paid and not got back. */
  readonly paidCents: number;
  /** Cheques in the drawer: not money yet. */
  readonly heldCents: number;
  /** Passed on to an insurer that had paid first. */
  readonly sharedCents: number;
  /** What stays with the utility: paid less what was passed on. */
  readonly keptCents: number;
  readonly writtenOffCents: number;
  /** Asked and neither paid nor written off. */
  readonly balanceCents: number;
  /** Paid beyond what was asked: it is the payer's, and is given back or applied. */
  readonly overpaidCents: number;
  readonly lines: readonly LinePaid[];
  /** Paid and not said for which line. */
  readonly unallocatedCents: number;
  readonly cuts: readonly Cut[];
  readonly lost: readonly Lost[];
  /** The day on which the balance came to nothing by payment; null while it has not. */
  readonly paidOn: string | null;
  readonly problems: readonly Problem[];
}

/** Everything that the latest demand asks for has come from the payer; false before any demand. */
export const isPaid = ({ askedCents, paidCents }: Pick<ClaimMoney, 'askedCents' | 'paidCents'>): boolean =>
  askedCents > 0 && paidCents >= askedCents;

const sum = (entries: readonly { readonly amountCents: number }[]): number =>
  entries.reduce((total, { amountCents }) => total + amountCents, 0);

/**
 * The money of one claim. `askedCents` is what its latest demand asks for, 0 while none was sent. Facts are those of the
 * claim's stream after their corrections. Pure; the order of arrival makes no difference, and nothing is negative:
 * what cannot be so is said in `problems`.
 */
export function claimMoney(facts: readonly Effective[], askedCents: number): ClaimMoney {
  const entries = moneyEntries(facts);
  const of = (kind: MoneyEntry['kind']): MoneyEntry[] => entries.filter((entry) => entry.kind === kind);
  const problems: Problem[] = [];

  const payments = new Map(of('payment').map((entry) => [entry.submissionId, entry]));
  const left = new Map([...payments].map(([id, { amountCents }]) => [id, amountCents]));
  // Only as much can go back as came, and only of a payment that is there.
  for (const { submissionId, payment, amountCents } of of('reversal')) {
    const most = left.get(payment ?? '');
    if (most === undefined) problems.push(problem('reverses-no-payment', submissionId));
    else {
      if (amountCents > most)
        problems.push(problem('reversal-above-payment', submissionId, { amountCents, leftCents: most }));
      left.set(payment ?? '', Math.max(0, most - amountCents));
    }
  }
  const standing = (deposited: MoneyEntry['deposited']): number =>
    [...payments].reduce(
      (total, [id, entry]) => total + (entry.deposited === deposited ? (left.get(id) ?? 0) : 0),
      0,
    );
  const deposited = [...payments.values()].filter((entry) => entry.deposited === 'deposited');
  const receivedCents = sum(deposited);
  const stayedCents = standing('deposited');

  // A refund is a fact of money that left, whatever it was for; beyond what came it is questioned.
  const refundedCents = sum(of('refund'));
  if (refundedCents > stayedCents)
    problems.push(problem('refund-above-payments', '', { refundedCents, receivedCents: stayedCents }));
  for (const { submissionId, payment } of of('refund'))
    if (payment !== null && !payments.has(payment))
      problems.push(problem('refund-of-no-payment', submissionId));
  // Giving back what came as full payment undoes it (UCC 3-311(c)(2)); anything else is given back of what is too much.
  const givenBackCents = sum(
    of('refund').filter(({ payment }) => payments.get(payment ?? '')?.marked !== 'full'),
  );
  const tooMuchCents = Math.max(0, stayedCents - askedCents);
  if (askedCents > 0 && givenBackCents > tooMuchCents && refundedCents <= stayedCents)
    problems.push(
      problem('refund-above-overpaid', '', { refundedCents: givenBackCents, overpaidCents: tooMuchCents }),
    );
  const paidCents = Math.max(0, stayedCents - refundedCents);
  const sharedCents = sum(of('shared'));
  if (sharedCents > paidCents) problems.push(problem('shared-above-paid', '', { sharedCents, paidCents }));

  const writtenOffCents = sum(of('write-off'));
  const unpaidCents = Math.max(0, askedCents - paidCents);
  if (writtenOffCents > unpaidCents)
    problems.push(problem('write-off-above-balance', '', { writtenOffCents, unpaidCents }));
  if (askedCents === 0 && payments.size > 0) problems.push(problem('payment-without-demand'));
  const overpaidCents = Math.max(0, paidCents - askedCents);
  if (askedCents > 0 && overpaidCents > 0) problems.push(problem('overpaid', '', { overpaidCents }));
  const balanceCents = Math.max(0, unpaidCents - writtenOffCents);

  const stayed = lessRefunds(left, of('refund'));
  const { lines, allocatedCents } = linesPaid(facts, left, stayed);
  const cuts = cutsOf(facts, stayed);
  return {
    entries,
    askedCents,
    receivedCents,
    reversedCents: receivedCents - stayedCents,
    refundedCents,
    paidCents,
    heldCents: standing('held'),
    sharedCents,
    keptCents: Math.max(0, paidCents - sharedCents),
    writtenOffCents,
    balanceCents,
    overpaidCents,
    lines,
    unallocatedCents: Math.max(0, paidCents - allocatedCents),
    cuts,
    lost: lostOf(facts, cuts, balanceCents),
    paidOn: paidCents >= askedCents ? paidOn(entries, askedCents, left) : null,
    problems,
  };
}

/** What is left of each payment, less what was given back of it by name. */
function lessRefunds(
  left: ReadonlyMap<string, number>,
  refunds: readonly MoneyEntry[],
): ReadonlyMap<string, number> {
  const stayed = new Map(left);
  for (const { payment, amountCents } of refunds) {
    const cents = stayed.get(payment ?? '');
    if (cents !== undefined) stayed.set(payment ?? '', Math.max(0, cents - amountCents));
  }
  return stayed;
}

/**
 * The day on which the money that came and stayed reached what is asked, for good: what was given back counts from the
 * day it was, so a sum that was paid, tendered back and paid again was paid the second time.
 */
function paidOn(
  entries: readonly MoneyEntry[],
  askedCents: number,
  left: ReadonlyMap<string, number>,
): string | null {
  if (askedCents === 0) return null;
  const byDay = new Map<string, number>();
  for (const { kind, deposited, submissionId, on, amountCents } of entries) {
    const cents =
      kind === 'payment' && deposited === 'deposited'
        ? (left.get(submissionId) ?? 0)
        : kind === 'refund'
          ? -amountCents
          : 0;
    byDay.set(on, (byDay.get(on) ?? 0) + cents);
  }
  let stayed = 0;
  let reachedOn: string | null = null;
  for (const [on, cents] of byDay) {
    stayed += cents;
    reachedOn = stayed < askedCents ? null : (reachedOn ?? on);
  }
  return reachedOn;
}
