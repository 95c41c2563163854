import type { FactKind } from './kinds.ts';

/** The field of each event of a claim that says its day. What is not here happened when its submission says. */
export const dayOfEvent: Partial<Record<FactKind, string>> = {
  'demand-sent': 'sentOn',
  'letter-sent': 'sentOn',
  'claim-acknowledged': 'receivedOn',
  'adjuster-assigned': 'assignedOn',
  'information-asked': 'askedOn',
  'information-given': 'givenOn',
  'line-disputed': 'saidOn',
  'dispute-answered': 'answeredOn',
  'offer-made': 'offeredOn',
  'offer-answered': 'answeredOn',
  'payment-received': 'receivedOn',
  'payment-reversed': 'reversedOn',
  'refund-paid': 'paidOn',
  'recovery-shared': 'paidOn',
  'claim-denied': 'deniedOn',
  'claim-referred': 'referredOn',
  'restitution-ordered': 'orderedOn',
  'payment-plan': 'agreedOn',
  'legal-hold': 'from',
  'written-off': 'writtenOffOn',
  'claim-closed': 'closedOn',
  'claim-reopened': 'reopenedOn',
};
