import { claimFigures } from '../../shared/claimFigures/figures.ts';
import { rowOf } from '../../shared/claimFigures/rowOf.ts';
import { localDate } from '../../shared/costs/days.ts';
import type { RouteHandler } from '../http/app.ts';
import type { RecordsDeps } from './deps.ts';

/** What came of the claims, for the desk: the route table lets nobody else in. */
export function figureRoutes({ current, settings, now }: RecordsDeps): Record<string, RouteHandler> {
  return {
    'GET /api/claim-figures': async (call) => {
      const [claims, strikes] = await Promise.all([current.claims(), current.strikes()]);
      // Under every id the strike has had, because a claim keeps the one it was opened with.
      const byId = new Map(strikes.flatMap((strike) => strike.memberIds.map((id) => [id, strike] as const)));
      const rows = claims.map((claim) => rowOf(claim, byId.get(claim.strikeId) ?? null, settings.timeZone));
      return call.json(claimFigures(rows, localDate(now().toISOString(), settings.timeZone)));
    },
  };
}
