import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { Table } from '../../functions/stores/dynamodb/table.ts';

/** Where in a sequence of requests the store goes away, and whether the request it goes away in had its effect. */
export interface Cut {
  readonly atRequest: number;
  readonly landed: boolean;
}

export interface Cutter {
  /** Requests so far, over every table wrapped. */
  requests: number;
  cut: Cut | null;
}

/** A table that stops answering at a given request. Several tables may share a cutter, so that requests count as one line. */
export function cutTable(table: Table, cutter: Cutter): Table {
  const through = async <T>(request: () => Promise<T>): Promise<T> => {
    cutter.requests += 1;
    const { cut } = cutter;
    if (cut === null || cutter.requests < cut.atRequest) return request();
    if (cutter.requests === cut.atRequest && cut.landed) await request();
    throw new StoreUnavailable('cut');
  };
  return {
    get: (key) => through(() => table.get(key)),
    getMany: (keys) => through(() => table.getMany(keys)),
    put: (row, condition) => through(() => table.put(row, condition)),
    remove: (key) => through(() => table.remove(key)),
    query: (partition, prefix) => through(() => table.query(partition, prefix)),
    scan: () => table.scan(),
  };
}
