import type { PayerKind } from '../submissions/forms/claimOpened.ts';
import { claimMoney, type ClaimMoney } from '../payments/money.ts';
import { askedCents } from './demands.ts';
import type { LifeContext } from './context.ts';
import { claimLife, type ClaimLife } from './life.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';

/**
 * A claim as its submissions say it stands: open, packet frozen, demand sent. A demand that no packet bears out does not
 * bill a claim.
 */
export interface ClaimState {
  readonly claimId: string;
  readonly claimNumber: string;
  readonly strikeId: string;
  readonly partyId: string | null;
  readonly payerKind: PayerKind;
  readonly payerName: string | null;
  readonly openedAt: string;
  readonly stage: 'open' | 'frozen' | 'billed';
  readonly packets: readonly (BodyOf<'packet-frozen'> & { readonly submissionId: string })[];
  readonly demands: readonly (Omit<BodyOf<'demand-sent'>, 'to'> & {
    readonly submissionId: string;
    /** A packet bears it out, and its day can be. */
    readonly proven: boolean;
  })[];
  /** Money in and out, and what is left to ask. */
  readonly money: ClaimMoney;
  /** What became of it after its packet. */
  readonly life: ClaimLife;
  readonly lastRecordedAt: string;
  /** What its records say that cannot all be so. */
  readonly problems: readonly Problem[];
}

/** The fold of one claim, or null while its opening has not arrived (later facts may come first). */
export function foldClaim(
  claimId: string,
  facts: readonly Effective[],
  context: LifeContext = {},
): ClaimState | null {
  const opened = ofKind(facts, 'claim-opened')[0];
  if (!opened) return null;
  const packets = ofKind(facts, 'packet-frozen')
    .map(({ fact }) => ({ ...fact.body, submissionId: fact.submissionId }))
    .sort((a, b) => a.revision - b.revision);
  const unproven = ofKind(facts, 'demand-sent').flatMap((sent) => demandProblems(sent, packets));
  const demands = ofKind(facts, 'demand-sent').map(({ fact: { submissionId, body } }) => {
    const { revision, sentOn, how, amountCents, note, what = 'demand' } = body;
    const proven = !unproven.some(({ path }) => path === submissionId);
    return { revision, sentOn, how, amountCents, note, what, submissionId, proven };
  });
  const proven = provenDemands({ demands });
  const { body } = opened.fact;
  const money = claimMoney(facts, askedCents(proven));
  const life = claimLife(facts, money, { issued: packets.length > 0, demands: proven }, context);
  return {
    claimId,
    claimNumber: body.claimNumber,
    strikeId: body.strikeId,
    partyId: body.partyId,
    payerKind: body.payerKind,
    payerName: body.payer.name,
    openedAt: opened.fact.occurredAt,
    stage: proven.length > 0 ? 'billed' : packets.length > 0 ? 'frozen' : 'open',
    packets,
    demands,
    money,
    life,
    lastRecordedAt:
      facts
        .flatMap(({ recordedAt, corrections }) => [recordedAt, ...corrections.map((item) => item.recordedAt)])
        .sort()
        .at(-1) ?? '',
    problems: [...openedTwice(facts), ...unproven, ...money.problems, ...life.problems],
  };
}

/** The demands that a packet bears out: what the claim asks for, and what finance books. */
export const provenDemands = ({ demands }: Pick<ClaimState, 'demands'>): ClaimState['demands'] =>
  demands.filter(({ proven }) => proven);

/** Openings of one claim that do not say the same: a claim is of one strike, against one party, under one number. */
export function openedTwice(facts: readonly Effective[]): Problem[] {
  const [first, ...rest] = ofKind(facts, 'claim-opened');
  if (!first) return [];
  return rest
    .filter(({ fact }) => canonicalJson(fact.body) !== canonicalJson(first.fact.body))
    .map(({ fact: { submissionId, body } }) =>
      body.strikeId === first.fact.body.strikeId
        ? problem('claim-opened-twice', submissionId, { claimNumber: body.claimNumber })
        : problem('claim-opened-for-two-strikes', submissionId, {
            strikeId: first.fact.body.strikeId,
            otherStrikeId: body.strikeId,
          }),
    );
}

/** No place on earth is further ahead (UTC+14): a demand dated later than its record was there is of the future. */
const LATEST_ZONE_MS = 14 * 3_600_000;

function demandProblems(
  { fact: { submissionId, body }, recordedAt }: Effective<'demand-sent'>,
  packets: ClaimState['packets'],
): Problem[] {
  const { revision, sentOn, amountCents } = body;
  const packet = packets.find((item) => item.revision === revision);
  const found: Problem[] = [];
  if (!packet) found.push(problem('demand-without-packet', submissionId, { revision }));
  else if (packet.demandCents !== amountCents)
    found.push(
      problem('demand-of-other-amount', submissionId, {
        revision,
        amountCents,
        demandCents: packet.demandCents,
      }),
    );
  const latest = new Date(Date.parse(recordedAt) + LATEST_ZONE_MS).toISOString().slice(0, 10);
  if (sentOn > latest) found.push(problem('demand-sent-later-than-recorded', submissionId, { sentOn }));
  return found;
}
