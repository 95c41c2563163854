import type { ClaimMoney } from '../payments/money.ts';
import { body, type Of } from './eventOf.ts';

export interface PlanState {
  readonly submissionId: string;
  readonly instalments: readonly {
    readonly dueOn: string;
    readonly amountCents: number;
    /** What payments since the plan began cover of it, in the order in which instalments are due. */
    readonly coveredCents: number;
    readonly state: 'met' | 'open' | 'missed';
  }[];
}

/** Payments since the plan was agreed fill its instalments in the order in which they are due. */
export function planOf(
  agreed: Of<'payment-plan'> | undefined,
  money: ClaimMoney,
  today: string | null,
): PlanState | null {
  if (!agreed) return null;
  const since = money.entries.filter(
    ({ kind, on, deposited }) => kind === 'payment' && on >= agreed.on && deposited === 'deposited',
  );
  const ids = new Set(since.map(({ submissionId }) => submissionId));
  // What went back of those, and what was refunded without saying of which.
  const back = money.entries.filter(
    ({ kind, on, payment }) =>
      (kind === 'reversal' && ids.has(payment ?? '')) ||
      (kind === 'refund' && (payment === null ? on >= agreed.on : ids.has(payment))),
  );
  const sum = (entries: typeof since): number =>
    entries.reduce((total, { amountCents }) => total + amountCents, 0);
  let paid = Math.max(0, sum(since) - sum(back));
  const instalments = body(agreed)
    .instalments.toSorted((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : 0))
    .map(({ dueOn, amountCents }) => {
      const coveredCents = Math.min(amountCents, paid);
      paid -= coveredCents;
      const due = today !== null && dueOn < today;
      return {
        dueOn,
        amountCents,
        coveredCents,
        state:
          coveredCents === amountCents ? ('met' as const) : due ? ('missed' as const) : ('open' as const),
      };
    });
  return { submissionId: agreed.submissionId, instalments };
}
