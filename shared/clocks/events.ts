import { localDate, type LocalDate } from '../costs/days.ts';
import { dayOfEvent } from '../submissions/dayOfEvent.ts';
import type { Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf, Fact } from '../submissions/submission.ts';

/** An event of a claim on its day, in the utility's zone. `order` breaks ties of one day. */
export interface DatedEvent {
  readonly kind: FactKind;
  readonly submissionId: string;
  readonly on: LocalDate;
  readonly order: number;
  readonly fact: Fact;
}

/** The events of a claim by their days, first to last. */
export function datedEvents(facts: readonly Effective[], timeZone: string): DatedEvent[] {
  return facts
    .map(({ fact }, order): DatedEvent => {
      const field = dayOfEvent[fact.kind];
      const said = field === undefined ? undefined : (fact.body as Readonly<Record<string, unknown>>)[field];
      return {
        kind: fact.kind,
        submissionId: fact.submissionId,
        on: typeof said === 'string' ? said : localDate(fact.occurredAt, timeZone),
        order,
        fact,
      };
    })
    .sort(earlier);
}

export const earlier = (a: DatedEvent, b: DatedEvent): number =>
  a.on < b.on ? -1 : a.on > b.on ? 1 : a.order - b.order;

/** The body of an event whose kind is known. */
export const bodyOf = <K extends FactKind>(event: DatedEvent, _kind: K): BodyOf<K> =>
  event.fact.body as BodyOf<K>;

export const ofEvent = (events: readonly DatedEvent[], kind: FactKind): DatedEvent[] =>
  events.filter((event) => event.kind === kind);

/** The closing that stands: the last word on it is a closing and not a reopening. */
export function closing(events: readonly DatedEvent[]): DatedEvent | null {
  const last = events.filter(({ kind }) => kind === 'claim-closed' || kind === 'claim-reopened').at(-1);
  return last?.kind === 'claim-closed' ? last : null;
}

/** Whether the record must be kept, whatever its date says. */
export function onHold(events: readonly DatedEvent[]): DatedEvent | null {
  const last = ofEvent(events, 'legal-hold').at(-1);
  return last && bodyOf(last, 'legal-hold').hold === 'set' ? last : null;
}

/**
 * The payment with which what came in since a day, and stayed, reached a sum; null while it has not. As in the claim's
 * money: a check in the drawer is none yet, and what was reversed or given back did not stay. With `orGivenUp`, what was
 * written off counts like money, because nobody waits for it any more.
 */
export function paidUp(
  events: readonly DatedEvent[],
  sumCents: number,
  since: LocalDate | null,
  { orGivenUp = false }: { readonly orGivenUp?: boolean } = {},
): DatedEvent | null {
  const backCents = new Map<string, number>();
  let givenBackCents = 0;
  const goesBack = (payment: string, cents: number): void => {
    backCents.set(payment, (backCents.get(payment) ?? 0) + cents);
  };
  for (const event of events) {
    if (event.kind === 'payment-reversed') {
      const { payment, amountCents } = bodyOf(event, 'payment-reversed');
      goesBack(payment, amountCents);
    } else if (event.kind === 'refund-paid') {
      const { payment, amountCents } = bodyOf(event, 'refund-paid');
      if (payment !== null) goesBack(payment, amountCents);
      else if (since === null || event.on >= since) givenBackCents += amountCents;
    }
  }
  let cents = -givenBackCents;
  for (const event of events) {
    if (since !== null && event.on < since) continue;
    if (event.kind === 'payment-received') {
      const { amountCents, deposited } = bodyOf(event, 'payment-received');
      if (deposited !== 'deposited') continue;
      cents += Math.max(0, amountCents - (backCents.get(event.submissionId) ?? 0));
    } else if (orGivenUp && event.kind === 'written-off') cents += bodyOf(event, 'written-off').amountCents;
    else continue;
    if (cents >= sumCents) return event;
  }
  return null;
}

const notToThePayer: readonly BodyOf<'letter-sent'>['letter'][] = [
  'notice-own-insurer',
  'restitution-statement',
  'release-checklist',
];

/** A letter to the own insurer, to the court or to the file says nothing to the payer, and waits for no answer of it. */
export const isToPayer = (event: DatedEvent): boolean =>
  event.kind !== 'letter-sent' || !notToThePayer.includes(bodyOf(event, 'letter-sent').letter);
