import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import { proofsAfterOtherOutage, proofsAfterRepair, type Proof } from '../outages/proofs.ts';
import type { Hydrant } from '../inventory/hydrant.ts';

export interface NotRetested {
  readonly returnedAt: string;
  readonly proofs: readonly Proof[];
}

/**
 * Proofs that a hydrant came back without and that nothing has made up for: a flow test recorded since, or a later
 * return at which that proof was due and passed. Null when it is out now, or owes nothing. `returnedAt` is that of the
 * earliest return that still owes a proof.
 */
export function notRetested(
  status: HydrantStatus,
  type: Hydrant['type'],
  flowTestedAt: readonly string[],
): NotRetested | null {
  if (!status.inService) return null;
  const ended = status.past
    .flatMap(({ endedAt, ...outage }) => (endedAt === null ? [] : [{ ...outage, endedAt }]))
    .toSorted((a, b) => Date.parse(a.endedAt) - Date.parse(b.endedAt));
  const owed = new Map<Proof, string>();
  for (const { endedAt, cause, deferred } of ended) {
    const putOff = new Set(deferred.map(({ proof }) => proof));
    // A return takes effect only with every due proof passed or put off, so what was due and not put off had passed.
    const due = cause === 'strike' ? proofsAfterRepair(type) : proofsAfterOtherOutage;
    for (const proof of due) if (!putOff.has(proof)) owed.delete(proof);
    for (const proof of putOff) if (!owed.has(proof)) owed.set(proof, endedAt);
  }
  const since = owed.get('flow-test');
  if (since !== undefined && flowTestedAt.some((at) => Date.parse(at) >= Date.parse(since)))
    owed.delete('flow-test');
  const [first] = [...owed.values()].toSorted((a, b) => Date.parse(a) - Date.parse(b));
  return first === undefined ? null : { returnedAt: first, proofs: [...owed.keys()].toSorted() };
}
