import { countsCents, shareOf } from '../../shared/claims/ofStrike.ts';
import { foldClaim, type ClaimState } from '../../shared/claims/state.ts';
import { partitions } from '../../shared/projections/items.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { PacketsDeps } from './deps.ts';
import type { LoadedClaim } from './load.ts';

/**
 * What the claims of one strike demand, so that together they never demand more than its statement. Claims are found
 * by the names taken here, which are read with strong consistency; an index of claims might lag behind.
 *
 * A name says that a claim is about to freeze a revision at an amount. What was frozen is read from the claim itself; a
 * name without its packet (a freeze under way, or one that was cut off) counts until the claim takes another.
 */
interface Intent {
  readonly claimId: string;
  readonly revision: number;
  readonly atMs: number;
  readonly demandCents: number;
}

const spaceOf = (strikeId: string): string => `demand:${strikeId}`;
const nameOf = ({ claimId, revision, atMs, demandCents }: Intent): string =>
  [claimId, revision, atMs, demandCents].join('/');

function intentOf(name: string): Intent {
  const [claimId = '', revision, atMs, demandCents] = name.split('/');
  return { claimId, revision: Number(revision), atMs: Number(atMs), demandCents: Number(demandCents) };
}

/** Says what a claim is about to demand. A zero takes an earlier word back. */
export async function intend(
  { unique }: PacketsDeps,
  { strike }: LoadedClaim,
  intent: Intent,
): Promise<void> {
  await unique.take(spaceOf(strike.strikeId), nameOf(intent), intent.claimId);
}

export interface OtherDemand {
  readonly claimNumber: string;
  readonly demandCents: number;
}

/** What every other claim of the strike demands or is about to demand. */
export async function otherDemands(
  deps: PacketsDeps,
  claimId: string,
  { strike }: LoadedClaim,
): Promise<OtherDemand[]> {
  // Links may have joined strikes after one of them had a claim.
  const names = await Promise.all(strike.memberIds.map((id) => deps.unique.names(spaceOf(id))));
  const latest = new Map<string, Intent>();
  for (const intent of names.flat().map(intentOf)) {
    const known = latest.get(intent.claimId);
    if (intent.claimId !== claimId && (!known || intent.atMs >= known.atMs))
      latest.set(intent.claimId, intent);
  }
  // A claim that never was about to demand may have been paid all the same. It took no name, so the index finds it.
  const kept = await deps.projections.list<ClaimState>(partitions.claim);
  for (const { value } of kept)
    if (value.claimId !== claimId && strike.memberIds.includes(value.strikeId) && !latest.has(value.claimId))
      latest.set(value.claimId, { claimId: value.claimId, revision: 0, atMs: 0, demandCents: 0 });
  return Promise.all([...latest.values()].map((intent) => standing(deps, intent)));
}

/** What a claim counts against the statement (`shared/claims/ofStrike.ts`), or is about to demand, if that is more. */
async function standing({ ledger }: PacketsDeps, intent: Intent): Promise<OtherDemand> {
  const recorded = await ledger.readStream(streamOf({ type: 'claim', claimId: intent.claimId }), {
    personal: false,
  });
  const { facts } = effectiveFacts(withoutTrials(recorded));
  const claim = foldClaim(intent.claimId, facts);
  const counted = claim ? countsCents(shareOf(claim, facts)) : 0;
  const underWay = intent.revision > (claim?.packets.at(-1)?.revision ?? 0);
  return {
    claimNumber: claim?.claimNumber ?? intent.claimId,
    demandCents: underWay ? Math.max(counted, intent.demandCents) : counted,
  };
}
