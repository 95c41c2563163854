import type { ClaimState } from '../claims/state.ts';
import { localDate } from '../costs/days.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { FigureRow } from './row.ts';

/** What a claim gives to the figures. A claim whose strike has not arrived counts from the day it was opened. */
export function rowOf(claim: ClaimState, strike: StrikeState | null, timeZone: string): FigureRow {
  const { money, life } = claim;
  return {
    claimId: claim.claimId,
    claimNumber: claim.claimNumber,
    strikeId: claim.strikeId,
    payerKind: claim.payerKind,
    cause: strike?.cause ?? 'unknown',
    struckOn: localDate(strike?.struckAt ?? strike?.since ?? claim.openedAt, timeZone),
    firstDemandOn: life.firstDemand?.on ?? null,
    askedCents: money.askedCents,
    recoveredCents: Math.max(0, money.keptCents - money.overpaidCents),
    passedOnCents: Math.min(money.sharedCents, money.paidCents),
    overpaidCents: money.overpaidCents,
    writtenOffCents: money.writtenOffCents,
    balanceCents: money.balanceCents,
    paidOn: money.paidOn,
    closed: life.closed,
    lost: money.lost,
  };
}
