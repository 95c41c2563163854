import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { CurrentState } from './current.ts';

/** The streams that may hold flow tests of a hydrant: its own, and those of every strike it had. */
export async function flowTestStreams(
  current: Pick<CurrentState, 'strike'>,
  hydrantId: string,
  status: HydrantStatus | null,
): Promise<readonly Stream[]> {
  if (!status || status.flowTestIds.length === 0) return [];
  // A test after a repair stands in its strike's stream, which goes by every id that links joined.
  const strikeIds = [...status.open, ...status.past]
    .filter(({ cause }) => cause === 'strike')
    .map(({ outageId }) => outageId);
  const strikes = await Promise.all(strikeIds.map((strikeId) => current.strike(strikeId)));
  return [
    streamOf({ type: 'hydrant', hydrantId }),
    ...strikes.flatMap((strike) =>
      (strike?.memberIds ?? []).map((strikeId) => streamOf({ type: 'strike', strikeId })),
    ),
  ];
}
