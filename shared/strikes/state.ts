import type { Hydrant } from '../inventory/hydrant.ts';
import { returnEffects, valveTurns, type ReturnEffect, type ValveTurn } from '../outages/returnEffect.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { StrikeCause } from '../submissions/forms/party.ts';
import { readersOf, type BodyOf } from '../submissions/submission.ts';
import type { Exhibit } from '../submissions/fields.ts';
import { notYet } from '../submissions/known.ts';
import { bearsOn, type OutageTimes } from './sinceStrike.ts';
import { shutMainStanding, type ShutMainStanding } from '../shutMain/standing.ts';
import { breachesOf, type Breach } from '../procedure/breaches.ts';

/** How far a strike has come, in the order it comes. Words: `stage.<code>`. */
export const stages = ['reported', 'shut-off', 'waiting', 'under-repair', 'repaired', 'back'] as const;
export type Stage = (typeof stages)[number];

/** A strike as its submissions, and nothing else, say it stands. */
export interface StrikeState {
  /** The id it goes by; `memberIds` are all ids that links joined into it. */
  readonly strikeId: string;
  readonly memberIds: readonly string[];
  /** False when only later facts have arrived (a repair typed before its strike). It still counts as an outage. */
  readonly reported: boolean;
  readonly hydrantId: string | null;
  /**
   * Every hydrant that its reports name. More than one is a report of the wrong hydrant or a link too many: all of them
   * count as out, and no return takes effect, until a correction settles it.
   */
  readonly hydrantIds: readonly string[];
  readonly position: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
  readonly placeDescription: string | null;
  readonly stage: Stage;
  /** Start of the outage: the earliest time that any submission gives for it. */
  readonly since: string;
  readonly struckAt: string | null;
  readonly arrivedAt: string | null;
  readonly waterShutAt: string | null;
  readonly markedOutOfServiceAt: string | null;
  readonly dispatchToldAt: string | null;
  readonly expectedAt: string | null;
  readonly waitingFor: string | null;
  readonly repairedAt: string | null;
  readonly returns: readonly ReturnEffect[];
  /** When the outage ended, or null while it is open. */
  readonly returnedAt: string | null;
  /** When dispatch was told that it is back; null while nobody did. A state kept before this does not say. */
  readonly dispatchToldBackAt?: string | null;
  readonly deferred: ReturnEffect['deferred'];
  /** The drain is plugged: whoever uses the hydrant pumps it out. Left out where it drains by itself. */
  readonly pumped?: NonNullable<ReturnEffect['pumped']>;
  readonly breaches: readonly Breach[];
  readonly exhibits: readonly Exhibit[];
  /** Mains that were shut for it, and what is still to be said of them. Left out while none was. */
  readonly shutMain?: ShutMainStanding;
  readonly partyIds: readonly string[];
  /** What led to it, as the desk last put it down; nobody else is told. Left out while nobody has. */
  readonly cause?: StrikeCause;
  readonly flowTestIds: readonly string[];
  readonly submissionIds: readonly string[];
  readonly lastRecordedAt: string;
  /** The same two of what crews may read; a state kept before this does not say, and they are told nothing. */
  readonly ofField?: { readonly submissionIds: readonly string[]; readonly lastRecordedAt: string };
}

export interface StrikeQuestion {
  readonly strikeId: string;
  readonly memberIds: readonly string[];
  /** Effective facts of every member's stream. */
  readonly facts: readonly Effective[];
  /** Those of them that a correction withdrew; left out: none. */
  readonly withdrawn?: readonly Effective[];
  /** Effective facts of the hydrant's own stream and of its other strikes: returns and valves may stand there. */
  readonly aroundFacts: readonly Effective[];
  readonly hydrantType: Hydrant['type'];
  /** Where not every fact is at hand, as on a device: since when, by who holds them all. */
  readonly toldSince?: string | undefined;
}

