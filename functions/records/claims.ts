import { history } from '../../shared/submissions/history.ts';
import { effectiveFacts, ofKind } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { RouteHandler } from '../http/app.ts';
import { notFound } from '../http/refused.ts';
import { claimNow } from './claimNow.ts';
import type { RecordsDeps } from './deps.ts';
import { asRecorded, factsOf } from './facts.ts';

/** Claims, for the desk: the route table lets nobody else in. */
export function claimRoutes(deps: RecordsDeps): Record<string, RouteHandler> {
  const { current, ledger } = deps;
  return {
    'GET /api/claims': async (call) => {
      const claims = await current.claims();
      const strikes = await Promise.all(
        [...new Set(claims.map(({ strikeId }) => strikeId))].map((id) => current.strike(id)),
      );
      const found = strikes.filter((strike): strike is StrikeState => strike !== null);
      // Under every id the strike has had, because a claim keeps the one it was opened with.
      const byId = Object.fromEntries(found.flatMap((strike) => strike.memberIds.map((id) => [id, strike])));
      const newestFirst = [...claims].sort((a, b) =>
        a.openedAt < b.openedAt ? 1 : a.openedAt > b.openedAt ? -1 : 0,
      );
      return call.json({ claims: newestFirst, strikes: byId });
    },

    'GET /api/claims/{claimId}': async (call) => {
      const claimId = call.req.param('claimId') ?? '';
      const claim = await current.claim(claimId);
      if (!claim) return notFound('no-such-claim');
      const strike = await current.strike(claim.strikeId);
      const streams = (strike?.memberIds ?? [claim.strikeId]).map((strikeId) =>
        streamOf({ type: 'strike', strikeId }),
      );
      const parties = ofKind(await factsOf(ledger, streams), 'party').map(asRecorded);
      const memberIds = strike?.memberIds ?? [claim.strikeId];
      const others = (await current.claims()).filter(
        (other) => other.claimId !== claimId && memberIds.includes(other.strikeId),
      );
      const recorded = withoutTrials(await ledger.readStream(streamOf({ type: 'claim', claimId })));
      const { locale } = call.var;
      const read = await claimNow(deps, { claimId, recorded, strike, others, locale });
      const state = read?.claim ?? claim;
      return call.json({
        claim: state,
        life: state.life,
        money: state.money,
        contact: read?.contact ?? null,
        shares: read?.shares ?? null,
        cautions: read?.cautions ?? [],
        strike,
        parties,
        others,
        events: effectiveFacts(recorded).facts.map(asRecorded),
        history: history(recorded),
      });
    },
  };
}
