import * as z from 'zod';
import { routeKey, routes } from '../../../shared/deployment/routes.ts';

/** Requests a second in the long run, and how many may come at once before that (a token bucket, for all callers together). */
export const throttle = z.strictObject({
  perSecond: z.int().min(1).max(10_000),
  burst: z.int().min(1).max(5_000),
});
export type Throttle = z.infer<typeof throttle>;

/**
 * Routes that cost more than others, or that should not be waited for behind them. The rest share the stage's. A limit is
 * for everybody together: whoever uses one up holds the others up on that route and on no other.
 */
export const usualThrottles: Readonly<Record<string, Throttle>> = {
  // Its own, so that whatever else is asked for holds up no report; a hundred phones that come back to signal at once.
  'POST /api/submissions': { perSecond: 50, burst: 200 },
  // A photo each, one after the other, from every phone that is back.
  'POST /api/evidence/uploads': { perSecond: 30, burst: 100 },
  // Drawn for seconds to minutes, on a machine of its own each.
  'POST /api/claims/{claimId}/packet': { perSecond: 2, burst: 5 },
  'POST /api/claims/{claimId}/letters': { perSecond: 2, burst: 5 },
  // Solves the network anew.
  'GET /api/network/{hydrantId}': { perSecond: 5, burst: 10 },
  'POST /api/network/{hydrantId}/closing': { perSecond: 5, burst: 10 },
  // Read everything that there is.
  'POST /api/search': { perSecond: 5, burst: 10 },
  'GET /api/ledger': { perSecond: 2, burst: 5 },
  'GET /api/claim-figures': { perSecond: 2, burst: 10 },
  // Sends messages to people.
  'POST /api/dispatch/retry': { perSecond: 2, burst: 5 },
  // Without a sign-in: whoever guesses at secret addresses, or only wants to keep us busy.
  'GET /api/calendar/{file}': { perSecond: 5, burst: 20 },
  'GET /api/health': { perSecond: 5, burst: 20 },
};

/** What a deployment may set of it. Left out: 50 a second and 100 at once for a route, and those above. */
export const throttleSettings = z
  .strictObject({
    usual: throttle.prefault({ perSecond: 50, burst: 100 }),
    /** By method and path as in `shared/deployment/routes.ts`: `POST /api/search`. */
    routes: z.partialRecord(z.enum(routes.map(routeKey)), throttle).prefault({}),
  })
  .prefault({});
export type ThrottleSettings = z.infer<typeof throttleSettings>;

/** The limits of the routes that have their own. */
export const routeThrottles = (settings: ThrottleSettings): Readonly<Record<string, Throttle>> => ({
  ...usualThrottles,
  ...Object.fromEntries(Object.entries(settings.routes).flatMap(([key, own]) => (own ? [[key, own]] : []))),
});
