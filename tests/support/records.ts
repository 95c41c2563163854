import type { ClaimState } from '../../shared/claims/state.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import type { AppServer } from './app.ts';

/** The strikes at a hydrant, as the server knows them. */
export async function strikesAt(server: AppServer, hydrantId: string): Promise<StrikeState[]> {
  const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
  return strikes.filter((strike) => strike.hydrantId === hydrantId);
}

/** Everything recorded about a strike, oldest first. */
export async function historyOf(server: AppServer, strikeId: string): Promise<HistoryEntry[]> {
  return (await server.ask<{ history: HistoryEntry[] }>('manager', `/api/strikes/${strikeId}`)).history;
}

/** What the submissions of one kind about a strike say, oldest first. */
export async function bodiesOf<K extends FactKind>(
  server: AppServer,
  strikeId: string,
  kind: K,
): Promise<BodyOf<K>[]> {
  return (await historyOf(server, strikeId))
    .filter(({ recorded }) => recorded.submission.kind === kind)
    .map(({ recorded }) => recorded.submission.body as BodyOf<K>);
}

/** The first claim that is so. */
export async function claimWhere(
  server: AppServer,
  isSo: (claim: ClaimState) => boolean,
): Promise<ClaimState> {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  const claim = claims.find(isSo);
  if (!claim) throw new Error(`no such claim among ${claims.length}`);
  return claim;
}

/** Cents as the desk shows them: $1,234.50. */
export const dollars = (cents: number): string =>
  `$${(cents / 100).toFixed(2).replaceAll(/\B(?=(\d{3})+\.)/g, ',')}`;
