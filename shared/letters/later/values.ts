import { contactOf } from '../../claims/contact.ts';
import { provenDemands, type ClaimState } from '../../claims/state.ts';
import { formatCents } from '../../costs/money.ts';
import { daysBetween } from '../../time/daysBetween.ts';
import type { Statement } from '../../costs/statement.ts';
import { ofKind, type Effective } from '../../submissions/effective.ts';
import type { Locale } from '../../words/index.ts';
import type { MergeValues } from '../fields.ts';
import type { LaterValues } from './fields.ts';
import type { ClaimRules } from '../../payments/rules.ts';
import { pointsOf, replyText } from './reply.ts';

export interface LaterFacts {
  /** What the packet's own letter may name. */
  readonly base: MergeValues;
  readonly claim: ClaimState;
  /** The claim's events with their personal fields: an adjuster is written to by name. */
  readonly events: readonly Effective[];
  readonly statement: Statement;
  /** The dispute, payment, offer or denial that the letter answers. */
  readonly answers: string | null;
  /** The day of the letter, in the utility's zone. */
  readonly on: string;
  readonly locale: Locale;
  /** Whether it goes to the payer (`isToPayer`). */
  readonly toPayer: boolean;
  /** The state's rules on money, as the utility holds them. */
  readonly rules?: ClaimRules | undefined;
  /** A day as the packet writes one. */
  readonly day: (date: string) => string;
}

const money = (cents: number): string | null => (cents === 0 ? null : formatCents(cents));

/** The value of every field of a letter after the packet. Null: nobody recorded it, or it does not arise. Pure. */
export function laterValues({
  base,
  claim,
  events,
  statement,
  answers,
  on,
  locale,
  toPayer,
  rules,
  day,
}: LaterFacts): LaterValues {
  const { money: sums, life } = claim;
  // The same person and number as the desk shows: the last by the day it names, not by when it was typed.
  const contact = contactOf(events);
  const points = pointsOf(events, answers);
  const offer = ofKind(events, 'offer-made').find(({ fact }) => fact.submissionId === answers);
  // One that no packet bears out adds nothing, and one that was sent twice is one.
  const demands = [...new Map(provenDemands(claim).map((each) => [each.revision, each])).values()].sort(
    (a, b) => a.revision - b.revision,
  );
  // Written before its demand is recorded, a demand or supplement speaks of the packet that goes with it.
  const packet = claim.packets.findLast(({ revision }) => revision > (demands.at(-1)?.revision ?? 0));
  const unsent = packet?.demandCents ?? null;
  const [before, last] = unsent === null ? [demands.at(-2), demands.at(-1)] : [demands.at(-1), undefined];
  const lastCents = unsent ?? last?.amountCents ?? 0;
  const first = life.firstDemand;
  const words = [...new Set(points.flatMap(({ words: said }) => said ?? []))];
  return {
    ...base,
    date: day(on),
    ...(toPayer
      ? {
          payerReference: contact?.reference ?? base.payerReference,
          adjuster: contact?.adjuster?.name ?? base.payerAttention,
        }
      : { payer: null, payerAttention: null, payerReference: null, policy: null, adjuster: null }),
    demandedOn: first ? day(first.on) : null,
    daysSinceDemand: first ? String(daysBetween(first.on, on)) : null,
    asked: money(sums.askedCents),
    paid: money(sums.paidCents),
    balance: money(sums.balanceCents),
    writtenOff: money(sums.writtenOffCents),
    theirWords: words.length === 0 ? null : words.map((said) => `“${said}”`).join(' '),
    reply: replyText(points, statement, locale, rules),
    offer: offer ? formatCents(offer.fact.body.amountCents) : null,
    instalments:
      life.plan === null
        ? null
        : // What is met is done with; of the others, what is left of each.
          life.plan.instalments
            .filter(({ state }) => state !== 'met')
            .map(
              ({ dueOn, amountCents, coveredCents }) =>
                `${day(dueOn)}: ${formatCents(amountCents - coveredCents)}`,
            )
            .join('\n') || null,
    supplement: before && lastCents > before.amountCents ? formatCents(lastCents - before.amountCents) : null,
    askedNow: money(unsent ?? sums.askedCents),
  };
}
