import { ofKind, type Effective } from '../submissions/effective.ts';

/**
 * When water was let in again by a valve: the reopening of one that had stopped it, which is the hydrant's own, or any
 * other whose closing is recorded to have shut the water off at the hydrant. Epoch milliseconds, in no order. A refill
 * recorded as a step of the repair is not among them.
 */
export function waterLetInByValves(facts: readonly Effective[]): number[] {
  const turns = ofKind(facts, 'valve-operation').map(({ fact }) => fact.body);
  const stopped = new Set(
    turns
      .filter(
        ({ valve, action, waterShut }) =>
          valve === 'isolation' || (action === 'closed' && waterShut === 'yes'),
      )
      .map(({ valveId }) => valveId),
  );
  const reopened = [
    ...turns.filter(({ action }) => action === 'reopened'),
    ...ofKind(facts, 'return-to-service').flatMap(({ fact }) => fact.body.valvesReopened),
  ];
  return reopened.filter(({ valveId }) => stopped.has(valveId)).map(({ at }) => Date.parse(at));
}
