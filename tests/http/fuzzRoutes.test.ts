import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { routes, type Route } from '../../shared/deployment/routes.ts';
import { hasWords } from '../../shared/words/index.ts';
import { uuid } from '../support/submissions.ts';
import { fuzzRuns, knownWorld, type KnownWorld } from './support/knownWorld.ts';

/**
 * Every route of the table with what no program of ours would send: paths, queries and bodies, over a world that knows
 * a strike, a claim and a hydrant. What must hold is common practice, and RFC 9457 for the form of the answer: a problem
 * document, never a fault of ours, never a write of any kind. `FUZZ_RUNS=20000` sends as many to each route.
 */
const { runs: RUNS, time: TIME } = fuzzRuns({ usual: 120, seed: 20_260_311 });

let known: KnownWorld;
beforeAll(async () => {
  known = await knownWorld();
});

const odd = fc.oneof(
  fc.constantFrom('..', '%00', '-1', '1e999', 'null', '__proto__', 'constructor', '=1+1', uuid(1), 'H-1', ''),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ minLength: 2000, maxLength: 3000 }),
);
const queries = fc.dictionary(
  fc.constantFrom(
    ...['find', 'near', 'within', 'limit', 'answers', 'from', 'to', 'format', 'year', 'q', 'by', 'until'],
  ),
  odd,
);
const deep = fc.nat({ max: 300 }).map((depth) => `${'['.repeat(depth)}${']'.repeat(depth)}`);
const bodies = fc.oneof(
  fc.jsonValue({ maxDepth: 4 }).map((value) => JSON.stringify(value)),
  fc
    .dictionary(
      fc.constantFrom(
        'letter',
        'text',
        'mode',
        'find',
        'valves',
        'submissionId',
        'sha256',
        'subject',
        'kind',
      ),
      fc.jsonValue({ maxDepth: 3 }),
    )
    .map((value) => JSON.stringify(value)),
  fc.string({ unit: 'binary', maxLength: 300 }),
  deep,
  fc.constantFrom(
    '{"a":1',
    '"',
    'NaN',
    '{"__proto__":{"x":1}}',
    `{"a":"${'x'.repeat(400_000)}"}`,
    '\uFEFF{}',
  ),
);

const escaped = (text: string): string => {
  try {
    return encodeURIComponent(text);
  } catch {
    // Half of a surrogate pair, which no browser can send.
    return 'half';
  }
};
const pathOf = (route: Route, parts: readonly string[]): string => {
  let at = 0;
  return route.path.replaceAll(/\{[^}]+\}/g, () => {
    const part = escaped(parts[at++ % parts.length] ?? 'x');
    // An empty part, or dots alone, is another path by RFC 3986, 5.2.4.
    return part === '' || /^\.+$/.test(part) ? 'x' : part;
  });
};

async function call(route: Route, path: string, body: string | null) {
  const role = route.allowed === 'anyone' ? null : route.allowed.includes('clerk') ? 'clerk' : 'crew';
  const token = role === null ? null : await known.tokenFor(role);
  const response = await known.world.apps[route.family].request(path, {
    method: route.method,
    headers: {
      ...(token === null ? {} : { authorization: `Bearer ${token}` }),
      ...(body === null ? {} : { 'content-type': 'application/json' }),
    },
    ...(body === null ? {} : { body }),
  });
  return { status: response.status, type: response.headers.get('content-type'), text: await response.text() };
}

type Answered = Awaited<ReturnType<typeof call>>;

/** A good answer to a question, or a problem document in words; what is wrong with a body is said field by field. */
function isAnswered({ status, type, text }: Answered, good: readonly number[]): boolean {
  if (good.includes(status)) return true;
  if (![400, 404, 409, 413, 422].includes(status) || type !== 'application/problem+json') return false;
  const { title, problems = [] } = JSON.parse(text) as { title: string; problems?: { code: string }[] };
  return (
    title !== '' &&
    (status !== 422 || problems.length > 0) &&
    problems.every(({ code }) => hasWords(`problem.${code}`))
  );
}

/** Bodies that only ask: one that is good by chance is answered, and records nothing. */
const asks = ['/api/search', '/api/network/{hydrantId}/closing'];

const goodOf = (route: Route): readonly number[] => {
  // Nothing was ever published in this world, and the health route says so.
  if (route.path === '/api/health') return [200, 503];
  return route.method === 'GET' || asks.includes(route.path) ? [200] : [];
};

describe.each(routes)('$method $path', (route) => {
  it('answers whatever is asked, and writes nothing', TIME, async () => {
    const before = known.written();
    await fc.assert(
      fc.asyncProperty(
        fc.array(odd, { minLength: 1, maxLength: 3 }),
        queries,
        bodies,
        async (parts, query, body) => {
          const search = Object.entries(query)
            .map(([name, value]) => `${name}=${escaped(value)}`)
            .join('&');
          const path = `${pathOf(route, parts)}${search === '' ? '' : `?${search}`}`;
          const posted = route.method === 'POST' ? body : null;
          const answer = await call(route, path, posted);
          const well = isAnswered(answer, goodOf(route)) && known.world.logged.length === 0;
          // Said only where it failed: the longest bodies take longer to print than to send.
          if (!well)
            expect.fail(JSON.stringify({ path, posted, answer, logged: known.world.logged }).slice(0, 1500));
        },
      ),
      RUNS,
    );
    expect(known.written()).toEqual(before);
  });
});
