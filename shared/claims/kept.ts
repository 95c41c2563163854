import type { ClaimState } from './state.ts';

/**
 * A claim as it is kept for lists: without the payer's own words, which may be long and stand in the events. A row of the
 * store holds 400 KiB, and a claim that is argued over for a year must not outgrow it.
 */
export const keptClaim = (claim: ClaimState): ClaimState => ({
  ...claim,
  money: { ...claim.money, cuts: claim.money.cuts.map((cut) => ({ ...cut, words: null })) },
  life: { ...claim.life, disputes: claim.life.disputes.map((line) => ({ ...line, words: '' })) },
});
