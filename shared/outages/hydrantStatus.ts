import type { Hydrant } from '../inventory/hydrant.ts';
import type { StrikeState } from '../strikes/state.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { notYet } from '../submissions/known.ts';
import { returnEffects, stillClosed, valveTurns, type ReturnEffect } from './returnEffect.ts';

/** One outage of one hydrant, open or ended. `cause` is `strike` or one of the outage form's causes. */
export interface Outage {
  /** A strike's strikeId, or the outage submission's id: what a return to service names in `closes`. */
  readonly outageId: string;
  readonly cause: string;
  readonly since: string;
  readonly expectedAt: string | null;
  readonly waitingFor: string | null;
  readonly endedAt: string | null;
  /** Returns that were recorded and have no effect, with what holds each of them. */
  readonly heldReturns: readonly ReturnEffect[];
  readonly deferred: ReturnEffect['deferred'];
  readonly dispatchToldAt: string | null;
}

/** The cause of an outage that nobody reported and a closed valve shows. Words: `value.outageCause.valve-closed`. */
export const valveClosed = 'valve-closed';

export interface HydrantStatus {
  readonly hydrantId: string;
  /** In service only when no outage of it is open. */
  readonly inService: boolean;
  readonly open: readonly Outage[];
  readonly past: readonly Outage[];
  readonly lastInspectedAt: string | null;
  readonly flowTestIds: readonly string[];
  readonly planned: readonly {
    readonly submissionId: string;
    readonly work: string;
    readonly from: string;
    readonly to: string;
    readonly takesOutOfService: boolean;
  }[];
}

export interface StatusQuestion {
  readonly hydrantId: string;
  readonly hydrantType: Hydrant['type'];
  readonly strikes: readonly StrikeState[];
  /** Effective facts of the hydrant's stream and of all its strikes. */
  readonly facts: readonly Effective[];
}

/** The fold of one hydrant: every outage of it, whatever the cause, and what is known of its flow. */
export function foldHydrant({ hydrantId, hydrantType, strikes, facts }: StatusQuestion): HydrantStatus {
  const fromStrikes: Outage[] = strikes.map((strike) => ({
    outageId: strike.strikeId,
    cause: 'strike',
    since: strike.since,
    expectedAt: strike.expectedAt,
    waitingFor: strike.waitingFor,
    endedAt: strike.returnedAt,
    heldReturns: strike.returns.filter(({ takesEffect }) => !takesEffect),
    deferred: strike.deferred,
    dispatchToldAt: strike.dispatchToldAt,
  }));
  const others = ofKind(facts, 'outage').map((item) => foldOtherOutage(item, hydrantType, facts));
  const recorded = [...fromStrikes, ...others];
  const shut = recorded.some(({ endedAt }) => endedAt === null) ? [] : shutValves(facts);
  const all = [...recorded, ...shut].sort((a, b) => Date.parse(a.since) - Date.parse(b.since));
  const open = all.filter(({ endedAt }) => endedAt === null);
  const inspected = ofKind(facts, 'inspection').map(({ fact }) => fact.body.inspectedAt);
  return {
    hydrantId,
    inService: open.length === 0,
    open,
    past: all.filter(({ endedAt }) => endedAt !== null),
    lastInspectedAt: inspected.sort((a, b) => Date.parse(b) - Date.parse(a))[0] ?? null,
    flowTestIds: ofKind(facts, 'flow-test')
      .filter(({ fact }) => fact.body.residualHydrantId === hydrantId)
      .sort((a, b) => Date.parse(a.fact.body.testedAt) - Date.parse(b.fact.body.testedAt))
      .map(({ fact }) => fact.submissionId),
    planned: ofKind(facts, 'planned-work').map(({ fact: { submissionId, body } }) => ({
      submissionId,
      work: body.work,
      from: body.from,
      to: body.to,
      takesOutOfService: body.takesOutOfService,
    })),
  };
}

/**
 * A hydrant whose own valve is recorded closed and not reopened gives no water, though no outage is open: it was closed
 * after the return, or nobody reported an outage. It counts as out until the valve is recorded reopened.
 */
function shutValves(facts: readonly Effective[]): Outage[] {
  const turns = valveTurns(facts);
  return stillClosed(turns, Number.POSITIVE_INFINITY).flatMap((valveId) => {
    const closing = turns
      .filter((turn) => turn.valveId === valveId && turn.closed && turn.isolation)
      .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
      .at(-1);
    if (!closing) return [];
    return [
      {
        outageId: closing.submissionId,
        cause: valveClosed,
        since: closing.at,
        expectedAt: null,
        waitingFor: null,
        endedAt: null,
        heldReturns: [],
        deferred: [],
        dispatchToldAt: null,
      },
    ];
  });
}

const sinceWhen = (item: Effective<'outage'>): string =>
  notYet(item.fact.body.since, item) ? item.recordedAt : item.fact.body.since;

/** The effects of every return of an outage that is no strike, in the order in which they took place. */
export function returnsOfOutage(
  item: Effective<'outage'>,
  hydrantType: Hydrant['type'],
  facts: readonly Effective[],
): ReturnEffect[] {
  const { submissionId } = item.fact;
  return returnEffects(
    ofKind(facts, 'return-to-service').filter(({ fact }) => fact.body.closes.includes(submissionId)),
    {
      hydrantType,
      cause: 'other',
      began: sinceWhen(item),
      hydrantsDiffer: false,
      repairs: [],
      // Every valve, also one closed before this outage is said to have begun: a shut valve is shut whatever the form says.
      valveTurns: valveTurns(facts),
    },
  );
}

function foldOtherOutage(
  item: Effective<'outage'>,
  hydrantType: Hydrant['type'],
  facts: readonly Effective[],
): Outage {
  const { submissionId, body } = item.fact;
  const returns = returnsOfOutage(item, hydrantType, facts);
  const effective = returns.find(({ takesEffect }) => takesEffect) ?? null;
  const expected = ofKind(facts, 'expected-return')
    .filter(({ fact }) => fact.body.outageId === submissionId)
    .at(-1)?.fact.body;
  return {
    outageId: submissionId,
    cause: body.cause,
    since: sinceWhen(item),
    expectedAt: expected?.expectedAt ?? null,
    waitingFor: expected && expected.waitingFor !== 'nothing' ? expected.waitingFor : null,
    endedAt: effective?.returnedAt ?? null,
    heldReturns: returns.filter(({ takesEffect }) => !takesEffect),
    deferred: effective?.deferred ?? [],
    dispatchToldAt: body.dispatch?.at ?? null,
  };
}
