import type { FactKind } from '../submissions/kinds.ts';
import type { ClaimState } from './state.ts';
import type { Standing } from './life.ts';

/** What usually comes next where a claim stands, the likeliest first. */
const likely: Readonly<Record<Standing, readonly FactKind[]>> = {
  open: [],
  'packet-issued': ['demand-sent'],
  'demand-sent': ['claim-acknowledged', 'adjuster-assigned', 'payment-received'],
  acknowledged: ['adjuster-assigned', 'information-asked', 'line-disputed', 'payment-received'],
  'information-asked': ['information-given'],
  disputed: ['dispute-answered', 'payment-received'],
  offered: ['offer-answered', 'payment-received'],
  denied: ['dispute-answered', 'claim-referred'],
  'part-paid': ['payment-received', 'written-off'],
  plan: ['payment-received'],
  referred: ['payment-received', 'restitution-ordered'],
  restitution: ['payment-received', 'payment-plan'],
  'written-off': ['claim-closed'],
  paid: ['claim-closed'],
  closed: ['claim-reopened'],
};

/** Everything that may be recorded of a claim, in the order in which it usually happens. */
export const lifeKinds = [
  'demand-sent',
  'claim-acknowledged',
  'adjuster-assigned',
  'information-asked',
  'information-given',
  'line-disputed',
  'dispute-answered',
  'offer-made',
  'offer-answered',
  'payment-received',
  'payment-reversed',
  'refund-paid',
  'recovery-shared',
  'claim-denied',
  'claim-referred',
  'restitution-ordered',
  'payment-plan',
  'written-off',
  'claim-closed',
  'claim-reopened',
  'legal-hold',
] as const satisfies readonly FactKind[];

/** What is likely next, and what else may be recorded. Each kind is in one of the two. */
export function nextSteps({
  life,
  money,
  packets,
  demands,
}: Pick<ClaimState, 'life' | 'money' | 'packets' | 'demands'>): {
  readonly likely: readonly FactKind[];
  readonly others: readonly FactKind[];
} {
  const demanded = Math.max(0, ...demands.map(({ revision }) => revision));
  const unsent = demanded > 0 && packets.some(({ revision }) => revision > demanded);
  const cutOff = life.standing === 'part-paid' && (life.cutsUnanswered ?? []).length > 0;
  const first = [
    // A revision after the demand is asked for by nobody until it is sent too.
    ...(unsent ? (['demand-sent'] as const) : []),
    ...(money.overpaidCents > 0 ? (['refund-paid'] as const) : []),
    // What waits for an answer waits whatever else happened since.
    ...(life.informationWaits.length > 0 ? (['information-given'] as const) : []),
    ...(cutOff || life.disputes.some(({ outcome }) => outcome === null)
      ? (['dispute-answered'] as const)
      : []),
    ...(life.offersOpen.length > 0 ? (['offer-answered'] as const) : []),
    ...likely[life.standing],
  ];
  const unique = life.closed
    ? [...likely.closed]
    : [...new Set<FactKind>(first)].filter(
        (kind) => kind !== 'adjuster-assigned' || life.adjusterOf === null,
      );
  const reopened = (kind: FactKind): boolean => kind !== 'claim-reopened' || life.closed;
  return {
    likely: unique,
    others: lifeKinds.filter((kind) => !unique.includes(kind) && reopened(kind)),
  };
}
