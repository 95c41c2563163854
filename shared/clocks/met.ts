import type { LocalDate } from '../costs/days.ts';
import type { FactKind } from '../submissions/kinds.ts';
import { bodyOf, closing, earlier, isToPayer, ofEvent, paidUp, type DatedEvent } from './events.ts';
import type { ClockName } from './settings.ts';

/** What started a clock: an event, or the strike itself (`event` null). */
export interface Started {
  readonly on: LocalDate;
  readonly event: DatedEvent | null;
}

/** The payer has said something on the matter. */
const payerAnswers: readonly FactKind[] = [
  'information-asked',
  'line-disputed',
  'offer-made',
  'payment-received',
  'claim-denied',
];
const payerSigns: readonly FactKind[] = [...payerAnswers, 'claim-acknowledged', 'adjuster-assigned'];
/** Either side has been in touch. */
const contacts: readonly FactKind[] = [
  ...payerSigns,
  'demand-sent',
  'letter-sent',
  'information-given',
  'dispute-answered',
  'offer-answered',
  'claim-referred',
  'payment-plan',
  'restitution-ordered',
];

/**
 * The event that did what a clock waits for, or null. One sentence a clock. `balanceCents`: what the claim asks and was
 * neither paid nor written off.
 */
export function metBy(
  clock: ClockName,
  started: Started,
  events: readonly DatedEvent[],
  balanceCents: number,
): DatedEvent | null {
  const { event: start } = started;
  const after = events.filter((event) => (start ? earlier(event, start) > 0 : true));
  const first = (test: (event: DatedEvent) => boolean): DatedEvent | null => after.find(test) ?? null;
  const oneOf = (kinds: readonly FactKind[]) => first(({ kind }) => kinds.includes(kind));
  const soonest = (...found: (DatedEvent | null)[]): DatedEvent | null =>
    found.filter((event): event is DatedEvent => event !== null).sort(earlier)[0] ?? null;

  switch (clock) {
    case 'acknowledge-by':
      return soonest(oneOf(payerSigns), takenOver(start, after), first(outOfItsHands));
    case 'answer-by':
      return soonest(oneOf(payerAnswers), takenOver(start, after), first(outOfItsHands));
    case 'pay-by':
      return soonest(paid(start, events), takenOver(start, after));
    case 'follow-up-by':
      // A payment that left nothing to ask is followed up by nothing but the closing.
      if (start?.kind === 'payment-received' && balanceCents === 0) return start;
      return first((event) => contacts.includes(event.kind) && isToPayer(event));
    case 'information-due':
      return first(
        (event) =>
          event.kind === 'information-given' &&
          bodyOf(event, 'information-given').answers === start?.submissionId,
      );
    case 'offer-expires':
      return first(
        (event) =>
          event.kind === 'offer-answered' && bodyOf(event, 'offer-answered').answers === start?.submissionId,
      );
    case 'own-policy-notice':
      return soonest(
        first(
          (event) =>
            event.kind === 'letter-sent' && bodyOf(event, 'letter-sent').letter === 'notice-own-insurer',
        ),
        isOwnPolicy(events) ? oneOf(['demand-sent', 'claim-acknowledged']) : null,
      );
    case 'government-notice':
      return oneOf(['demand-sent', 'claim-acknowledged']);
    case 'limitation': {
      // Nothing is left to sue for. A claim that was given up (written off, withdrawn) still needs a named answer.
      const end = closing(events);
      return end && endsTheRightToSue(end, events, balanceCents) ? end : null;
    }
    case 'retention-end':
    case 'instalment-due':
      return null;
  }
}

/**
 * A claim closed as paid whose money is not there, or whose check came back after the closing, is not paid: its date to
 * sue runs on. A settlement may leave a balance by its own terms, but not because its payment did not hold.
 */
function endsTheRightToSue(end: DatedEvent, events: readonly DatedEvent[], balanceCents: number): boolean {
  const { how } = bodyOf(end, 'claim-closed');
  if (how === 'joined') return true;
  if (how === 'paid') return balanceCents === 0;
  const bounced = ofEvent(events, 'payment-reversed').some((event) => event.on >= end.on);
  return how === 'settled' && !(bounced && balanceCents > 0);
}

const isOwnPolicy = (events: readonly DatedEvent[]): boolean =>
  ofEvent(events, 'claim-opened').some((event) => bodyOf(event, 'claim-opened').payerKind === 'own-policy');

/** The claim went to counsel, a court or a collector, or suit was brought: nobody waits for the payer's own answer then. */
const outOfItsHands = (event: DatedEvent): boolean =>
  event.kind === 'claim-referred' ||
  (event.kind === 'deadline-answered' && bodyOf(event, 'deadline-answered').answer === 'suit-brought');

/** A revised demand takes the place of the one before, and its clocks with it. */
function takenOver(start: DatedEvent | null, after: readonly DatedEvent[]): DatedEvent | null {
  if (start?.kind !== 'demand-sent') return null;
  return after.find(isRevised) ?? null;
}

export const isRevised = (event: DatedEvent): boolean =>
  event.kind === 'demand-sent' && bodyOf(event, 'demand-sent').what === 'revised';

/** The first thing by which the payer showed that it has the claim, since a clock started. */
export const firstSign = (events: readonly DatedEvent[], { event: start }: Started): DatedEvent | null =>
  events.find((event) => payerSigns.includes(event.kind) && (start === null || earlier(event, start) > 0)) ??
  null;

function paid(start: DatedEvent | null, events: readonly DatedEvent[]): DatedEvent | null {
  if (start?.kind === 'demand-sent')
    return paidUp(events, bodyOf(start, 'demand-sent').amountCents, null, { orGivenUp: true });
  if (start?.kind === 'restitution-ordered')
    return paidUp(events, bodyOf(start, 'restitution-ordered').amountCents, start.on);
  if (start?.kind !== 'offer-answered') return null;
  const { answers } = bodyOf(start, 'offer-answered');
  const offer = ofEvent(events, 'offer-made').find(({ submissionId }) => submissionId === answers);
  // An offer of which nothing has arrived yet: any payment after its acceptance counts, until it does.
  return paidUp(events, offer ? bodyOf(offer, 'offer-made').amountCents : 1, start.on);
}
