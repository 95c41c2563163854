import { closing, type DatedEvent } from '../clocks/events.ts';
import { fullPaymentCautions } from '../payments/fullPayment.ts';
import type { ClaimMoney } from '../payments/money.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { LifeContext } from './context.ts';
import { body, eventsOf, type Of } from './eventOf.ts';

type LifeBounds = {
  readonly [K in keyof Pick<LifeContext, 'struckOn' | 'statementCents'>]: LifeContext[K] | null;
};

/** What the events of a claim say that cannot all be so, or asks for a decision. A path is the submission's id. */
export function lifeProblems(
  facts: readonly Effective[],
  events: readonly DatedEvent[],
  money: ClaimMoney,
  { struckOn = null, statementCents = null }: LifeBounds,
): Problem[] {
  const closed = closing(events) as Of<'claim-closed'> | null;
  const ordered = eventsOf(events, 'restitution-ordered').at(-1);
  return [
    ...answersNothing(events),
    ...laterThanRecorded(facts, events),
    ...tooEarly(events, struckOn),
    ...(closed ? closedWith(closed, money) : []),
    ...(ordered ? aboveStatement(ordered, statementCents) : []),
    ...(money.heldCents > 0 ? [problem('payment-held', '', { heldCents: money.heldCents })] : []),
    // Cashing a cheque marked as full payment can discharge a disputed claim: UCC 3-311, for counsel to judge.
    ...fullPaymentCautions(facts, money.askedCents, undefined)
      .filter(({ held, disputed }) => disputed && !held)
      .map(({ submissionId }) => problem('full-payment-cashed', submissionId)),
  ];
}

function aboveStatement(ordered: Of<'restitution-ordered'>, statementCents: number | null): Problem[] {
  const { amountCents } = body(ordered);
  return statementCents !== null && amountCents > statementCents
    ? [problem('restitution-above-statement', ordered.submissionId, { amountCents, statementCents })]
    : [];
}

/** What each kind of answer may answer. */
const answerable: Partial<Record<FactKind, readonly FactKind[]>> = {
  'information-given': ['information-asked'],
  'dispute-answered': ['line-disputed', 'payment-received', 'offer-made', 'claim-denied'],
  'offer-answered': ['offer-made'],
  'letter-sent': ['line-disputed', 'payment-received', 'offer-made', 'claim-denied', 'information-asked'],
};

function answersNothing(events: readonly DatedEvent[]): Problem[] {
  const kinds = new Map(events.map(({ submissionId, kind }) => [submissionId, kind]));
  return events.flatMap(({ kind, submissionId, fact }) => {
    const may = answerable[kind];
    const { answers } = fact.body as { readonly answers?: string | null };
    if (!may || answers === undefined || answers === null) return [];
    const answered = kinds.get(answers);
    return answered !== undefined && may.includes(answered) ? [] : [problem('answers-nothing', submissionId)];
  });
}

/** No place on earth is further ahead (UTC+14): a day later than its record was there is of the future. */
const LATEST_ZONE_MS = 14 * 3_600_000;
/** Days that lie ahead by their nature, or have their own check. */
const maybeAhead: readonly FactKind[] = ['demand-sent', 'legal-hold', 'deadline-answered'];

function laterThanRecorded(facts: readonly Effective[], events: readonly DatedEvent[]): Problem[] {
  const recordedAt = new Map(
    facts.map((item) => [item.fact.submissionId, item.corrections.at(-1)?.recordedAt ?? item.recordedAt]),
  );
  return events.flatMap(({ kind, submissionId, on }) => {
    if (maybeAhead.includes(kind)) return [];
    const at = recordedAt.get(submissionId);
    if (at === undefined) return [];
    const latest = new Date(Date.parse(at) + LATEST_ZONE_MS).toISOString().slice(0, 10);
    return on > latest ? [problem('event-later-than-recorded', submissionId, { on })] : [];
  });
}

/** A claim that was withdrawn, or goes on under another number, gives nothing up by being closed. */
const givesNothingUp: readonly BodyOf<'claim-closed'>['how'][] = ['withdrawn', 'joined'];

function closedWith(closing: Of<'claim-closed'>, { balanceCents, heldCents }: ClaimMoney): Problem[] {
  return [
    ...(balanceCents > 0 && !givesNothingUp.includes(body(closing).how)
      ? [problem('closed-with-balance', closing.submissionId, { balanceCents })]
      : []),
    ...(heldCents > 0 ? [problem('closed-with-held-payment', closing.submissionId, { heldCents })] : []),
  ];
}

/** No place on earth is further behind (UTC-12). */
const EARLIEST_ZONE_MS = 12 * 3_600_000;
/** What has no day of its own, or may be older than the claim: a hold on records, a letter of before. */
const maybeBefore: readonly FactKind[] = ['claim-opened', 'letter-text', 'objection-answer', 'legal-hold'];

/** Events dated before the strike, or before the claim was opened: one of the days is a slip of the pen. */
function tooEarly(events: readonly DatedEvent[], struckOn: string | null): Problem[] {
  const opened = events.find(({ kind }) => kind === 'claim-opened');
  const openedOn = opened
    ? new Date(Date.parse(opened.fact.occurredAt) - EARLIEST_ZONE_MS).toISOString().slice(0, 10)
    : null;
  return events
    .filter(({ kind }) => !maybeBefore.includes(kind))
    .flatMap(({ submissionId, on }) =>
      struckOn !== null && on < struckOn
        ? [problem('event-before-strike', submissionId, { on, struckOn })]
        : openedOn !== null && on < openedOn
          ? [problem('event-before-opening', submissionId, { on, openedOn })]
          : [],
    );
}
