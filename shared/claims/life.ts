import { datedEvents, onHold } from '../clocks/events.ts';
import { isPaid, type ClaimMoney } from '../payments/money.ts';
import type { Problem } from '../problems/problem.ts';
import type { Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { LifeContext } from './context.ts';
import type { ProvenDemand } from './demands.ts';
import { body, eventsOf, type Of } from './eventOf.ts';
import { lifeProblems } from './lifeProblems.ts';
import { planOf, type PlanState } from './plan.ts';

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
  /** Payments that cut or refused a line, and that nobody replied to. A state kept before this does not say. */
  readonly cutsUnanswered?: readonly Waiting[];
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

/** The life of one claim after its opening. Pure; the order of arrival makes no difference. */
export function claimLife(
  facts: readonly Effective[],
  money: ClaimMoney,
  { issued, demands }: { readonly issued: boolean; readonly demands: readonly ProvenDemand[] },
  context: LifeContext = {},
): ClaimLife {
  const events = datedEvents(facts, context.timeZone ?? 'UTC');
  const of = <K extends FactKind>(kind: K): Of<K>[] => eventsOf(events, kind);
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

  const cutsUnanswered = of('payment-received')
    .filter(
      (event) => !said.has(event.submissionId) && body(event).lines.some(({ reason }) => reason !== null),
    )
    .map(({ submissionId, on }) => ({ submissionId, on, by: null }));

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
    paid: isPaid(money),
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
    'legal-hold': onHold(events) !== null,
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
    cutsUnanswered,
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
    problems: lifeProblems(facts, events, money, context),
  };
}
