import { Temporal } from 'temporal-polyfill';
import { foldClaim } from '../claims/state.ts';
import { localDate, type LocalDate } from '../costs/days.ts';
import type { Effective } from '../submissions/effective.ts';
import type { UtilitySettings } from '../utility/settings.ts';
import { answersTo } from './answers.ts';
import { addDays, lastDay, workCalendar } from './count.ts';
import type { Deadline, DeadlineEvent, DeadlineRule, DeadlineState } from './deadline.ts';
import {
  bodyOf,
  closing,
  datedEvents,
  earlier,
  isToPayer,
  ofEvent,
  onHold,
  paidUp,
  type DatedEvent,
} from './events.ts';
import { firstSign, isRevised, metBy, type Started } from './met.ts';
import { ownLimitation } from './ownLimitation.ts';
import { clockSettings, oneDateOf, payersOf, type ClockName, type ClockRule } from './settings.ts';

export interface ClocksQuestion {
  /** The facts of the claim's stream as they stand; trials left out. */
  readonly facts: readonly Effective[];
  /** The day of the strike in the utility's zone; '' while nobody knows. */
  readonly struckOn: LocalDate;
  readonly settings: Pick<UtilitySettings, 'clocks' | 'limitation' | 'timeZone'>;
  /** In the utility's zone: `todayIn`. */
  readonly today: LocalDate;
}

/** Today where the utility is. */
export const todayIn = (now: Date, timeZone: string): LocalDate => localDate(now.toISOString(), timeZone);

const noRules = clockSettings.parse({ rules: [] });

/** Clocks that a careful office has a rule for and this one has none, so that nothing of the kind is ever warned of. */
export function clocksNotSet({ clocks, limitation }: ClocksQuestion['settings']): ClockName[] {
  const has = (name: ClockName): boolean => clocks?.rules.some(({ clock }) => clock === name) ?? false;
  return (
    ['limitation', 'follow-up-by', 'government-notice', 'own-policy-notice', 'retention-end'] as const
  ).filter((name) => !has(name) && !(name === 'limitation' && limitation));
}

/**
 * Every date of a claim, by the utility's own rules and by the papers that name one, earliest first; none before the
 * claim's opening has arrived. Pure: the order in which facts arrived makes no difference, and the day is an argument.
 * What a date means, and for whom, stands in `docs/clocks.md`; none of it is legal advice.
 */
