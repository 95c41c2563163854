import type { Stock } from '../../../../../shared/stock/fold.ts';
import type { HistoryEntry } from '../../../../../shared/submissions/history.ts';
import { useResource } from '../../core/resource.ts';

export interface StockAnswer extends Stock {
  /** The latest of what was recorded of it. */
  readonly history: readonly HistoryEntry[];
}

/** What is on the shelves and trucks. */
export const useStock = (wanted = true) => useResource<StockAnswer>(wanted ? '/api/stock' : null);
