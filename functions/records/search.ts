import * as z from 'zod';
import { LEAST_FIND, mayBePlate, plateMatches, search } from '../../shared/search/search.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { ofKind } from '../../shared/submissions/effective.ts';
import type { RouteHandler } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { refuse } from '../http/refused.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { RecordsDeps } from './deps.ts';
import { factsOf } from './facts.ts';

const LONGEST_FIND = 80;
const question = z.strictObject({ find: z.string().trim().min(LEAST_FIND).max(LONGEST_FIND) });
/** So that one search of a common word does not send the whole archive. */
const MOST_HITS = 100;

/** Looking a case up, for the desk: the route table lets nobody else in. */
export function searchRoutes({ current, ledger, settings }: RecordsDeps): Record<string, RouteHandler> {
  return {
    // A POST that records nothing: what is looked for may be a plate, and addresses end up in logs.
    'POST /api/search': async (call) => {
      const asked = question.safeParse(await readJson(call), { reportInput: true });
      if (!asked.success) return refuse('invalid', problemsFromZod(asked.error.issues));
      const { find } = asked.data;
      const [strikes, claims, plateStrikes] = await Promise.all([
        current.strikes(),
        current.claims(),
        strikesOfPlate(ledger, find),
      ]);
      const hits = search({ find, strikes, claims, timeZone: settings.timeZone, plateStrikes });
      return call.json({ hits: hits.slice(0, MOST_HITS), more: Math.max(0, hits.length - MOST_HITS) });
    },
  };
}

/**
 * Strikes of whose vehicles the plate is. No index of plates is kept, so that one that is erased is gone everywhere:
 * the erasable fields are looked through, and what is found there is read again as it stands, corrections applied.
 */
async function strikesOfPlate(ledger: Ledger, find: string): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  if (!mayBePlate(find)) return found;
  const maybe = new Set<`strike:${string}`>();
  for await (const page of ledger.scanPersonal())
    for (const { stream, fields } of page)
      if (
        stream.startsWith('strike:') &&
        Object.entries(fields).some(
          ([path, value]) =>
            path.endsWith('.plate') && typeof value === 'string' && plateMatches(value, find),
        )
      )
        maybe.add(stream as `strike:${string}`);
  for (const stream of maybe)
    for (const { fact } of ofKind(await factsOf(ledger, [stream]), 'party'))
      if (fact.subject.type === 'strike' && fact.body.vehicles.some(({ plate }) => plateMatches(plate, find)))
        found.add(fact.subject.strikeId);
  return found;
}
