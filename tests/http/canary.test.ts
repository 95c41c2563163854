import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storesOn } from '../../functions/stores/dynamodb/stores.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { serverWritten } from '../../shared/access.ts';
import { routeKey, routes, type Family, type Route } from '../../shared/deployment/routes.ts';
import type { Role } from '../../shared/roles.ts';
import { factKinds, type FactKind } from '../../shared/submissions/kinds.ts';
import { bodyWithCanary } from '../support/canaries.ts';
import { sampleSubjectTypes } from '../support/sampleBodies.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility, uuid } from '../support/submissions.ts';
import { listen } from './support/spoken.ts';
import { testWorld, type World } from './support/world.ts';

/**
 * Words of people, on the way through every route of the table, with bodies that are taken, refused and broken and with
 * stores that fail. None may be in a line of the log, whoever sent it. In an answer that refuses, none of another person's
 * may be; the sender's own may be repeated to the sender, and only where the answer says what is wrong with what was
 * sent (404, 409, 422). What is said to somebody who may not ask, or of a fault of ours, repeats nothing.
 */
const kept = 'qxkeptanna';
const sent = 'qxsentbert';
const phone = '303-555-0147';
const mayRepeat = [404, 409, 422];

/** While set, every table and every object store fails with it. */
let fault: ((asked: string) => Error) | null = null;
const breakable = <T extends object>(store: T): T =>
  new Proxy(store, {
    get: (whole, name) => {
      const own: unknown = Reflect.get(whole, name);
      if (typeof own !== 'function') return own;
      return (...given: readonly unknown[]): unknown => {
        if (fault) throw fault(JSON.stringify([kept, given]));
        return Reflect.apply(own as (...args: unknown[]) => unknown, whole, given);
      };
    },
  });
const faults: readonly ((asked: string) => Error)[] = [
  // A message of several lines, as drivers and parsers write them.
  (asked) => new Error(`no such item:\n    at ${kept} ${asked}`),
  (asked) => new StoreUnavailable(asked, { cause: new Error(asked) }),
  (asked) => Object.assign(new TypeError(asked), { Item: asked, detail: { S: kept } }),
];

let world: World;
let heard: ReturnType<typeof listen>;
const tokens = new Map<Role, string>();
const subjects = { strike: onStrike(1), hydrant: onHydrant('H-1'), claim: onClaim(2), utility: onUtility };
const factOf = (kind: FactKind, number: number, word: string) =>
  fact(
    kind,
    number,
    kind === 'claim-opened' ? onClaim(2) : subjects[sampleSubjectTypes[kind]],
    {
      ...bodyWithCanary(kind, word),
      ...(kind === 'claim-opened' ? { strikeId: uuid(1) } : {}),
      ...(kind === 'strike' ? { hydrantId: 'H-1' } : {}),
    },
    { person: { personId: word }, device: { deviceId: word } },
  );
/** What people send; the rest only the server makes. */
const sendable = factKinds.filter((kind) => !serverWritten.includes(kind));
const numberOf = (kind: FactKind): number =>
  kind === 'strike' ? 1 : kind === 'claim-opened' ? 2 : 10 + factKinds.indexOf(kind);

interface Answered {
  readonly status: number;
  readonly text: string;
}
interface Asked {
  readonly route: Pick<Route, 'method' | 'family' | 'allowed'>;
  readonly path: string;
  readonly body?: string | undefined;
  readonly token?: string;
}
async function ask({ route, path, body, token }: Asked): Promise<Answered> {
  const role = route.allowed === 'anyone' ? null : route.allowed.includes('manager') ? 'manager' : 'crew';
  const bearer = token ?? (role === null ? undefined : tokens.get(role));
  const answer = await world.apps[route.family].request(path, {
    method: route.method,
    headers: {
      'user-agent': sent,
      'accept-language': `en;q=0.5, ${sent}`,
      ...(bearer === undefined ? {} : { authorization: `Bearer ${bearer}` }),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    },
    ...(body === undefined ? {} : { body }),
  });
  return {
    status: answer.status,
    text: `${JSON.stringify([...answer.headers])} ${await answer.text()}`.toLowerCase(),
  };
}

