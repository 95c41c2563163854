import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { wrongAnswers } from '../../shared/compute/knownAnswers.ts';
import { failedDeliveries } from '../dispatch/failed.ts';
import { createFamilyApp, type App, type HttpDeps } from '../http/app.ts';
import { StoreUnavailable } from '../stores/faults.ts';
import type { Notices } from '../stores/outbox/notices.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { PublishedStore } from '../stores/published/published.ts';
import { publicPageAt } from './publicPage.ts';

export interface HealthDeps extends HttpDeps {
  readonly projections: ProjectionStore;
  readonly notices: Notices;
  readonly published: Pick<PublishedStore, 'head'>;
  readonly settings: UtilitySettings;
  /** Which published worked examples come out wrong. */
  readonly wrong?: () => readonly string[];
}

/** Null while the store is away; what is not its own fault throws. */
const unlessAway = <T>(asked: Promise<T>): Promise<T | null> =>
  asked.catch((error: unknown) => {
    if (error instanceof StoreUnavailable) return null;
    throw error;
  });

/**
 * `GET /api/health`: whether published worked examples come out as printed, the store answers at all, and the public page that
 * stands may still be relied on; and how many messages to dispatch failed in the last days, which is for people to make
 * good and no reason to take the service away.
 */
export function createHealthApp(deps: HealthDeps): App {
  return createFamilyApp('health', deps, {
    'GET /api/health': async (call) => {
      const wrong = (deps.wrong ?? wrongAnswers)();
      const arithmetic = wrong.length === 0;
      const store = (await unlessAway(deps.projections.versionOf('health', 'probe'))) !== null;
      const failed = store ? await unlessAway(failedDeliveries(deps.notices, deps.now())) : null;
      const publicPage = await unlessAway(publicPageAt(deps.published, deps.settings, deps.now()));
      const fresh = publicPage?.state === 'good';
      const status = arithmetic && store && fresh ? 'ok' : 'failing';
      return call.json(
        {
          status,
          checks: { arithmetic, store, publicPage: fresh },
          ...(arithmetic ? {} : { wrong }),
          publicPage,
          dispatchMessages: { failed: failed === null ? null : failed.length },
        },
        status === 'ok' ? 200 : 503,
      );
    },
  });
}
