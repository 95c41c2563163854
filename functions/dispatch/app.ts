import * as z from 'zod';
import { hydrantId as hydrantIdSchema } from '../../shared/inventory/hydrant.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { createFamilyApp, memberOf, type App, type HttpDeps } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { notFound, refuse } from '../http/refused.ts';
import { noticesOfHydrant, noticesOfStrike, undeliveredNotices, type ReadDeps } from './read.ts';
import { retryNotice } from './retry.ts';

export type DispatchAppDeps = HttpDeps & ReadDeps;

const asked = z.strictObject({
  subject: z.string().min(1).max(200),
  number: z.int().min(1).max(999_999),
});

/** What was sent to dispatch, what became of it, and whether somebody has confirmed it. */
export function createDispatchApp(deps: DispatchAppDeps): App {
  return createFamilyApp('dispatch', deps, {
    'GET /api/dispatch': async (call) => call.json(await undeliveredNotices(deps, call.var.locale)),

    'GET /api/dispatch/strikes/{strikeId}': async (call) =>
      call.json(
        (await noticesOfStrike(deps, call.req.param('strikeId') ?? '', call.var.locale)) ??
          notFound('no-such-strike'),
      ),

    'GET /api/dispatch/hydrants/{hydrantId}': async (call) => {
      const hydrantId = hydrantIdSchema.safeParse(call.req.param('hydrantId') ?? '').data;
      if (hydrantId === undefined) return notFound('no-such-hydrant');
      return call.json(await noticesOfHydrant(deps, hydrantId, call.var.locale));
    },

    'POST /api/dispatch/retry': async (call) => {
      const parsed = asked.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      await retryNotice(deps, { ...parsed.data, byPersonId: memberOf(call).personId });
      return call.json({ outcome: 'waiting' }, 202);
    },
  });
}