/** Asks, and looks at what was answered and at what was said meanwhile. Answers the status. */
async function askAndListen(asked: Asked): Promise<number> {
  const { status, text } = await ask(asked);
  const said = heard.since();
  const about = `${asked.route.method} ${asked.path} ${asked.body ?? ''} ${status}`.slice(0, 600);
  for (const word of [kept, sent, phone]) expect(said.includes(word), `${about} logged ${said}`).toBe(false);
  if (status >= 400 || asked.route.allowed === 'anyone')
    expect(text.includes(kept), `${about} answered ${text.slice(0, 600)}`).toBe(false);
  if (status >= 400 && !mayRepeat.includes(status))
    for (const word of [sent, phone])
      expect(text.includes(word), `${about} answered ${text.slice(0, 600)}`).toBe(false);
  return status;
}

const known: Readonly<Record<string, string>> = {
  strikeId: uuid(1),
  hydrantId: 'H-1',
  claimId: uuid(2),
  letter: 'follow-up',
  sha256: 'a1'.repeat(32),
};
const pathOf = ({ path }: Route, part: (name: string) => string): string =>
  path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(part(name)));
const onKnown = (route: Route): string => pathOf(route, (name) => known[name] ?? sent);
const inQuery = `?${['find', 'near', 'within', 'limit', 'from', 'to', 'format', 'strike', 'q', 'plate']
  .map((name) => `${name}=${encodeURIComponent(`${sent} ${phone}`)}`)
  .join('&')}`;

/** What somebody's words look like in a field that wants something else. */
const spoilt = fc.constantFrom<unknown>(
  `${sent} Example`,
  `${sent}@example.com`,
  `PL ${sent}`,
  phone,
  `${sent}\n    at ${sent} ${phone}`,
  'x'.repeat(5000) + sent,
  [sent, phone],
  { [sent]: phone },
);
function placesIn(value: unknown, at: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([name, inner]) => placesIn(inner, [...at, name]))];
}
function withAt(value: unknown, [head, ...rest]: readonly string[], leaf: unknown): unknown {
  if (head === undefined) return leaf;
  const copy = structuredClone(value) as Record<string, unknown>;
  copy[head] = withAt(copy[head], rest, leaf);
  return copy;
}
/**
 * Bodies of the routes that take something else than a submission, good but for words where codes are wanted; a packet's
 * is never good, because each would be drawn. A route that is new is sent words alone.
 */
const bodies: Readonly<Record<string, object>> = {
  '/api/search': { find: sent },
  '/api/network/{hydrantId}/closing': { links: [sent] },
  '/api/dispatch/retry': { subject: { type: 'hydrant', hydrantId: sent }, number: 1, recipientId: sent },
  '/api/claims/{claimId}/letters': { letter: 'follow-up', text: sent, to: sent },
  '/api/claims/{claimId}/packet': { mode: sent, changes: sent, demandCents: 5 },
  '/api/evidence/uploads': {
    subject: onStrike(1),
    submissionId: uuid(1),
    sha256: 'a1'.repeat(32),
    name: `${sent}.jpg`,
  },
};
const malformed = [
  `{"name":"${sent}\n    at ${sent} ${phone}"`,
  `${sent} ${phone}`,
  JSON.stringify({ [sent]: phone, __proto__: null }),
  `{"__proto__":{"${sent}":"${phone}"}}`,
  JSON.stringify([sent]),
  JSON.stringify(sent),
  JSON.stringify({ name: `${sent}\uD800` }),
  JSON.stringify({ [sent]: 'x'.repeat(300_000) }),
  `${'['.repeat(60)}"${sent}"${']'.repeat(60)}`,
];

beforeAll(async () => {
  world = await testWorld({
    stores: storesOn(() => breakable(memoryTable())),
    objects: () => breakable(memoryObjects()),
  });
  for (const role of ['crew', 'clerk', 'manager'] as const)
    tokens.set(
      role,
      await world.issuer.token({ groups: [role], personId: `${sent}-${role}`, name: `${sent} Example` }),
    );
  heard = listen(world.logged);
});
afterAll(() => heard.stop());

const submissionsRoute = routes.find(({ path }) => path === '/api/submissions')!;
const posts = routes.filter(({ method }) => method === 'POST');

