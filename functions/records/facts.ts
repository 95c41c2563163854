import { effectiveFacts, type Effective } from '../../shared/submissions/effective.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';

/** Everything in some streams but trials, strongly consistent. */
export async function readStreams(ledger: Ledger, streams: readonly Stream[]): Promise<readonly Recorded[]> {
  return withoutTrials(
    (await Promise.all([...new Set(streams)].map((stream) => ledger.readStream(stream)))).flat(),
  );
}

/** The facts of some streams as they stand after their corrections. */
export const factsOf = async (ledger: Ledger, streams: readonly Stream[]): Promise<readonly Effective[]> =>
  effectiveFacts(await readStreams(ledger, streams)).facts;

/** The facts of a claim as they stand, trials and personal fields left out: for folds. */
export async function claimFacts(ledger: Ledger, claimId: string): Promise<readonly Effective[]> {
  const recorded = await ledger.readStream(streamOf({ type: 'claim', claimId }), { personal: false });
  return effectiveFacts(withoutTrials(recorded)).facts;
}

/** A fact as it stands, in the shape of a record. */
export const asRecorded = ({ fact, recordedAt, deliveredBy, erased }: Effective): Recorded => ({
  submission: fact,
  recordedAt,
  deliveredBy,
  erased,
});
