import type { Hydrant } from '../inventory/hydrant.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { proofsAfterOtherOutage, proofsAfterRepair, type Proof } from './proofs.ts';

/** Why a recorded return to service has no effect (yet). Words: `hold.<code>`. */
export interface Hold {
  readonly code:
    | 'proof-missing'
    | 'proof-failed'
    | 'proof-before-outage'
    | 'proof-before-reassembly'
    | 'valve-still-closed'
    | 'repair-still-open'
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
}

export interface ReturnQuestion {
  readonly hydrantType: Hydrant['type'];
  /** A strike opens the hydrant up; another outage does not. */
  readonly cause: 'strike' | 'other';
  /** When the outage began, as somebody stated it; null where nobody did. No proof from before it shows anything. */
  readonly began: string | null;
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
}

/** Turns recorded as valve operations, and reopenings recorded on any return, whether or not that return took effect. */
export function valveTurns(facts: readonly Effective[]): ValveTurn[] {
  return [
    ...ofKind(facts, 'valve-operation').map(({ fact: { body } }) => ({
      valveId: body.valveId,
      at: body.at,
      closed: body.action === 'closed',
    })),
    ...ofKind(facts, 'return-to-service').flatMap(({ fact }) =>
      fact.body.valvesReopened.map(({ valveId, at }) => ({ valveId, at, closed: false })),
    ),
  ];
}

const time = (instant: string): number => Date.parse(instant);

/**
 * Whether a return to service takes effect (design decision 7): every proof for that type of hydrant passed, or put
 * off by name, after the last reassembly, and every valve recorded closed by then recorded reopened.
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
    fact.body.steps
      .filter(({ step }) => step === 'taken-down' || step === 'top-opened')
      .map(({ doneAt }) => time(doneAt)),
  );
  if (opened.some((at) => at > lastReassembly && at <= returnedAt)) holds.push({ code: 'repair-still-open' });

  const required =
    question.cause === 'strike' ? proofsAfterRepair(question.hydrantType) : proofsAfterOtherOutage;
  for (const proof of required) {
    const results = body.proofs
      .filter((item) => item.proof === proof)
      .sort((a, b) => time(a.at) - time(b.at));
    const last = results.at(-1);
    if (!last) holds.push({ code: 'proof-missing', proof });
    else if (last.result === 'failed') holds.push({ code: 'proof-failed', proof });
    else if (last.result === 'deferred')
      deferred.push({ proof, reason: last.deferredReason ?? '', byWorkerId: last.deferredByWorkerId ?? '' });
    else if (question.began !== null && time(last.at) < time(question.began))
      holds.push({ code: 'proof-before-outage', proof });
    else if (time(last.at) < lastReassembly) holds.push({ code: 'proof-before-reassembly', proof });
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
  };
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
