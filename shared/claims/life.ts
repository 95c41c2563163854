import { datedEvents, type DatedEvent } from '../clocks/events.ts';
import type { ClaimMoney } from '../payments/money.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { ProvenDemand } from './demands.ts';

/**
 * How a claim stands, by the last thing that decides it. Words: `standing.<code>`. In the order in which a later one
 * hides an earlier one.
 */
export const standings = [
  'open',
  'packet-issued',
  'demand-sent',
  'acknowledged',
  'information-asked',
  'disputed',
  'offered',
  'denied',
  'part-paid',
  'plan',
  'referred',
  'restitution',
  'written-off',
  'paid',
  'closed',
] as const;
export type Standing = (typeof standings)[number];

/** What else holds beside the standing. Words: `standing.<code>` and `claim-flag.<code>`. */
export const claimFlags = ['reopened', 'held-payment', 'overpaid', 'plan-missed', 'legal-hold'] as const;
export type ClaimFlag = (typeof claimFlags)[number];

/** What the fold of a claim alone cannot know; what is left out is not judged. */
export interface LifeContext {
  /** Left out, days of an opening and a packet are those of UTC. */
  readonly timeZone?: string;
  /** Without it no instalment is missed. */
  readonly today?: string;
  readonly struckOn?: string;
  /** The statement's total: no court can order more for this damage. */
  readonly statementCents?: number;
}

export interface LifeEvent {
  readonly kind: FactKind;
  readonly on: string;
  readonly submissionId: string;
  readonly amountCents: number | null;
  /** Who recorded it, by id. */
  readonly personId: string;
}

/** Something that waits for an answer. */
export interface Waiting {
  readonly submissionId: string;
  readonly on: string;
  /** The day that it names, if it does. */
  readonly by: string | null;
}

export interface DisputedLine {
  readonly submissionId: string;
  readonly on: string;
  readonly lineId: string | null;
  readonly reason: BodyOf<'line-disputed'>['lines'][number]['reason'];
  readonly disputedCents: number;
  readonly words: string;
  /** What the utility said to it; null while it waits. */
  readonly outcome: BodyOf<'dispute-answered'>['outcome'] | null;
}

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

export interface ClaimLife {
  readonly standing: Standing;
  /** Other standings that hold as well, in their order. */
  readonly also: readonly Standing[];
  readonly flags: readonly ClaimFlag[];
  /** Everything that happened to it, first to last by its own day. */
  readonly events: readonly LifeEvent[];
  /** The first demand for a sum certain: interest, where law gives it, may run from here. */
  readonly firstDemand: {
    readonly on: string;
    readonly amountCents: number;
    readonly submissionId: string;
  } | null;
  /** Demands for costs that came up later, by day. */
  readonly supplements: readonly ProvenDemand[];
  readonly adjusterOf: { readonly submissionId: string; readonly company: string | null } | null;
  readonly informationWaits: readonly Waiting[];
  readonly offersOpen: readonly (Waiting & { readonly amountCents: number; readonly inFull: boolean })[];
  readonly disputes: readonly DisputedLine[];
  readonly deniedBy: { readonly submissionId: string; readonly on: string } | null;
  readonly referredTo: BodyOf<'claim-referred'>['to'] | null;
  readonly plan: PlanState | null;
  readonly restitution: {
    readonly submissionId: string;
    readonly on: string;
    readonly amountCents: number;
    readonly payBy: string | null;
  } | null;
  readonly onHold: boolean;
  readonly closed: boolean;
  readonly problems: readonly Problem[];
}

type Of<K extends FactKind> = DatedEvent & { readonly fact: { readonly body: BodyOf<K> } };
const body = <K extends FactKind>(event: Of<K>): BodyOf<K> => event.fact.body;

