import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { CurrentState } from './current.ts';

/** Every strike that a hydrant had. */
export async function strikesOf(
  current: Pick<CurrentState, 'strike'>,
  { open, past }: HydrantStatus,
): Promise<readonly StrikeState[]> {
  const strikeIds = [...open, ...past]
    .filter(({ cause }) => cause === 'strike')
    .map(({ outageId }) => outageId);
  const strikes = await Promise.all(strikeIds.map((strikeId) => current.strike(strikeId)));
  return strikes.filter((strike) => strike !== null);
}

/** The streams of strikes, by every id that links joined. */
export const streamsOfStrikes = (strikes: readonly StrikeState[]): readonly Stream[] =>
  strikes.flatMap(({ memberIds }) => memberIds.map((strikeId) => streamOf({ type: 'strike', strikeId })));

/** The streams of every strike that a hydrant had. */
export const strikeStreams = async (
  current: Pick<CurrentState, 'strike'>,
  status: HydrantStatus,
): Promise<readonly Stream[]> => streamsOfStrikes(await strikesOf(current, status));

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
