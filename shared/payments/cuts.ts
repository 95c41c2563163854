import { ofKind, type Effective } from '../submissions/effective.ts';
import type { ShortReason } from '../submissions/forms/claimLife/common.ts';

/** Less was paid on a line than asked: by which payment, why, in whose words. */
export interface Cut {
  readonly submissionId: string;
  readonly on: string;
  readonly lineId: string | null;
  readonly cents: number;
  readonly reason: ShortReason;
  readonly words: string | null;
}

/** What the payments that stand cut, first to last. `left`: what is left of each payment; one that is all gone cuts nothing. */
export function cutsOf(facts: readonly Effective[], left: ReadonlyMap<string, number>): Cut[] {
  return ofKind(facts, 'payment-received')
    .filter(({ fact }) => (left.get(fact.submissionId) ?? 0) > 0)
    .flatMap(({ fact: { submissionId, body } }) =>
      body.lines.flatMap(({ lineId, shortCents, reason, words }): Cut[] =>
        shortCents === 0
          ? []
          : [
              {
                submissionId,
                on: body.receivedOn,
                lineId,
                cents: shortCents,
                reason: reason ?? 'other',
                words,
              },
            ],
      ),
    )
    .sort((a, b) => (a.on !== b.on ? (a.on < b.on ? -1 : 1) : a.submissionId < b.submissionId ? -1 : 1));
}

export interface Lost {
  readonly reason: ShortReason;
  readonly cents: number;
}

/**
 * What was lost to which reason of the payer: what was written off because of it, and what of its cuts is still unpaid.
 * A cut that was paid later is not lost, so no more cuts count than the balance holds, the latest first.
 */
export function lostOf(facts: readonly Effective[], cuts: readonly Cut[], balanceCents: number): Lost[] {
  const byReason = new Map<ShortReason, number>();
  const add = (reason: ShortReason, cents: number): void => {
    if (cents > 0) byReason.set(reason, (byReason.get(reason) ?? 0) + cents);
  };
  for (const { fact } of ofKind(facts, 'written-off'))
    if (fact.body.lostTo !== null) add(fact.body.lostTo, fact.body.amountCents);
  let unpaid = balanceCents;
  for (const { reason, cents } of cuts.toReversed()) {
    const still = Math.min(cents, unpaid);
    add(reason, still);
    unpaid -= still;
  }
  return [...byReason]
    .map(([reason, cents]) => ({ reason, cents }))
    .sort((a, b) => b.cents - a.cents || (a.reason < b.reason ? -1 : 1));
}