/** The life of one claim after its opening. Pure; the order of arrival makes no difference. */
export function claimLife(
  facts: readonly Effective[],
  money: ClaimMoney,
  { issued, demands }: { readonly issued: boolean; readonly demands: readonly ProvenDemand[] },
  context: LifeContext = {},
): ClaimLife {
  const events = datedEvents(facts, context.timeZone ?? 'UTC');
  const of = <K extends FactKind>(kind: K): Of<K>[] =>
    events.filter((event) => event.kind === kind) as unknown as Of<K>[];
  const last = <K extends FactKind>(kind: K): Of<K> | undefined => of(kind).at(-1);
  const answeredIds = (kinds: readonly FactKind[]): Set<string> =>
    new Set(
      events
        .filter(({ kind }) => kinds.includes(kind))
        .flatMap(({ fact }) => (fact.body as { readonly answers?: string | null }).answers ?? []),
    );

  const informed = answeredIds(['information-given']);
  const informationWaits = of('information-asked')
    .filter(({ submissionId }) => !informed.has(submissionId))
    .map((event) => ({ submissionId: event.submissionId, on: event.on, by: body(event).answerBy }));

  const said = new Map(of('dispute-answered').map((event) => [body(event).answers, body(event).outcome]));
  const disputes = of('line-disputed').flatMap((event): DisputedLine[] =>
    body(event).lines.map((line) => ({
      submissionId: event.submissionId,
      on: event.on,
      ...line,
      outcome: said.get(event.submissionId) ?? null,
    })),
  );

  const offerAnswers = answeredIds(['offer-answered']);
  const offersOpen = of('offer-made')
    .filter(({ submissionId }) => !offerAnswers.has(submissionId))
    .map((event) => ({
      submissionId: event.submissionId,
      on: event.on,
      by: body(event).expiresOn,
      amountCents: body(event).amountCents,
      inFull: body(event).inFull,
    }));

  const denial = last('claim-denied');
  const afterDenial = (kind: FactKind): boolean =>
    denial !== undefined &&
    of(kind).some(({ on, order }) => on > denial.on || (on === denial.on && order > denial.order));
  // A payer that offers or pays after all has taken its denial back.
  const denied = denial !== undefined && !afterDenial('offer-made') && !afterDenial('payment-received');

  const closing = events.filter(({ kind }) => kind === 'claim-closed' || kind === 'claim-reopened').at(-1);
  const closed = closing?.kind === 'claim-closed';
  const referral = last('claim-referred');
  const plan = planOf(last('payment-plan'), money, context.today ?? null);
  const order = last('restitution-ordered');
  const assigned = last('adjuster-assigned');
  const holding = last('legal-hold');

  const tells: Readonly<Record<Standing, boolean>> = {
    open: true,
    'packet-issued': issued,
    'demand-sent': demands.length > 0,
    acknowledged: of('claim-acknowledged').length > 0,
    'information-asked': informationWaits.length > 0,
    disputed: disputes.some(({ outcome }) => outcome === null),
    offered: offersOpen.length > 0,
    denied,
    'part-paid': money.paidCents > 0 && money.balanceCents > 0,
    plan: plan?.instalments.some(({ state }) => state !== 'met') ?? false,
    referred: referral !== undefined,
    restitution: order !== undefined,
    'written-off': money.askedCents > 0 && money.balanceCents === 0 && money.writtenOffCents > 0,
    paid: money.askedCents > 0 && money.paidCents >= money.askedCents,
    closed,
  };
  const [first] = demands.toSorted((a, b) =>
    a.sentOn !== b.sentOn ? (a.sentOn < b.sentOn ? -1 : 1) : a.submissionId < b.submissionId ? -1 : 1,
  );
  const standing = standings.findLast((each) => tells[each]) ?? 'open';
  const flagged: Readonly<Record<ClaimFlag, boolean>> = {
    reopened: closing?.kind === 'claim-reopened',
    'held-payment': money.heldCents > 0,
    overpaid: money.overpaidCents > 0,
    'plan-missed': plan?.instalments.some(({ state }) => state === 'missed') ?? false,
    'legal-hold': holding !== undefined && body(holding).hold === 'set',
  };
  return {
    standing,
    also: standings.filter((each) => each !== standing && each !== 'open' && tells[each]),
    flags: claimFlags.filter((flag) => flagged[flag]),
    events: events.map(({ kind, on, submissionId, fact }) => ({
      kind,
      on,
      submissionId,
      amountCents: (fact.body as { readonly amountCents?: number | null }).amountCents ?? null,
      personId: fact.person.personId,
    })),
    firstDemand: first
      ? { on: first.sentOn, amountCents: first.amountCents, submissionId: first.submissionId }
      : null,
    supplements: demands
      .filter(({ what }) => what === 'supplement')
      .toSorted((a, b) => (a.sentOn !== b.sentOn ? (a.sentOn < b.sentOn ? -1 : 1) : a.revision - b.revision)),
    adjusterOf: assigned ? { submissionId: assigned.submissionId, company: body(assigned).company } : null,
    informationWaits,
    offersOpen,
    disputes,
    deniedBy: denied ? { submissionId: denial.submissionId, on: denial.on } : null,
    referredTo: referral ? body(referral).to : null,
    plan,
    restitution: order
      ? {
          submissionId: order.submissionId,
          on: order.on,
          amountCents: body(order).amountCents,
          payBy: body(order).payBy,
        }
      : null,
    onHold: flagged['legal-hold'],
    closed,
    problems: [
      ...answersNothing(events),
      ...laterThanRecorded(facts, events),
      ...tooEarly(events, context.struckOn ?? null),
      ...(closed ? closedWith(closing as Of<'claim-closed'>, money) : []),
      ...(order && body(order).amountCents > (context.statementCents ?? Infinity)
        ? [
            problem('restitution-above-statement', order.submissionId, {
              amountCents: body(order).amountCents,
              statementCents: context.statementCents ?? 0,
            }),
          ]
        : []),
      ...(money.heldCents > 0 ? [problem('payment-held', '', { heldCents: money.heldCents })] : []),
      ...fullOnDisputed(of('payment-received'), disputes),
    ],
  };
}

/** Payments since the plan was agreed fill its instalments in the order in which they are due. */
function planOf(
  agreed: Of<'payment-plan'> | undefined,
  money: ClaimMoney,
  today: string | null,
): PlanState | null {
  if (!agreed) return null;
  let paid = Math.max(
    0,
    money.entries
      .filter(({ kind, on, deposited }) => kind === 'payment' && on >= agreed.on && deposited === 'deposited')
      .reduce((sum, { amountCents }) => sum + amountCents, 0) -
      money.entries
        .filter(({ kind, on }) => (kind === 'reversal' || kind === 'refund') && on >= agreed.on)
        .reduce((sum, { amountCents }) => sum + amountCents, 0),
  );
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

/** Cashing a cheque marked as full payment can discharge a disputed claim: UCC 3-311, for counsel to judge. */
function fullOnDisputed(
  payments: readonly Of<'payment-received'>[],
  disputes: readonly DisputedLine[],
): Problem[] {
  return payments
    .filter(
      (event) =>
        body(event).marked === 'full' &&
        body(event).deposited === 'deposited' &&
        disputes.some(({ on }) => on <= event.on),
    )
    .map(({ submissionId }) => problem('full-payment-cashed', submissionId));
}
