import { claimCase, type ClaimCase } from '../../shared/packet/case.ts';
import { hydrantsNear } from '../../shared/packet/near.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { effectiveFacts, ofKind, type Effective } from '../../shared/submissions/effective.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { notFound, refuse } from '../http/refused.ts';
import { problem } from '../../shared/problems/problem.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { readNeighborhood } from '../project/neighborhood.ts';
import type { PacketsDeps } from './deps.ts';

export interface LoadedClaim extends ClaimCase {
  readonly hydrant: Hydrant | null;
  /** Its neighbours in the inventory in force. */
  readonly near: ReturnType<typeof hydrantsNear>;
  /** The claim's packets, first revision first. */
  readonly packets: readonly Effective<'packet-frozen'>[];
}

/** Everything that a claim's statement and packet are made from, read from the ledger with strong consistency. */
export async function loadClaim(
  deps: Pick<PacketsDeps, 'ledger' | 'inventory' | 'settings' | 'projections'>,
  claimId: string,
): Promise<LoadedClaim> {
  const { ledger, inventory, settings } = deps;
  const own = await ledger.readStream(streamOf({ type: 'claim', claimId }));
  const { facts } = effectiveFacts(withoutTrials(own));
  const claim = ofKind(facts, 'claim-opened')[0];
  if (!claim) return notFound('no-such-claim');

  const around = await readAround(deps, claim.fact.body.strikeId);
  const types = new Map<string, Hydrant>();
  for (const stream of around.streams) {
    const hydrantId = /^hydrant:([^]+)$/.exec(stream)?.[1];
    const hydrant = hydrantId === undefined ? null : await inventory.hydrant(hydrantId);
    if (hydrant) types.set(hydrant.hydrantId, hydrant);
  }
  const found = claimCase({
    claimId,
    recorded: [...own, ...around.recorded, ...(await ledger.readStream('utility'))],
    hydrantType: (hydrantId) => types.get(hydrantId)?.type ?? 'unknown',
    modelOf: (hydrantId) => types.get(hydrantId)?.modelId ?? null,
    timeZone: settings.timeZone,
  });
  if (!found)
    return refuse(
      'invalid',
      problem('claim-without-strike', 'strikeId', { strikeId: claim.fact.body.strikeId }),
    );
  const { hydrantId, position } = found.strike;
  const hydrant = hydrantId === null ? null : (types.get(hydrantId) ?? (await inventory.hydrant(hydrantId)));
  const place = hydrant ?? position;
  return {
    ...found,
    hydrant,
    near: place ? hydrantsNear(place, (await inventory.current())?.hydrants ?? [], hydrantId) : [],
    packets: ofKind(facts, 'packet-frozen').sort((a, b) => a.fact.body.revision - b.fact.body.revision),
  };
}

/**
 * The strike's neighbourhood. Only the strike's own streams are read with their personal fields: what a packet needs
 * of them stands in the party.
 */
async function readAround(
  { ledger, projections }: Pick<PacketsDeps, 'ledger' | 'projections'>,
  strikeId: string,
): Promise<{ readonly streams: readonly Stream[]; readonly recorded: readonly Recorded[] }> {
  const around = await readNeighborhood({ ledger, projections }, streamOf({ type: 'strike', strikeId }));
  const parties = around.recorded.filter(({ submission }) =>
    submission.kind === 'correction' ? submission.body.targetKind === 'party' : submission.kind === 'party',
  );
  const withParties = new Set(parties.map(({ submission }) => streamOf(submission.subject)));
  const whole = await Promise.all([...withParties].map((stream) => ledger.readStream(stream)));
  return {
    streams: [...around.streams],
    recorded: [
      ...around.recorded.filter(({ submission }) => !withParties.has(streamOf(submission.subject))),
      ...whole.flat(),
    ],
  };
}
