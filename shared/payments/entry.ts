import type { Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';

/** What moves money, or gives it up. Words: `money.<kind>`. */
export const moneyKinds = ['payment', 'reversal', 'refund', 'shared', 'write-off'] as const;
export type MoneyKind = (typeof moneyKinds)[number];

/** One movement of a claim's money, whole cents, on a calendar day of the utility's zone. */
export interface MoneyEntry {
  readonly kind: MoneyKind;
  readonly on: string;
  readonly amountCents: number;
  readonly submissionId: string;
  /** The payment that a reversal or a refund is about. */
  readonly payment: string | null;
  /** A payment's cheque that is not cashed is not money yet; one that went back never was. */
  readonly deposited?: BodyOf<'payment-received'>['deposited'];
  readonly marked?: BodyOf<'payment-received'>['marked'];
  /** Who else a joint cheque names. `amountCents` is this claim's part of it; the rest is the other's and is not here. */
  readonly jointPayee?: string | null;
}

const entriesOf: {
  readonly [
    K in 'payment-received' | 'payment-reversed' | 'refund-paid' | 'recovery-shared' | 'written-off'
  ]: (body: BodyOf<K>) => Omit<MoneyEntry, 'submissionId' | 'amountCents'>;
} = {
  'payment-received': ({ receivedOn, deposited, marked, jointPayee }) => ({
    kind: 'payment',
    on: receivedOn,
    payment: null,
    deposited,
    marked,
    jointPayee,
  }),
  'payment-reversed': ({ reversedOn, payment }) => ({ kind: 'reversal', on: reversedOn, payment }),
  'refund-paid': ({ paidOn, payment }) => ({ kind: 'refund', on: paidOn, payment }),
  'recovery-shared': ({ paidOn }) => ({ kind: 'shared', on: paidOn, payment: null }),
  'written-off': ({ writtenOffOn }) => ({ kind: 'write-off', on: writtenOffOn, payment: null }),
};

/** Every movement that a claim's facts tell of, by day and then by id: the order of arrival makes no difference. */
export function moneyEntries(facts: readonly Effective[]): MoneyEntry[] {
  return facts
    .flatMap(({ fact }): MoneyEntry[] => {
      const make = (entriesOf as Partial<Record<string, (body: never) => object>>)[fact.kind];
      if (!make) return [];
      const { amountCents } = fact.body as { readonly amountCents: number };
      return [{ ...make(fact.body as never), amountCents, submissionId: fact.submissionId } as MoneyEntry];
    })
    .sort((a, b) => (a.on !== b.on ? (a.on < b.on ? -1 : 1) : a.submissionId < b.submissionId ? -1 : 1));
}
