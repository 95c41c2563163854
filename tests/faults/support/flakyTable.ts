import type { Table } from '../../../functions/stores/dynamodb/table.ts';
import { StoreUnavailable } from '../../../functions/stores/faults.ts';

/**
 * What becomes of one request: `fails` before it has any effect; `lands-unanswered` after; `sent-twice` when only the
 * first answer was lost and the SDK asked again, so that a conditional write then meets its own first try.
 */
export type Luck = 'fine' | 'fails' | 'lands-unanswered' | 'sent-twice';

/** A table whose requests end as `luck` says, one after the other. */
export function flakyTable(table: Table, luck: () => Luck): Table {
  const meet = async <T>(request: () => Promise<T>): Promise<T> => {
    const now = luck();
    if (now === 'fails') throw new StoreUnavailable('it was not asked');
    if (now === 'sent-twice') await request();
    const answer = await request();
    if (now === 'lands-unanswered') throw new StoreUnavailable('its answer was lost');
    return answer;
  };
  return {
    get: (key) => meet(() => table.get(key)),
    getMany: (keys) => meet(() => table.getMany(keys)),
    put: (row, condition) => meet(() => table.put(row, condition)),
    remove: (key) => meet(() => table.remove(key)),
    query: (partition, prefix) => meet(() => table.query(partition, prefix)),
    scan: () => table.scan(),
  };
}
