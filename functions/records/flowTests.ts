import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { CurrentState } from './current.ts';

/** The streams of every strike that a hydrant had, by every id that links joined. */
export async function strikeStreams(
  current: Pick<CurrentState, 'strike'>,
  { open, past }: HydrantStatus,
): Promise<readonly Stream[]> {
  const strikeIds = [...open, ...past]
    .filter(({ cause }) => cause === 'strike')
    .map(({ outageId }) => outageId);
  const strikes = await Promise.all(strikeIds.map((strikeId) => current.strike(strikeId)));
  return strikes.flatMap((strike) =>
    (strike?.memberIds ?? []).map((strikeId) => streamOf({ type: 'strike', strikeId })),
  );
}

/** The streams that may hold flow tests of a hydrant: its own, and those of every strike it had. */
export async function flowTestStreams(
  current: Pick<CurrentState, 'strike'>,
  hydrantId: string,
  status: HydrantStatus | null,
): Promise<readonly Stream[]> {
  if (!status || status.flowTestIds.length === 0) return [];
  // A test after a repair stands in its strike's stream.
  return [streamOf({ type: 'hydrant', hydrantId }), ...(await strikeStreams(current, status))];
}