export function clocksOf({ facts, struckOn, settings, today }: ClocksQuestion): Deadline[] {
  const claim = foldClaim('', facts);
  if (!claim) return [];
  const { payerKind, money } = claim;
  // A demand that no packet bears out bills nothing, so it starts nothing and ends nothing either.
  const unproven = new Set(
    claim.demands.filter(({ proven }) => !proven).map(({ submissionId }) => submissionId),
  );
  const events = datedEvents(facts, settings.timeZone).filter(
    ({ submissionId }) => !unproven.has(submissionId),
  );
  const clocks = settings.clocks ?? noRules;
  const calendar = workCalendar(clocks);
  const rules = [...clocks.rules, ...ownLimitation(settings)].filter((rule) =>
    payersOf(rule).includes(payerKind),
  );

  const found: Found[] = [...namedDates(events)];
  for (const rule of rules)
    for (const started of startsOfRule(rule, events, struckOn)) {
      // The payer's own date counts, where it named one.
      if (rule.clock === 'information-due' && namesItsDate(started)) continue;
      if (rule.clock === 'offer-expires' && namesItsDate(started)) continue;
      found.push({
        id: oneDateOf.includes(rule.clock)
          ? rule.clock
          : `${rule.clock}:${started.event?.submissionId ?? ''}`,
        clock: rule.clock,
        countedOn: lastDay(started.on, rule, calendar),
        started,
        rule,
        whose: rule.whose,
        warnDays: rule.warnDays ?? null,
        met: null,
      });
    }

  const context: Context = { events, settings, today, clocks, balanceCents: money.balanceCents };
  const limitationDeadline = first(found, 'limitation', context);
  const deadlines = found
    .filter(({ clock }) => !oneDateOf.includes(clock))
    .map((one) => finish(one, context));
  if (limitationDeadline) deadlines.push(limitationDeadline);
  for (const clock of ['own-policy-notice', 'government-notice'] as const) {
    const one = first(found, clock, context);
    if (one) deadlines.push(one);
  }
  const retention = closing(events) && latest([...found, ...yearAfter(limitationDeadline)], 'retention-end');
  if (retention) deadlines.push(finish(retention, context));
  return deadlines.sort((a, b) => a.dueOn.localeCompare(b.dueOn) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

/** A date before it is known what became of it. */
interface Found {
  readonly id: string;
  readonly clock: ClockName;
  readonly countedOn: LocalDate;
  readonly started: Started;
  readonly rule: DeadlineRule | null;
  readonly whose: Deadline['whose'];
  readonly warnDays: readonly number[] | null;
  /** Known already what met it: the dates of a plan. */
  readonly met: DatedEvent | null;
}

interface Context {
  readonly events: readonly DatedEvent[];
  readonly settings: ClocksQuestion['settings'];
  readonly today: LocalDate;
  readonly clocks: NonNullable<UtilitySettings['clocks']>;
  readonly balanceCents: number;
}

/** What a rule starts from in this claim: every such event, or the one that counts where a clock runs once. */
function startsOfRule(
  { clock, from }: ClockRule,
  events: readonly DatedEvent[],
  struckOn: LocalDate,
): Started[] {
  if (from === 'strike') return struckOn === '' ? [] : [{ on: struckOn, event: null }];
  if (from === 'claim-closed') {
    const end = closing(events);
    return end ? [{ on: end.on, event: end }] : [];
  }
  const all = ofEvent(events, from)
    .filter((event) => startsAClock(event))
    .map((event): Started => ({ on: event.on, event }));
  // Acknowledging is asked for once, and again by a revised demand while nobody has; what the record's retention hangs on
  // is the last of its kind.
  if (clock === 'acknowledge-by') {
    const [asked] = all;
    const sign = asked ? firstSign(events, asked) : null;
    return all.filter(
      ({ event }, index) =>
        index === 0 || (event !== null && isRevised(event) && (sign === null || earlier(sign, event) > 0)),
    );
  }
  if (from === 'claim-opened') return all.slice(0, 1);
  return clock === 'retention-end' ? all.slice(-1) : all;
}

/** A letter starts a clock when the payer got it, an offer when it is accepted. */
const startsAClock = (event: DatedEvent): boolean =>
  isToPayer(event) &&
  (event.kind !== 'offer-answered' || bodyOf(event, 'offer-answered').answer === 'accepted');

function namesItsDate({ event }: Started): boolean {
  if (event?.kind === 'information-asked') return bodyOf(event, 'information-asked').answerBy !== null;
  return event?.kind === 'offer-made' && bodyOf(event, 'offer-made').expiresOn !== null;
}

/** Dates that stand in the papers: the payer's for information and its offer, the court's, the plan's. */
function namedDates(events: readonly DatedEvent[]): Found[] {
  const named = (clock: ClockName, event: DatedEvent, on: LocalDate | null): Found[] =>
    on === null
      ? []
      : [
          {
            id: `${clock}:${event.submissionId}`,
            clock,
            countedOn: on,
            started: { on: event.on, event },
            rule: null,
            whose: 'named',
            warnDays: null,
            met: null,
          },
        ];
  const plan = ofEvent(events, 'payment-plan').at(-1);
  return [
    ...ofEvent(events, 'information-asked').flatMap((event) =>
      named('information-due', event, bodyOf(event, 'information-asked').answerBy),
    ),
    ...ofEvent(events, 'offer-made').flatMap((event) =>
      named('offer-expires', event, bodyOf(event, 'offer-made').expiresOn),
    ),
    ...ofEvent(events, 'restitution-ordered').flatMap((event) =>
      named('pay-by', event, bodyOf(event, 'restitution-ordered').payBy).map((one) => ({
        ...one,
        // Apart from a rule that counts from the same order.
        id: `${one.id}:named`,
      })),
    ),
    ...(plan ? instalments(plan, events) : []),
  ];
}

/** The plan agreed last. Each of its dates is met when what came in since reaches everything due until then. */
function instalments(plan: DatedEvent, events: readonly DatedEvent[]): Found[] {
  let cents = 0;
  return bodyOf(plan, 'payment-plan')
    .instalments.map((instalment, index) => ({ ...instalment, index }))
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn) || a.index - b.index)
    .map(({ dueOn, amountCents, index }) => ({
      id: `instalment-due:${plan.submissionId}:${index + 1}`,
      clock: 'instalment-due' as const,
      countedOn: dueOn,
      started: { on: plan.on, event: plan },
      rule: null,
      whose: 'named' as const,
      warnDays: null,
      met: paidUp(events, (cents += amountCents), plan.on),
    }));
}

