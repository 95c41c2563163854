import { countsCents } from '../../shared/claims/ofStrike.ts';
import { foldClaim } from '../../shared/claims/state.ts';
import { effectiveFacts, ofKind } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
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
  return Promise.all([...latest.values()].map((intent) => standing(deps, intent)));
}

/**
 * What a claim takes up of the statement: what it demands or is about to, less what was written off against its payer; once
 * it is closed, what it was paid.
 */
async function standing({ ledger }: PacketsDeps, intent: Intent): Promise<OtherDemand> {
  const recorded = await ledger.readStream(streamOf({ type: 'claim', claimId: intent.claimId }), {
    personal: false,
  });
  const { facts } = effectiveFacts(recorded);
  const frozen = ofKind(facts, 'packet-frozen')
    .map(({ fact }) => fact.body)
    .sort((a, b) => a.revision - b.revision)
    .at(-1);
  const frozenCents = frozen?.demandCents ?? 0;
  const underWay = intent.revision > (frozen?.revision ?? 0);
  const claim = foldClaim(intent.claimId, facts);
  return {
    claimNumber: claim?.claimNumber ?? intent.claimId,
    demandCents: countsCents({
      claimId: intent.claimId,
      claimNumber: claim?.claimNumber ?? intent.claimId,
      demandCents: underWay ? Math.max(frozenCents, intent.demandCents) : frozenCents,
      paidCents: claim?.money.paidCents ?? 0,
      writtenOffCents: claim?.money.writtenOffCents ?? 0,
      closed: claim?.life.closed ?? false,
    }),
  };
}