const earliest = (instants: readonly (string | null | undefined)[]): string | null =>
  instants
    .filter((at): at is string => typeof at === 'string')
    .sort((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null;
const latest = (instants: readonly (string | null | undefined)[]): string | null =>
  instants
    .filter((at): at is string => typeof at === 'string')
    .sort((a, b) => Date.parse(b) - Date.parse(a))[0] ?? null;

/** The fold of one strike. Pure; the order in which facts arrived makes no difference. */
export function foldStrike({
  strikeId,
  memberIds,
  facts,
  withdrawn = [],
  aroundFacts,
  hydrantType,
  toldSince,
}: StrikeQuestion): StrikeState {
  const strikes = ofKind(facts, 'strike').map(({ fact }) => fact);
  const repairs = ofKind(facts, 'repair');
  const notices = ofKind(facts, 'out-of-service-notice').map(({ fact }) => fact.body);
  const turns = [...valveTurns(facts), ...valveTurns(aroundFacts)];
  const expected = ofKind(facts, 'expected-return').at(-1)?.fact.body ?? null;
  const flowTests = ofKind(facts, 'flow-test').map(({ fact }) => fact);
  const bodies = strikes.map(({ body }) => body);

  const closing = [...ofKind(facts, 'return-to-service'), ...ofKind(aroundFacts, 'return-to-service')].filter(
    ({ fact }) => fact.body.closes.some((id) => memberIds.includes(id)),
  );
  const named = [...new Set(bodies.flatMap((body) => body.hydrantId ?? []))].sort();
  const struckAt = earliest(bodies.map((body) => body.struckAt));
  const since = earliest([sinceOf(facts), toldSince]) ?? '';
  const returns = returnEffects(closing, {
    hydrantType,
    cause: 'strike',
    began: latestReport(facts) ?? since,
    hydrantsDiffer: named.length > 1,
    repairs,
    valveTurns: turns,
  });
  const effective = returns.find(({ takesEffect }) => takesEffect) ?? null;

  const waterShutAt = earliest([
    ...bodies.map((body) => body.waterShutAt),
    ...ofKind(facts, 'valve-operation').map(({ fact }) =>
      fact.body.action === 'closed' && fact.body.waterShut === 'yes' ? fact.body.at : null,
    ),
  ]);
  const repairedAt = latest(repairs.map(({ fact }) => fact.body.completedAt));
  const waiting = expected !== null && expected.waitingFor !== 'nothing';
  const positioned = bodies.find((body) => body.position !== null)?.position ?? null;
  const hydrantId =
    bodies.find((body) => body.hydrantId !== null)?.hydrantId ??
    repairs.find(({ fact }) => fact.body.hydrantId !== null)?.fact.body.hydrantId ??
    flowTests[0]?.body.residualHydrantId ??
    null;
  return {
    strikeId,
    memberIds: [...memberIds].sort(),
    reported: strikes.length > 0,
    hydrantId,
    hydrantIds: named.length > 0 ? named : hydrantId === null ? [] : [hydrantId],
    position: positioned && { latitudeDeg: positioned.latitudeDeg, longitudeDeg: positioned.longitudeDeg },
    placeDescription: bodies.find((body) => body.placeDescription !== null)?.placeDescription ?? null,
    stage: effective
      ? 'back'
      : repairedAt
        ? 'repaired'
        : repairs.length > 0
          ? 'under-repair'
          : waiting
            ? 'waiting'
            : waterShutAt
              ? 'shut-off'
              : 'reported',
    since,
    struckAt,
    arrivedAt: earliest(bodies.map((body) => body.arrivedAt)),
    waterShutAt,
    markedOutOfServiceAt: earliest([...bodies, ...notices].map((body) => body.markedOutOfServiceAt)),
    dispatchToldAt: earliest([...bodies, ...notices].map((body) => body.dispatch?.at)),
    expectedAt: expected?.expectedAt ?? null,
    waitingFor: waiting ? expected.waitingFor : null,
    repairedAt,
    returns,
    returnedAt: effective?.returnedAt ?? null,
    dispatchToldBackAt: effective && toldBackAt(effective, closing, notices),
    deferred: effective?.deferred ?? [],
    ...(effective?.pumped ? { pumped: effective.pumped } : {}),
    breaches: breachesOf({ hydrantType, facts, withdrawn, aroundFacts }),
    exhibits: distinctExhibits(facts),
    ...shutMainOf(facts, aroundFacts, { since, returnedAt: effective?.returnedAt ?? null }, turns),
    partyIds: ofKind(facts, 'party').map(({ fact }) => fact.submissionId),
    ...causeOf(facts),
    flowTestIds: flowTests.map((fact) => fact.submissionId),
    ...recordOf(facts),
    ofField: recordOf(facts.filter(({ fact }) => readersOf(fact.kind).includes('crew'))),
  };
}

/** Dispatch told by the return itself, whenever that was, or by a notice of after it. */
const toldBackAt = (
  { returnId, returnedAt }: ReturnEffect,
  closing: readonly Effective<'return-to-service'>[],
  notices: readonly BodyOf<'out-of-service-notice'>[],
): string | null =>
  earliest([
    ...closing.filter(({ fact }) => fact.submissionId === returnId).map(({ fact }) => fact.body.dispatch?.at),
    ...notices
      .map(({ dispatch }) => dispatch?.at)
      .filter((at) => at !== undefined && Date.parse(at) >= Date.parse(returnedAt)),
  ]);

const recordOf = (
  facts: readonly Effective[],
): { readonly submissionIds: readonly string[]; readonly lastRecordedAt: string } => ({
  submissionIds: facts.map(({ fact }) => fact.submissionId),
  lastRecordedAt:
    latest(facts.flatMap((item) => [item.recordedAt, ...item.corrections.map((c) => c.recordedAt)])) ?? '',
});

/** A time of a fact, unless it lies after the fact was recorded: then when it was recorded, the latest it can be. */
const believed = (item: Effective, at: string | null): string | null =>
  at !== null && notYet(at, item) ? item.recordedAt : at;

/** Start of the outage: the earliest time that a report gives for it, or, with no report, that any other fact gives. */
function sinceOf(facts: readonly Effective[]): string {
  const reports = ofKind(facts, 'strike').flatMap((item) => {
    const { body, occurredAt } = item.fact;
    return [body.struckAt, body.reportedBy.reportedAt, body.arrivedAt, occurredAt].map((at) =>
      believed(item, at),
    );
  });
  const others = facts.flatMap((item) => [
    believed(item, item.fact.occurredAt),
    ...(item.fact.kind === 'repair'
      ? item.fact.body.crew.flatMap(({ work }) => work.map(({ from }) => believed(item, from)))
      : []),
  ]);
  return earliest(reports) ?? earliest(others) ?? '';
}

/**
 * When the last of the joined reports says that it happened: the strike's time where it gives one, else the first that
 * was seen of it. Null without a report.
 */
export function latestReport(facts: readonly Effective[]): string | null {
  return latest(
    ofKind(facts, 'strike').map((item) => {
      const { body, occurredAt } = item.fact;
      return believed(
        item,
        body.struckAt ?? earliest([body.reportedBy.reportedAt, body.arrivedAt, occurredAt]) ?? occurredAt,
      );
    }),
  );
}

/** Of the hydrant's own stream what bears on this strike: a valve may be turned from its page. */
function shutMainOf(
  facts: readonly Effective[],
  aroundFacts: readonly Effective[],
  outage: OutageTimes,
  turns: readonly ValveTurn[],
): Pick<StrikeState, 'shutMain'> {
  const ofHydrant = aroundFacts.filter(
    (item) => item.fact.subject.type === 'hydrant' && bearsOn(item, outage),
  );
  const shutMain = shutMainStanding([...facts, ...ofHydrant], turns);
  return shutMain ? { shutMain } : {};
}

function distinctExhibits(facts: readonly Effective[]): Exhibit[] {
  const byHash = new Map<string, Exhibit>();
  for (const { fact } of facts) {
    const photos = 'photos' in fact.body ? (fact.body.photos as readonly Exhibit[]) : [];
    for (const photo of photos) if (!byHash.has(photo.sha256)) byHash.set(photo.sha256, photo);
  }
  return [...byHash.values()];
}

/** The last party that says what led to the strike; one that does not know takes nothing back. */
function causeOf(facts: readonly Effective[]): Pick<StrikeState, 'cause'> {
  const cause = ofKind(facts, 'party')
    .map(({ fact }) => fact.body.cause)
    .filter((said) => said !== undefined && said !== 'unknown')
    .at(-1);
  return cause === undefined ? {} : { cause };
}
