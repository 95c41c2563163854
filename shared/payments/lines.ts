import { ofKind, type Effective } from '../submissions/effective.ts';

/** What came in on one line of the statement, and what the payer took off it. */
export interface LinePaid {
  readonly lineId: string;
  readonly paidCents: number;
  readonly shortCents: number;
}

/**
 * What the payers said their money was for. A payment that did not stay whole is for no line any more, and one whose
 * cheque is held is not money yet. `left` says what reversals left of each payment, by its id, and `stayed` what refunds
 * left of that: of what was too much on top of the lines they may give back any part, but lines whose money was given back
 * are not paid.
 */
export function linesPaid(
  facts: readonly Effective[],
  left: ReadonlyMap<string, number>,
  stayed: ReadonlyMap<string, number> = left,
): { readonly lines: readonly LinePaid[]; readonly allocatedCents: number } {
  const byLine = new Map<string, LinePaid>();
  let allocatedCents = 0;
  for (const { fact } of ofKind(facts, 'payment-received')) {
    const { amountCents, deposited, lines } = fact.body;
    if (deposited !== 'deposited' || left.get(fact.submissionId) !== amountCents) continue;
    const named = lines.reduce(
      (total, { lineId, paidCents }) => total + (lineId === null ? 0 : paidCents),
      0,
    );
    if (named > (stayed.get(fact.submissionId) ?? 0)) continue;
    for (const { lineId, paidCents, shortCents } of lines) {
      if (lineId === null) continue;
      allocatedCents += paidCents;
      const known = byLine.get(lineId);
      byLine.set(lineId, {
        lineId,
        paidCents: (known?.paidCents ?? 0) + paidCents,
        shortCents: (known?.shortCents ?? 0) + shortCents,
      });
    }
  }
  return {
    lines: [...byLine.values()].sort((a, b) => (a.lineId < b.lineId ? -1 : 1)),
    allocatedCents,
  };
}
