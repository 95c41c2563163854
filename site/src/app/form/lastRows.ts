import { readStored, writeStored } from '../core/storage.ts';
import { rowsOf, textOf, type Value, type Values } from './nodes.ts';

/** Who and what worked last time on this device, so that the same people start with one touch. */
const fieldsOf: Readonly<Record<string, readonly string[]>> = {
  crew: ['workerId', 'laborClass'],
  machines: ['machineCode', 'description'],
};
const MOST = 12;
const keyOf = (list: string): string => `last.${list}`;

const bare = (row: Values, list: string): Record<string, string> =>
  Object.fromEntries((fieldsOf[list] ?? []).map((name) => [name, textOf(row[name]).trim()]));

/** What a row of this list is told apart by. */
export const idOf = (row: Values, list: string): string => textOf(row[fieldsOf[list]?.[0] ?? '']).trim();

/** Kept when somebody starts: then the rows are those who are there. Rows that say nobody are left out. */
export function keepLast(list: string, rows: readonly Values[]): void {
  const known = rows.map((row) => bare(row, list)).filter((row) => idOf(row, list) !== '');
  if (known.length > 0) writeStored(keyOf(list), known.slice(0, MOST));
}

/** The rows of last time that are not among these. */
export function lastNotIn(list: string, rows: readonly Values[]): readonly Values[] {
  const kept = readStored(keyOf(list));
  const last = Array.isArray(kept) ? rowsOf(kept as Value) : [];
  return last
    .map((row) => bare(row, list))
    .filter((row) => idOf(row, list) !== '' && !rows.some((each) => idOf(each, list) === idOf(row, list)));
}
