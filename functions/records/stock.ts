import { partitions } from '../../shared/projections/items.ts';
import { foldStock } from '../../shared/stock/fold.ts';
import type { StockUse } from '../../shared/stock/uses.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { history } from '../../shared/submissions/history.ts';
import { formOf } from '../../shared/submissions/submission.ts';
import type { RouteHandler } from '../http/app.ts';
import type { RecordsDeps } from './deps.ts';
import { readStreams } from './facts.ts';

/** The latest of what was recorded, for reading and putting right. */
const MOST_RECORDS = 50;
const stockKinds: readonly string[] = ['stock-count', 'stock-move', 'stock-minimum'];

/** Parts on shelves and trucks: counts and moves from the ledger, what repairs used as it is kept for reading. */
export function stockRoutes({ ledger, projections }: RecordsDeps): Record<string, RouteHandler> {
  return {
    'GET /api/stock': async (call) => {
      const [recorded, used] = await Promise.all([
        readStreams(ledger, ['utility']),
        projections.list<readonly StockUse[]>(partitions.stockUses),
      ]);
      const own = recorded.filter(({ submission }) => stockKinds.includes(formOf(submission).kind));
      const { facts } = effectiveFacts(own);
      return call.json({
        ...foldStock(
          facts,
          used.flatMap(({ value }) => value),
        ),
        history: history(own).slice(-MOST_RECORDS),
      });
    },
  };
}
