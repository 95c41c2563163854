import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import { failedDeliveries } from '../dispatch/failed.ts';
import { createFamilyApp, type App, type HttpDeps } from '../http/app.ts';
import { StoreUnavailable } from '../stores/faults.ts';
import type { Notices } from '../stores/outbox/notices.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';

export interface HealthDeps extends HttpDeps {
  readonly projections: ProjectionStore;
  readonly notices: Notices;
}

/**
 * A flow test that somebody else worked: static 86, residual 42, 28 psi at one 2½ in outlet, c 0.8 gives 789 gpm, and
 * about 980 gpm at 20 psi, read off a graph (K. Kolb, course slides on water supply, slides 15 and 16).
 */
function arithmeticIsRight(): boolean {
  const outlets = [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28, kind: 'hose' as const }];
  const { measuredFlowGpm, availableFlowGpm } = evaluateFlowTest({ staticPsi: 86, residualPsi: 42, outlets });
  return Math.abs(measuredFlowGpm - 789) < 1 && Math.abs((availableFlowGpm ?? 0) - 980) < 10;
}

/** Null while the store is away; what is not its own fault throws. */
const unlessAway = <T>(asked: Promise<T>): Promise<T | null> =>
  asked.catch((error: unknown) => {
    if (error instanceof StoreUnavailable) return null;
    throw error;
  });

/**
 * `GET /api/health`: whether the arithmetic gives a known answer and the store answers at all; and how many messages to
 * dispatch failed in the last days, which is for people to make good and no reason to take the service away.
 */
export function createHealthApp(deps: HealthDeps): App {
  return createFamilyApp('health', deps, {
    'GET /api/health': async (call) => {
      const arithmetic = arithmeticIsRight();
      const store = (await unlessAway(deps.projections.versionOf('health', 'probe'))) !== null;
      const failed = store ? await unlessAway(failedDeliveries(deps.notices, deps.now())) : null;
      const status = arithmetic && store ? 'ok' : 'failing';
      return call.json(
        {
          status,
          checks: { arithmetic, store },
          dispatchMessages: { failed: failed === null ? null : failed.length },
        },
        status === 'ok' ? 200 : 503,
      );
    },
  });
}
