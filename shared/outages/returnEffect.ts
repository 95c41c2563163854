import type { Hydrant } from '../inventory/hydrant.ts';
import { opensUp } from '../procedure/steps.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { notYet } from '../submissions/known.ts';
import type { BodyOf } from '../submissions/submission.ts';
import {
  deferrableAfterRepair,
  insteadOf,
  proofsAfterOtherOutage,
  proofsAfterRepair,
  type Proof,
} from './proofs.ts';

/** Why a recorded return to service has no effect (yet). Words: `hold.<code>`. */
export interface Hold {
  readonly code:
    | 'proof-missing'
    | 'proof-failed'
    | 'proof-not-deferrable'
    | 'proof-before-outage'
    | 'proof-before-reassembly'
    | 'valve-still-closed'
    | 'repair-still-open'
    | 'proof-not-yet'
    | 'proof-after-return'
    | 'return-before-outage'
    | 'return-not-yet'
    | 'failed-since'
    | 'hydrants-differ';
  readonly proof?: Proof;
  readonly valveId?: string;
}

/** A proof that was put off by name: the return stands, and everyone is told. */
export interface DeferredProof {
  readonly proof: Proof;
  readonly reason: string;
  readonly byWorkerId: string;
}

export interface ReturnEffect {
  readonly returnId: string;
  readonly returnedAt: string;
  readonly takesEffect: boolean;
  readonly holds: readonly Hold[];
  readonly deferred: readonly DeferredProof[];
  /** The barrel was pumped dry, because its drain is plugged: whoever uses the hydrant has to know. */
  readonly pumped?: { readonly at: string; readonly byWorkerId: string };
}

export interface ReturnQuestion {
  readonly hydrantType: Hydrant['type'];
  /** A strike opens the hydrant up; another outage does not. */
  readonly cause: 'strike' | 'other';
  /**
   * When the outage began: of several reports joined into one strike the latest, so that a return from before one of
   * them ends nothing. No proof from before it shows anything.
   */
  readonly began: string;
  /** The reports joined into this strike name more than one hydrant: nobody can say which of them was proven. */
  readonly hydrantsDiffer: boolean;
  /** Repairs of this strike (none for another outage). */
  readonly repairs: readonly Effective<'repair'>[];
  /** Every turn of a valve known for this strike and its hydrant. */
  readonly valveTurns: readonly ValveTurn[];
}

export interface ValveTurn {
  readonly valveId: string;
  readonly at: string;
  readonly closed: boolean;
  /** The hydrant's own valve: shut, it gives no water. */
  readonly isolation: boolean;
  readonly submissionId: string;
}

/** Turns recorded as valve operations, and reopenings recorded on any return, whether or not that return took effect. */
export function valveTurns(facts: readonly Effective[]): ValveTurn[] {
  return [
    ...ofKind(facts, 'valve-operation').flatMap((item) => {
      const { body, submissionId } = item.fact;
      const closed = body.action === 'closed';
      // A valve that will be reopened is shut; one that will be closed counts as closed, the safe side.
      if (!closed && notYet(body.at, item)) return [];
      return [
        { valveId: body.valveId, at: body.at, closed, isolation: body.valve === 'isolation', submissionId },
      ];
    }),
    ...ofKind(facts, 'return-to-service').flatMap((item) =>
      item.fact.body.valvesReopened
        .filter(({ at }) => !notYet(at, item))
        .map(({ valveId, at }) => ({
          valveId,
          at,
          closed: false,
          isolation: false,
          submissionId: item.fact.submissionId,
        })),
    ),
  ];
}

type Shown = BodyOf<'return-to-service'>['proofs'][number];
type Result = Shown['result'];
const badness = (result: Result): number => ({ passed: 0, deferred: 1, failed: 2 })[result];

const MINUTE_MS = 60_000;
const time = (instant: string): number => Date.parse(instant);
/** People give times to the minute; a return in the very minute of its proof is no earlier than it. */
const minuteOf = (instant: string): number => Math.floor(time(instant) / MINUTE_MS);

/**
 * Whether a return to service takes effect (design decision 7): every proof for that type of hydrant passed, or put
 * off by name, after the outage began and the last reassembly and no later than the return itself; every valve recorded closed by then recorded
 * reopened; and nothing of it dated later than it was recorded, which nobody can have seen.
 */