describe('somebody’s words', () => {
  it('are in no line of the log when their report is taken, of any kind', async () => {
    const token = await world.issuer.token({ groups: ['manager'], personId: kept, name: `${kept} Example` });
    const first: readonly FactKind[] = ['strike', 'claim-opened'];
    const kinds = [...first, ...sendable.filter((kind) => !first.includes(kind))];
    const statuses = new Map<FactKind, number>();
    for (const kind of kinds) {
      const body = JSON.stringify(factOf(kind, numberOf(kind), kept));
      // The sender's own words, here: what must not be in the log is the same.
      const { status } = await ask({ route: submissionsRoute, path: submissionsRoute.path, body, token });
      const said = heard.since();
      expect(said.includes(kept), `${kind} logged ${said}`).toBe(false);
      statuses.set(kind, status);
    }
    const refused = [...statuses].filter(([, status]) => status !== 201);
    expect(refused.map(([kind, status]) => `${kind} ${status}`)).toEqual([]);
  });

  it('are in no answer to another who sends something else under the same id', async () => {
    for (const kind of sendable) {
      const body = JSON.stringify(factOf(kind, numberOf(kind), sent));
      const status = await askAndListen({ route: submissionsRoute, path: submissionsRoute.path, body });
      expect([kind, status]).toEqual([kind, 409]);
    }
  });

  it('are in no line and no refusal of any route that is asked with them in path, query and token', async () => {
    const seen = new Set<number>();
    for (const route of routes)
      for (const path of [onKnown(route), pathOf(route, () => `${sent} ${phone}`)])
        for (const query of ['', inQuery]) {
          const body = route.method === 'POST' ? '{}' : undefined;
          for (const token of [undefined, `${sent}.${sent}.${sent}`, tokens.get('crew')!])
            seen.add(await askAndListen({ route, path: `${path}${query}`, body, ...(token && { token }) }));
        }
    expect([...seen].sort()).toEqual(expect.arrayContaining([200, 401, 403, 404, 422]));
  });

  it('are in no line for a route that there is not, nor for another way of asking', async () => {
    for (const family of new Set(routes.map((route) => route.family)))
      for (const method of ['GET', 'POST', 'PUT', 'DELETE'] as const) {
        const route = { method, family, allowed: ['manager'] } as unknown as Asked['route'];
        const path = `/api/${sent}/${phone}?plate=${sent}`;
        expect(
          await askAndListen({ route, path, ...(method === 'GET' ? {} : { body: malformed[0]! }) }),
        ).toBe(404);
      }
  });

  it.each(posts.map((route) => [routeKey(route), route] as const))(
    'are in no line and no refusal of a body that is malformed: %s',
    async (_, route) => {
      for (const body of malformed) {
        const status = await askAndListen({ route, path: onKnown(route), body });
        expect([body.slice(0, 50), status < 500]).toEqual([body.slice(0, 50), true]);
      }
      const good = bodies[route.path] ?? {};
      await fc.assert(
        fc.asyncProperty(fc.nat(), spoilt, async (where, value) => {
          const places = [...placesIn(good), ['no-such-field'], [sent]];
          const body = JSON.stringify(withAt(good, places[where % places.length]!, value));
          expect(await askAndListen({ route, path: onKnown(route), body })).toBeLessThan(500);
        }),
        { numRuns: 25 },
      );
    },
  );

  it('are in no line and in nobody else’s refusal where they stand in a wrong field of a report', async () => {
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...factKinds),
        fc.nat(),
        spoilt,
        fc.nat({ max: 5000 }),
        async (kind, where, value, n) => {
          const whole = factOf(kind, 10_000 + n, sent);
          const places = [...placesIn(whole), ['body', 'no-such-field'], ['body', sent]];
          const body = JSON.stringify(withAt(whole, places[where % places.length]!, value));
          if ((await askAndListen({ route: submissionsRoute, path: submissionsRoute.path, body })) >= 400)
            refused += 1;
        },
      ),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  it('are in no line and no answer when a store fails with them in its message, on any route', async () => {
    const failed = new Set<Family>();
    try {
      for (const one of faults)
        for (const route of routes) {
          const body =
            route === submissionsRoute
              ? JSON.stringify(factOf('strike', 7777, sent))
              : JSON.stringify(bodies[route.path] ?? {});
          fault = one;
          const path = onKnown(route);
          const status = await askAndListen({ route, path, ...(route.method === 'POST' && { body }) });
          if (status >= 500) failed.add(route.family);
        }
    } finally {
      fault = null;
    }
    expect([...failed].sort()).toEqual([...new Set(routes.map(({ family }) => family))].sort());
  });

  it('are in no line when what follows a report that was taken fails', async () => {
    const after = await testWorld({
      afterAppend: async ({ submission }) => {
        throw faults[0]!(JSON.stringify(submission));
      },
    });
    for (const kind of sendable.filter((one) => sampleSubjectTypes[one] === 'strike')) {
      const { status } = await after.submit('manager', factOf(kind, numberOf(kind), kept));
      expect([kind, status]).toEqual([kind, 201]);
    }
    expect(after.logged.some(({ event }) => event === 'after-append-failed')).toBe(true);
    expect(JSON.stringify(after.logged).toLowerCase()).not.toContain(kept);
  });
});
