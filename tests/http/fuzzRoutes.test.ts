import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { routes, type Route } from '../../shared/deployment/routes.ts';
import { hasWords } from '../../shared/words/index.ts';
import { uuid } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

/**
 * Every route of the table with what no program of ours would send: paths, queries and bodies. What must hold is common
 * practice, and RFC 9457 for the form of the answer: a problem document, never a fault of ours, never a record made.
 * `FUZZ_RUNS=20000` sends as many to each route.
 */
const RUNS = { numRuns: Number(process.env['FUZZ_RUNS'] ?? 120), seed: 20_260_311 };
const TIME = { timeout: Math.max(30_000, RUNS.numRuns * 60) };

let world: World;
beforeAll(async () => {
  world = await testWorld();
});

async function writes(): Promise<number> {
  let count = 0;
  for await (const page of world.stores.ledger.readAll()) count += page.length;
  return count;
}

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
  const token = role === null ? null : await world.issuer.tokenFor(role);
  const response = await world.apps[route.family]!.request(path, {
    method: route.method,
    headers: {
      ...(token === null ? {} : { authorization: `Bearer ${token}` }),
      ...(body === null ? {} : { 'content-type': 'application/json' }),
    },
    ...(body === null ? {} : { body }),
  });
  return { status: response.status, type: response.headers.get('content-type'), text: await response.text() };
}

/** What it answered must be one of: a good answer to a question, or a problem document in words. */
function expectAnswered(
  { status, type, text }: Awaited<ReturnType<typeof call>>,
  context: string,
  good: readonly number[],
): void {
  if (good.includes(status)) return;
  expect([400, 404, 409, 413, 422], context).toContain(status);
  expect(type, context).toBe('application/problem+json');
  const document = JSON.parse(text) as { title: string; problems?: { code: string; path: string }[] };
  expect(document.title, context).not.toBe('');
  // What is wrong with a body is said field by field.
  if (status === 422) expect(document.problems?.length ?? 0, context).toBeGreaterThan(0);
  for (const { code } of document.problems ?? []) expect(hasWords(`problem.${code}`), context).toBe(true);
}

/** Takes no body: whatever stands there is not read. */
const bodiless = ['/api/calendar'];

/** Nothing was ever published in this world, and the health route says so. */
const healthy = (route: Route): readonly number[] =>
  route.path === '/api/health' ? [200, 503] : [200, 201, 204, 302];

describe.each(routes)('$method $path', (route) => {
  it('answers whatever is asked', TIME, async () => {
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
          const context = JSON.stringify({ path, posted, answer }).slice(0, 1500);
          expectAnswered(
            answer,
            context,
            route.method === 'GET' || bodiless.includes(route.path) ? healthy(route) : [],
          );
          expect(world.logged, context).toEqual([]);
        },
      ),
      RUNS,
    );
    expect(await writes()).toBe(0);
  });
});
