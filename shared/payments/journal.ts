import type { ProvenDemand } from '../claims/demands.ts';
import type { Accounts, AccountUse } from '../costs/book/accounts.ts';
import { editionOn } from '../costs/editions.ts';
import type { RateBookEdition } from '../costs/rateBook.ts';
import type { ClaimMoney } from './money.ts';

/** What a line of the journal is of. Words: `journal.<code>`. */
export const journalKinds = ['demand', 'payment', 'reversal', 'refund', 'shared', 'write-off'] as const;
export type JournalKind = (typeof journalKinds)[number];

/** One side of a booking: every event has a debit and a credit of the same amount. Whole cents. */
export interface JournalLine {
  readonly on: string;
  readonly kind: JournalKind;
  readonly use: AccountUse;
  /** The account that the rate book of that day names; null where it names none. */
  readonly account: string | null;
  readonly debitCents: number;
  readonly creditCents: number;
  readonly submissionId: string;
}

const sides: Readonly<Record<JournalKind, { readonly debit: AccountUse; readonly credit: AccountUse }>> = {
  demand: { debit: 'receivable', credit: 'recovery' },
  payment: { debit: 'cash', credit: 'receivable' },
  reversal: { debit: 'receivable', credit: 'cash' },
  refund: { debit: 'receivable', credit: 'cash' },
  shared: { debit: 'shared', credit: 'cash' },
  'write-off': { debit: 'writeOff', credit: 'receivable' },
};

/** The accounts that the edition in force on a day names; null where there is none, or two and no telling which. */
export const accountsIn =
  (editions: readonly RateBookEdition[]) =>
  (day: string): Accounts | null =>
    editionOn(day, editions).edition?.accounts ?? null;

/**
 * The journal of a claim: what each demand adds to or takes from what is receivable, and every movement of its money.
 * A cheque that is held or went back is no money and has no line; a reversal of one has none either. `accountsOn` gives
 * the accounts in force on a day.
 */
export function journalOf(
  money: ClaimMoney,
  demands: readonly ProvenDemand[],
  accountsOn: (day: string) => Accounts | null,
): JournalLine[] {
  const booked = (kind: JournalKind, on: string, cents: number, submissionId: string): JournalLine[] => {
    if (cents === 0) return [];
    const { debit, credit } = sides[kind];
    const line = (use: AccountUse, isDebit: boolean): JournalLine => ({
      on,
      kind,
      use,
      account: accountsOn(on)?.[use] ?? null,
      // A demand that is lowered is booked the other way round.
      debitCents: isDebit === cents > 0 ? Math.abs(cents) : 0,
      creditCents: isDebit === cents > 0 ? 0 : Math.abs(cents),
      submissionId,
    });
    return [line(debit, true), line(credit, false)];
  };
  let asked = 0;
  const byRevision = demands.toSorted(
    (a, b) => a.revision - b.revision || (a.sentOn < b.sentOn ? -1 : a.sentOn > b.sentOn ? 1 : 0),
  );
  const demanded = byRevision.flatMap(({ sentOn, amountCents, submissionId }) => {
    const more = amountCents - asked;
    asked = amountCents;
    return booked('demand', sentOn, more, submissionId);
  });
  const cashed = new Map(
    money.entries
      .filter(({ kind, deposited }) => kind === 'payment' && deposited === 'deposited')
      .map(({ submissionId, amountCents }) => [submissionId, amountCents]),
  );
  const moved = money.entries.flatMap(({ kind, on, amountCents, submissionId, payment }) => {
    if (kind === 'payment' && !cashed.has(submissionId)) return [];
    if (kind !== 'reversal') return booked(kind, on, amountCents, submissionId);
    // No more goes back than came: what a reversal says beyond it is a problem of the claim and no money. One of a cheque
    // that was never money must not make it known as cashed, whichever of the two is dated first.
    const left = cashed.get(payment ?? '');
    if (left === undefined) return [];
    const cents = Math.min(left, amountCents);
    cashed.set(payment ?? '', left - cents);
    return booked('reversal', on, cents, submissionId);
  });
  return [...demanded, ...moved].sort((a, b) => (a.on !== b.on ? (a.on < b.on ? -1 : 1) : 0));
}
