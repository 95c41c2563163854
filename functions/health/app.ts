import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import { createFamilyApp, type App, type HttpDeps } from '../http/app.ts';
import { StoreUnavailable } from '../stores/faults.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';

export interface HealthDeps extends HttpDeps {
  readonly projections: ProjectionStore;
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

/** `GET /api/health`: whether the arithmetic gives a known answer and the store answers at all. */
export function createHealthApp(deps: HealthDeps): App {
  return createFamilyApp('health', deps, {
    'GET /api/health': async (call) => {
      const arithmetic = arithmeticIsRight();
      const store = await deps.projections.versionOf('health', 'probe').then(
        () => true,
        (error: unknown) => {
          if (error instanceof StoreUnavailable) return false;
          throw error;
        },
      );
      const status = arithmetic && store ? 'ok' : 'failing';
      return call.json({ status, checks: { arithmetic, store } }, status === 'ok' ? 200 : 503);
    },
  });
}
