import { createFamilyApp, type App } from '../http/app.ts';
import { claimRoutes } from './claims.ts';
import type { RecordsDeps } from './deps.ts';
import { figureRoutes } from './figures.ts';
import { hydrantRoutes } from './hydrants.ts';
import { ledgerRoutes } from './ledger.ts';
import { searchRoutes } from './search.ts';
import { stockRoutes } from './stock.ts';
import { strikeRoutes } from './strikes.ts';
import { utilityRoutes } from './utility.ts';

export type { RecordsDeps } from './deps.ts';

/** Everything that is read: the state computed from the ledger, as far as the reader's role may see it. */
export function createRecordsApp(deps: RecordsDeps): App {
  return createFamilyApp('records', deps, {
    ...utilityRoutes(deps),
    ...strikeRoutes(deps),
    ...hydrantRoutes(deps),
    ...claimRoutes(deps),
    ...searchRoutes(deps),
    ...figureRoutes(deps),
    ...ledgerRoutes(deps),
    ...stockRoutes(deps),
  });
}