export function returnEffect(
  returned: Effective<'return-to-service'>,
  question: ReturnQuestion,
): ReturnEffect {
  const { body, submissionId } = returned.fact;
  const holds: Hold[] = [];
  const deferred: DeferredProof[] = [];
  const returnedAt = time(body.returnedAt);

  const reassemblies = question.repairs.flatMap(({ fact }) =>
    fact.body.reassembledAt ? [time(fact.body.reassembledAt)] : [],
  );
  const lastReassembly = reassemblies.length > 0 ? Math.max(...reassemblies) : Number.NEGATIVE_INFINITY;
  const opened = question.repairs.flatMap(({ fact }) =>
    fact.body.steps.filter(({ step }) => opensUp.includes(step)).map(({ doneAt }) => time(doneAt)),
  );
  // Opened up again after the return, and not closed since: whatever was proven then, it is open now.
  if (opened.some((at) => at > lastReassembly)) holds.push({ code: 'repair-still-open' });
  // People give times to the minute; a report that a device dated to the second is no later than its minute.
  const began = Math.floor(time(question.began) / MINUTE_MS) * MINUTE_MS;
  if (returnedAt < began) holds.push({ code: 'return-before-outage' });
  if (notYet(body.returnedAt, returned)) holds.push({ code: 'return-not-yet' });

  let pumped: ReturnEffect['pumped'];
  for (const proof of requiredProofs(question)) {
    const last = lastWord(body.proofs, proof);
    if (!last) holds.push({ code: 'proof-missing', proof });
    else if (notYet(last.at, returned)) holds.push({ code: 'proof-not-yet', proof });
    else if (last.result === 'failed') holds.push({ code: 'proof-failed', proof });
    else if (time(last.at) < began) holds.push({ code: 'proof-before-outage', proof });
    // A return from before the outage says already that its own time is wrong.
    else if (returnedAt >= began && minuteOf(last.at) > minuteOf(body.returnedAt))
      holds.push({ code: 'proof-after-return', proof });
    else if (last.result === 'deferred' && !mayBePutOff(last.proof, question))
      holds.push({ code: 'proof-not-deferrable', proof });
    else if (last.result === 'deferred')
      deferred.push({ proof, reason: last.deferredReason ?? '', byWorkerId: last.deferredByWorkerId ?? '' });
    else if (time(last.at) < lastReassembly) holds.push({ code: 'proof-before-reassembly', proof });
    else if (last.proof === 'pumped-out') pumped = { at: last.at, byWorkerId: last.byWorkerId };
  }

  if (question.hydrantsDiffer) holds.push({ code: 'hydrants-differ' });
  for (const valveId of stillClosed(question.valveTurns, returnedAt))
    holds.push({ code: 'valve-still-closed', valveId });
  return {
    returnId: submissionId,
    returnedAt: body.returnedAt,
    takesEffect: holds.length === 0,
    holds,
    deferred,
    ...(pumped ? { pumped } : {}),
  };
}

/** The proofs that this return needs: for the type of hydrant, and for how far it was opened. */
function requiredProofs({ cause, hydrantType, repairs }: ReturnQuestion): readonly Proof[] {
  if (cause === 'other') return proofsAfterOtherOutage;
  const mainOpened = repairs.some(({ fact }) => fact.body.steps.some(({ step }) => step === 'main-opened'));
  return proofsAfterRepair(hydrantType, mainOpened);
}

/** A shut main or blocked access leaves the hydrant as it was: there any proof may be put off by name. */
const mayBePutOff = (proof: Proof, { cause }: ReturnQuestion): boolean =>
  cause === 'other' || deferrableAfterRepair.includes(proof);

/** The last word on a proof, or on what shows the same; of two at the same instant the worse, so that a tie never passes. */
function lastWord(said: readonly Shown[], proof: Proof): Shown | undefined {
  return said
    .filter((item) => item.proof === proof || item.proof === insteadOf[proof])
    .sort(
      (a, b) =>
        time(a.at) - time(b.at) ||
        badness(a.result) - badness(b.result) ||
        // Both are said: the drain works.
        Number(b.proof !== proof) - Number(a.proof !== proof),
    )
    .at(-1);
}

/** Valves whose last recorded turn, up to the instant `until` (epoch milliseconds), closed them. */
export function stillClosed(turns: readonly ValveTurn[], until: number): string[] {
  const inOrder = turns
    .map((turn) => ({ ...turn, time: time(turn.at) }))
    // A valve turned after the return belongs to the next job; a reopening typed a little late still counts.
    .filter((turn) => !turn.closed || turn.time <= until)
    // At the same instant a closing counts last, so that a tie never opens a valve.
    .sort((a, b) => a.time - b.time || Number(a.closed) - Number(b.closed));
  const state = new Map<string, boolean>();
  for (const { valveId, closed } of inOrder) state.set(valveId, closed);
  return [...state].filter(([, closed]) => closed).map(([valveId]) => valveId);
}

/**
 * The effects of every return of one outage, in the order in which they took place. One that took effect loses it when
 * a later one records a proof as failed: what was shown to work no longer does.
 */
export function returnEffects(
  returns: readonly Effective<'return-to-service'>[],
  question: ReturnQuestion,
): ReturnEffect[] {
  const inOrder = [...returns].sort((a, b) => time(a.fact.body.returnedAt) - time(b.fact.body.returnedAt));
  return inOrder.map((returned) => {
    const effect = returnEffect(returned, question);
    // Of two at the same time the failure counts last, so that a tie never passes.
    const failedSince = inOrder.find(
      (other) =>
        other !== returned &&
        time(other.fact.body.returnedAt) >= time(returned.fact.body.returnedAt) &&
        other.fact.body.proofs.some(({ result }) => result === 'failed'),
    );
    if (!effect.takesEffect || !failedSince) return effect;
    return { ...effect, takesEffect: false, holds: [{ code: 'failed-since' }] };
  });
}
