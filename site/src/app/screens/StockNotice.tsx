import { lazy } from '../form/view/Lazy.tsx';

/** A line on a start page: which shelves are low, and the way to the stock. */
export const StockNotice = lazy<object>(async () => (await import('./stock/StockLine.tsx')).StockLine);
