import { procedureSteps } from '../procedure/steps.ts';
import type { StrikeState } from '../strikes/state.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { beganAt } from '../costs/work.ts';
import type { PacketContent } from './schema.ts';

type Event = PacketContent['timeline'][number];
type Worker = NonNullable<Event['by']>;
export type WorkerOf = (workerId: string) => Worker;

/**
 * Everything that happened, from the last time it was seen sound to its return, each with who recorded it. What two
 * reports say alike stands once; what they say differently stands twice, because both were said.
 */
export function timelineOf(facts: readonly Effective[], strike: StrikeState, workerOf: WorkerOf): Event[] {
  const events: Event[] = [];
  const add = (
    submissionId: string,
    code: Event['code'],
    at: string | null,
    by: string | null = null,
    detail: Event['detail'] = {},
  ): void => {
    if (at !== null) events.push({ at, code, by: by === null ? null : workerOf(by), submissionId, detail });
  };

  for (const { fact } of ofKind(facts, 'strike')) {
    const { body, submissionId: id, person } = fact;
    add(id, 'last-seen-sound', body.lastSeenSoundAt);
    add(id, 'struck', body.struckAt, null, { basis: body.struckAtBasis });
    add(id, 'reported', body.reportedBy.reportedAt, null, { source: body.reportedBy.source });
    add(id, 'called-out', body.calledOutAt);
    add(id, 'arrived', body.arrivedAt, person.personId);
    add(id, 'water-shut', body.waterShutAt, person.personId);
    add(id, 'marked', body.markedOutOfServiceAt, person.personId);
    if (body.dispatch) add(id, 'dispatch-told', body.dispatch.at, body.dispatch.toldByWorkerId);
  }
  for (const { fact } of ofKind(facts, 'out-of-service-notice')) {
    const { body, submissionId: id, person } = fact;
    add(id, 'marked', body.markedOutOfServiceAt, person.personId);
    if (body.dispatch) add(id, 'dispatch-told', body.dispatch.at, body.dispatch.toldByWorkerId);
  }
  for (const { fact } of ofKind(facts, 'valve-operation')) {
    const { valveId, action, at, byWorkerId, waterShut } = fact.body;
    const closed = action === 'closed';
    add(fact.submissionId, closed ? 'valve-closed' : 'valve-reopened', at, byWorkerId, {
      valveId,
      ...(closed ? { waterShut } : {}),
    });
  }
  for (const { fact } of ofKind(facts, 'expected-return')) {
    const { waitingFor, expectedAt } = fact.body;
    add(fact.submissionId, 'expected-return', fact.occurredAt, fact.person.personId, {
      waitingFor,
      expectedAt,
    });
  }
  for (const { fact } of ofKind(facts, 'repair')) {
    const { body, submissionId: id, person } = fact;
    add(id, 'work-began', beganAt(body));
    for (const { step, doneAt, byWorkerId } of body.steps) add(id, 'step-done', doneAt, byWorkerId, { step });
    add(id, 'closed-up', body.reassembledAt, person.personId);
    add(id, 'completed', body.completedAt, person.personId);
  }
  for (const { fact } of ofKind(facts, 'flow-test'))
    if (Date.parse(fact.body.testedAt) >= Date.parse(strike.since))
      add(fact.submissionId, 'flow-tested', fact.body.testedAt, fact.body.testedByWorkerIds[0] ?? null);
  for (const { fact } of ofKind(facts, 'return-to-service')) {
    const { body, submissionId: id, person } = fact;
    const takesEffect = strike.returns.find(({ returnId }) => returnId === id)?.takesEffect ?? false;
    for (const { proof, result, at, byWorkerId } of body.proofs)
      add(id, 'proof', at, byWorkerId, { proof, result });
    for (const { valveId, at, byWorkerId } of body.valvesReopened)
      add(id, 'valve-reopened', at, byWorkerId, { valveId });
    add(id, 'mark-removed', body.markRemovedAt, person.personId);
    if (body.dispatch) add(id, 'dispatch-told', body.dispatch.at, body.dispatch.toldByWorkerId);
    add(id, 'returned', body.returnedAt, person.personId, { takesEffect });
  }
  return once(events.sort(inOrder));
}

/** By time; at the same instant in the order in which such things come. */
function inOrder(a: Event, b: Event): number {
  return (
    Date.parse(a.at) - Date.parse(b.at) ||
    rank(a) - rank(b) ||
    (a.submissionId < b.submissionId ? -1 : a.submissionId > b.submissionId ? 1 : 0)
  );
}

const order: readonly Event['code'][] = [
  'last-seen-sound',
  'struck',
  'reported',
  'called-out',
  'arrived',
  'marked',
  'valve-closed',
  'water-shut',
  'expected-return',
  'work-began',
  'step-done',
  'closed-up',
  'completed',
  'valve-reopened',
  'flow-tested',
  'proof',
  'returned',
  'mark-removed',
  'dispatch-told',
];
const rank = ({ code, detail }: Event): number =>
  order.indexOf(code) + (detail.step ? procedureSteps.indexOf(detail.step) / 100 : 0);

function once(events: readonly Event[]): Event[] {
  const said = new Set<string>();
  return events.filter(({ at, code, by, detail }) => {
    const key = JSON.stringify([
      Date.parse(at),
      code,
      by?.workerId,
      detail.valveId,
      detail.step,
      detail.proof,
      detail.result,
      detail.source,
    ]);
    if (said.has(key)) return false;
    said.add(key);
    return true;
  });
}