/** Records are kept for a year beyond the date to sue (common practice; the utility's own schedule may say longer). */
function yearAfter(limitation: Deadline | null): Found[] {
  if (!limitation?.rule) return [];
  const countedOn = Temporal.PlainDate.from(limitation.dueOn).add({ years: 1 }).toString();
  const rule = { ...limitation.rule, yearAfterLimitation: true as const };
  return [
    {
      id: 'retention-end',
      clock: 'retention-end',
      countedOn,
      started: { on: limitation.startedBy.on, event: null },
      rule,
      whose: 'utility',
      warnDays: null,
      met: null,
    },
  ];
}

/**
 * Of several rules on one date that may not be missed: the earliest after what was answered, so that tolling one does not
 * hide another that comes before the new day. What ends one (suit brought, notice given) ends them all.
 */
function first(found: readonly Found[], clock: ClockName, context: Context): Deadline | null {
  const own = found.filter((one) => one.clock === clock).map((one) => finish(one, context));
  return own.reduce<Deadline | null>((best, one) => {
    if (best === null) return one;
    const [done, oneDone] = [isOver(best), isOver(one)];
    if (done !== oneDone) return done ? best : one;
    return one.dueOn < best.dueOn ? one : best;
  }, null);
}

const isOver = ({ state }: Deadline): boolean => state === 'met' || state === 'answered';

/** Of several rules on how long a record is kept: the latest. */
function latest(found: readonly Found[], clock: ClockName): Found | null {
  const own = found.filter((one) => one.clock === clock);
  return own.reduce<Found | null>(
    (best, one) => (best === null || one.countedOn > best.countedOn ? one : best),
    null,
  );
}

function finish(one: Found, { events, settings, today, clocks, balanceCents }: Context): Deadline {
  const { id, clock, countedOn, started, rule, whose } = one;
  const { dueOn, answer, final, problems } = answersTo(
    { id, clock, dueOn: countedOn },
    events,
    settings.timeZone,
  );
  const ended = clock === 'limitation' || clock === 'retention-end' ? null : closing(events);
  const did = one.met ?? metBy(clock, started, events, balanceCents) ?? ended;
  const farOff = clock === 'limitation' || clock === 'government-notice';
  const days = one.warnDays ?? (farOff ? clocks.limitationWarnDays : clocks.warnDays);
  const warnOn = [...new Set(days)].sort((a, b) => b - a).map((before) => addDays(dueOn, -before));
  return {
    id,
    clock,
    dueOn,
    countedOn,
    startedBy: eventOf(started.event) ?? { kind: 'strike', submissionId: null, on: started.on },
    rule: rule && shown(rule),
    whose,
    state: stateOf(clock, { dueOn, today, met: did !== null, final, held: onHold(events) !== null }),
    metBy: eventOf(did),
    late: did !== null && did.on > dueOn,
    answer,
    warnOn,
    warnFrom: warnOn[0] ?? dueOn,
    problems,
  };
}

const eventOf = (event: DatedEvent | null): DeadlineEvent | null =>
  event && { kind: event.kind, submissionId: event.submissionId, on: event.on };

function shown({
  count,
  unit,
  ifNotWorking,
  from,
  citation,
  jurisdiction,
  confirmedBy,
  yearAfterLimitation,
}: DeadlineRule): DeadlineRule {
  const rule = { count, unit, ifNotWorking, from, citation, jurisdiction, confirmedBy };
  return yearAfterLimitation ? { ...rule, yearAfterLimitation } : rule;
}

function stateOf(
  clock: ClockName,
  {
    dueOn,
    today,
    met,
    final,
    held,
  }: { dueOn: LocalDate; today: LocalDate; met: boolean; final: boolean; held: boolean },
): DeadlineState {
  if (clock === 'retention-end' && held) return 'held';
  if (met) return 'met';
  if (final) return 'answered';
  if (today < dueOn) return 'running';
  if (clock === 'retention-end') return 'reached';
  return today === dueOn ? 'due-today' : 'overdue';
}
