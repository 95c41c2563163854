import { Hono, type Context } from 'hono';
import { routeKey, routes, type Family, type Route } from '../../shared/deployment/routes.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { problem } from '../../shared/problems/problem.ts';
import { mayDo, type Member } from '../../shared/roles.ts';
import type { Locale } from '../../shared/words/index.ts';
import { describeError, type Log } from '../log/log.ts';
import { StoreUnavailable, TooLarge } from '../stores/faults.ts';
import { localeOf } from './locale.ts';
import { problemResponse } from './problemDocument.ts';
import { refuse, Refused } from './refused.ts';
import type { Verify } from './signIn.ts';

/** What every family of routes needs, whatever it does. */
export interface HttpDeps {
  readonly verify: Verify;
  readonly log: Log;
  /** The server's clock. */
  readonly now: () => Date;
  /** The utility's language, for callers that ask for none of ours. */
  readonly locale: Locale;
}

interface CallEnv {
  Variables: { member: Member | null; locale: Locale };
}
/** One request, with who asked (`call.var.member`) and in which language (`call.var.locale`). */
export type Call = Context<CallEnv>;
export type App = Hono<CallEnv>;
/** A handler does four things and no more: parse, load, decide, append. */
export type RouteHandler = (call: Call) => Promise<Response>;

/**
 * The app of one family: its routes of the table, each behind its sign-in check, everything else a 404. Throws at
 * start when the table and the handlers do not match one to one, so that no route goes unserved or unguarded.
 */
export function createFamilyApp(
  family: Family,
  deps: HttpDeps,
  handlers: Readonly<Record<string, RouteHandler>>,
): App {
  const own = routes.filter((route) => route.family === family);
  const unmatched = Object.keys(handlers).filter((key) => !own.some((route) => routeKey(route) === key));
  if (unmatched.length > 0) throw new Error(`not in the route table: ${unmatched.join(', ')}`);

  const app: App = new Hono<CallEnv>();
  app.use(async (call, next) => {
    call.set('locale', localeOf(call.req.header('accept-language'), deps.locale));
    call.set('member', null);
    // hono would answer HEAD as GET; the gateway routes no HEAD, and neither do we.
    if (call.req.method === 'HEAD') return refuse('not-found', problem('no-such-route'));
    await next();
    call.header('x-content-type-options', 'nosniff');
    if (!call.res.headers.has('cache-control')) call.header('cache-control', 'no-store');
  });
  for (const route of own) {
    const handler = handlers[routeKey(route)];
    if (!handler) throw new Error(`no handler for ${routeKey(route)}`);
    app.on(route.method, route.path.replaceAll(/\{(\w+)\}/g, ':$1'), async (call) => {
      if (route.allowed !== 'anyone') call.set('member', await signedIn(call, deps.verify, route.allowed));
      return handler(call);
    });
  }
  app.notFound((call) =>
    problemResponse(call.var.locale, {
      reason: 'not-found',
      problems: [problem('no-such-route')],
      extra: {},
    }),
  );
  app.onError((error, call) => answerError(error, call, family, deps));
  return app;
}

async function signedIn(
  call: Call,
  verify: Verify,
  allowed: Exclude<Route['allowed'], 'anyone'>,
): Promise<Member> {
  const token = /^Bearer +([\w.~+/=-]+)$/i.exec(call.req.header('authorization') ?? '')?.[1];
  if (token === undefined) return refuse('not-signed-in', problem('token-missing'));
  const member = await verify(token);
  if (!mayDo(member, allowed))
    return refuse('not-allowed', problem('role-may-not', '', { roles: allowed.join(', ') }));
  return member;
}

/** The signed-in person of a route that needs one. */
export function memberOf(call: Call): Member {
  const { member } = call.var;
  if (member === null) throw new Error(`route ${call.req.path} asks for a member but lets anyone in`);
  return member;
}

/** The one place where an error becomes an answer. What is not ours to show is logged under a reference and kept inside. */
export function answerError(
  error: unknown,
  call: Call,
  family: Family,
  deps: Pick<HttpDeps, 'log'>,
): Response {
  const { locale } = call.var;
  if (error instanceof Refused) return problemResponse(locale, error);
  if (error instanceof TooLarge)
    return problemResponse(locale, {
      reason: 'too-large',
      problems: [
        problem('item-too-large', '', {
          kilobytes: Math.ceil(error.bytes / 1024),
          maximumKb: Math.floor(error.limitBytes / 1024),
        }),
      ],
      extra: {},
    });
  const reference = crypto.randomUUID();
  // The route, never the path: a path holds ids.
  const where = { reference, family, method: call.req.method, ...describeError(error) };
  if (error instanceof StoreUnavailable) {
    deps.log({ level: 'warn', event: watchedEvents.storeUnavailable.event, ...where });
    return problemResponse(locale, { reason: 'unavailable', problems: [problem('try-again')], extra: {} });
  }
  deps.log({ level: 'error', event: watchedEvents.requestFailed.event, ...where });
  return problemResponse(locale, {
    reason: 'fault',
    problems: [problem('our-fault', '', { reference })],
    extra: { reference },
  });
}
