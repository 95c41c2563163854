import type { ShortReason } from '../submissions/forms/claimLife/common.ts';
import type { FigureRow } from './row.ts';

export interface Lost {
  readonly reason: ShortReason;
  readonly claims: number;
  readonly cents: number;
  /** Of everything that was billed, 0 to 1; null when nothing was. */
  readonly shareOfBilled: number | null;
}

/** What was lost to which objection, the dearest first: it says which evidence would have paid. */
export function lostByReason(rows: readonly FigureRow[]): readonly Lost[] {
  const billedCents = rows.reduce(
    (sum, { firstDemandOn, askedCents }) => sum + (firstDemandOn === null ? 0 : askedCents),
    0,
  );
  const byReason = new Map<ShortReason, { claims: Set<string>; cents: number }>();
  for (const { claimId, lost } of rows)
    for (const { reason, cents } of lost) {
      const entry = byReason.get(reason) ?? { claims: new Set<string>(), cents: 0 };
      entry.claims.add(claimId);
      entry.cents += cents;
      byReason.set(reason, entry);
    }
  return [...byReason]
    .map(([reason, { claims, cents }]) => ({
      reason,
      claims: claims.size,
      cents,
      shareOfBilled: billedCents === 0 ? null : cents / billedCents,
    }))
    .filter(({ cents }) => cents > 0)
    .sort((a, b) => b.cents - a.cents || a.reason.localeCompare(b.reason));
}
