import type { StrikeCause } from '../submissions/forms/party.ts';
import type { ShortReason } from '../submissions/forms/claimLife/common.ts';
import type { PayerKind } from '../submissions/forms/claimOpened.ts';

/** What one claim gives to the desk's figures. Days are calendar days of the utility's zone, `YYYY-MM-DD`; money is whole cents. */
export interface FigureRow {
  readonly claimId: string;
  readonly claimNumber: string;
  readonly strikeId: string;
  readonly payerKind: PayerKind;
  readonly cause: StrikeCause;
  readonly struckOn: string;
  /** The first demand that a packet bears out; null while none was sent. */
  readonly firstDemandOn: string | null;
  /** What is asked by the demands that stand. */
  readonly askedCents: number;
  /** Money that came in and stays: less reversals, refunds, what was passed on, and what was paid too much. */
  readonly recoveredCents: number;
  /** Passed on to the utility's own insurer, which had paid first. */
  readonly passedOnCents: number;
  /** Paid beyond what was asked: to be given back. */
  readonly overpaidCents: number;
  readonly writtenOffCents: number;
  /** Asked and neither paid nor written off; never below zero. */
  readonly balanceCents: number;
  /** The day the balance came to nothing by payment; null while it has not. */
  readonly paidOn: string | null;
  readonly closed: boolean;
  /** What was cut or given up, by the payer's reason. */
  readonly lost: readonly { readonly reason: ShortReason; readonly cents: number }[];
}
