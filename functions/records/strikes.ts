import { mayRead, strikeAsSeenBy } from '../../shared/access.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import { declaredExhibits } from '../../shared/evidence/declared.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { mayDo, type Member } from '../../shared/roles.ts';
import { sinceStrike } from '../../shared/strikes/sinceStrike.ts';
import { possibleDuplicates } from '../../shared/strikes/possibleDuplicates.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { history } from '../../shared/submissions/history.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { formOf } from '../../shared/submissions/submission.ts';
import { memberOf, type RouteHandler } from '../http/app.ts';
import { notFound } from '../http/refused.ts';
import { recordsAround } from './around.ts';
import type { RecordsDeps } from './deps.ts';
import { readStreams } from './facts.ts';

/** Strikes: the list, and one with everything that was said of it. */
export function strikeRoutes(deps: RecordsDeps): Record<string, RouteHandler> {
  const { current, ledger, inventory, evidence, exhibits } = deps;
  const claimsFor = async (member: Member): Promise<readonly ClaimState[] | null> =>
    mayRead(member, 'claim-opened') ? current.claims() : null;

  return {
    'GET /api/strikes': async (call) => {
      const member = memberOf(call);
      const [strikes, claims] = await Promise.all([current.strikes(), claimsFor(member)]);
      const byId = (await inventory.current())?.byId;
      const hydrants: Record<string, Hydrant> = {};
      for (const { hydrantId } of strikes) {
        const hydrant = hydrantId === null ? undefined : byId?.get(hydrantId);
        if (hydrant) hydrants[hydrant.hydrantId] = hydrant;
      }
      const newestFirst = [...strikes].sort((a, b) => Date.parse(b.since) - Date.parse(a.since));
      return call.json({
        strikes: newestFirst.map((strike) => strikeAsSeenBy(member, strike)),
        hydrants,
        ...(claims ? { claims } : {}),
      });
    },

    'GET /api/strikes/{strikeId}': async (call) => {
      const member = memberOf(call);
      const strike = await current.strike(call.req.param('strikeId') ?? '');
      if (!strike) return notFound('no-such-strike');
      const streams = strike.memberIds.map((strikeId) => streamOf({ type: 'strike', strikeId }));
      const { hydrantId } = strike;
      const status = hydrantId === null ? null : await current.hydrant(hydrantId);
      const [recorded, ofHydrant, around, strikes, claims] = await Promise.all([
        readStreams(ledger, streams),
        hydrantId === null ? [] : readStreams(ledger, [streamOf({ type: 'hydrant', hydrantId })]),
        recordsAround({ current, ledger }, member, status),
        current.strikes(),
        claimsFor(member),
      ]);
      const mine = ({ submission }: Recorded): boolean => mayDo(member, formOf(submission).readers);
      const readable = recorded.filter(mine);
      return call.json({
        strike: strikeAsSeenBy(member, strike),
        history: history(readable),
        ofHydrant: sinceStrike(ofHydrant.filter(mine), strike),
        around: around.filter(({ submission }) => !streams.includes(streamOf(submission.subject))),
        hydrant: hydrantId === null ? null : await inventory.hydrant(hydrantId),
        status,
        evidence: await arrivals(
          async (sha256) => {
            const known = await exhibits.find(sha256);
            // Bytes that are another's to see count as awaited, so that naming a hash is no way to ask for it.
            return (!known || mayDo(member, known.readers)) && evidence.has(sha256);
          },
          readable.flatMap(({ submission }) => declaredExhibits(submission).map(({ sha256 }) => sha256)),
        ),
        problems: effectiveFacts(readable).problems,
        possibleDuplicates: possibleDuplicates(strike, strikes),
        ...(claims ? { claims: claims.filter(ofStrike(strike)) } : {}),
      });
    },
  };
}

const ofStrike =
  ({ memberIds }: StrikeState) =>
  ({ strikeId }: ClaimState): boolean =>
    memberIds.includes(strikeId);

/** At most this many questions to the evidence store at a time. */
const ASK_AT_ONCE = 16;

/** Which of the declared exhibits have arrived. */
async function arrivals(
  has: (sha256: string) => Promise<boolean>,
  declared: readonly string[],
): Promise<Record<string, 'awaited' | 'arrived'>> {
  const hashes = [...new Set(declared)];
  const states: Record<string, 'awaited' | 'arrived'> = {};
  for (let from = 0; from < hashes.length; from += ASK_AT_ONCE)
    await Promise.all(
      hashes.slice(from, from + ASK_AT_ONCE).map(async (sha256) => {
        states[sha256] = (await has(sha256)) ? 'arrived' : 'awaited';
      }),
    );
  return states;
}
