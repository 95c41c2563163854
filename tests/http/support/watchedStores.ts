import { memoryTable } from '../../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn, type TableStores } from '../../../functions/stores/dynamodb/stores.ts';
import { memoryObjects } from '../../../functions/stores/objects/memory.ts';
import type { ObjectStore } from '../../../functions/stores/objects/objects.ts';

export interface Watched {
  readonly stores: TableStores;
  readonly objects: () => ObjectStore;
  /** Every write that was tried, whether it was let through or not: `put submissions …`. */
  readonly tried: readonly string[];
}

/**
 * The twins in memory of every table and object store, which note each write that is tried. A count of facts alone
 * would overlook a number taken, a message queued, a projection changed or an object kept.
 */
export function watchedStores(): Watched {
  const tried: string[] = [];
  const note = (what: string): void => void tried.push(what);
  const stores = storesOn((name) => {
    const table = memoryTable();
    return {
      ...table,
      put: (row, condition) => {
        note(`put ${name} ${row.partition} ${row.sort}`);
        return table.put(row, condition);
      },
      remove: (key) => {
        note(`remove ${name} ${key.partition} ${key.sort}`);
        return table.remove(key);
      },
    };
  });
  const objects = (): ObjectStore => {
    const store = memoryObjects();
    return {
      ...store,
      put: (key, bytes, options) => {
        note(`put object ${key}`);
        return store.put(key, bytes, options);
      },
      delete: (key) => {
        note(`delete object ${key}`);
        return store.delete(key);
      },
    };
  };
  return { stores, objects, tried };
}
