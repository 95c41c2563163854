import * as z from 'zod';
import { mayAnswer, mayBePrivate, privateMatches, type PrivateWay } from '../../shared/search/private.ts';
import { LEAST_FIND, search } from '../../shared/search/search.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import type { Stream } from '../../shared/submissions/envelope.ts';
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
export function searchRoutes({
  current,
  ledger,
  inventory,
  settings,
}: RecordsDeps): Record<string, RouteHandler> {
  return {
    // A POST that records nothing: what is looked for may be a plate, and addresses end up in logs.
    'POST /api/search': async (call) => {
      const asked = question.safeParse(await readJson(call), { reportInput: true });
      if (!asked.success) return refuse('invalid', problemsFromZod(asked.error.issues));
      const { find } = asked.data;
      const [strikes, claims, privately, edition] = await Promise.all([
        current.strikes(),
        current.claims(),
        privatelyFound(ledger, find),
        inventory.current(),
      ]);
      const placeOf = (hydrantId: string): string | null => edition?.byId.get(hydrantId)?.place ?? null;
      const hits = search({ find, strikes, claims, timeZone: settings.timeZone, placeOf, privately });
      return call.json({ hits: hits.slice(0, MOST_HITS), more: Math.max(0, hits.length - MOST_HITS) });
    },
  };
}

/**
 * Which streams answer by their erasable fields, and by which. No index of plates, names and numbers is kept, so that
 * one that is erased is gone everywhere: the fields are looked through, and what is found there is read again as it
 * stands, corrections applied.
 */
async function privatelyFound(
  ledger: Ledger,
  find: string,
): Promise<ReadonlyMap<string, ReadonlySet<PrivateWay>>> {
  const found = new Map<string, ReadonlySet<PrivateWay>>();
  if (!mayBePrivate(find)) return found;
  const maybe = new Set<Stream>();
  for await (const page of ledger.scanPersonal())
    for (const { stream, fields } of page) if (mayAnswer(fields, find)) maybe.add(stream);
  for (const stream of maybe) {
    const ways = (await factsOf(ledger, [stream])).flatMap((each) => privateMatches(each, find));
    if (ways.length > 0) found.set(stream, new Set(ways));
  }
  return found;
}
