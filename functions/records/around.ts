import { bearingOnHolds } from '../../shared/outages/around.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { mayDo, type Member } from '../../shared/roles.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { formOf } from '../../shared/submissions/submission.ts';
import type { RecordsDeps } from './deps.ts';
import { readStreams } from './facts.ts';
import { strikesOf, streamsOfStrikes } from './flowTests.ts';

/**
 * What a form judges hold points and returns by beside the record that it is about: the part of the hydrant's own stream
 * and of its strikes that this member may read. Of a hydrant of which nothing was recorded nothing is read.
 */
export async function recordsAround(
  { current, ledger }: Pick<RecordsDeps, 'current' | 'ledger'>,
  member: Member,
  status: HydrantStatus | null,
): Promise<readonly Recorded[]> {
  if (!status) return [];
  const strikes = await strikesOf(current, status);
  const recorded = await readStreams(ledger, [
    streamOf({ type: 'hydrant', hydrantId: status.hydrantId }),
    ...streamsOfStrikes(strikes),
  ]);
  const open = status.open.map(({ outageId }) => outageId);
  const openIds = new Set([
    ...open,
    ...strikes.flatMap(({ strikeId, memberIds }) => (open.includes(strikeId) ? memberIds : [])),
  ]);
  return bearingOnHolds(
    recorded.filter(({ submission }) => mayDo(member, formOf(submission).readers)),
    openIds,
  );
}
