import { firstDifference } from '../../../shared/submissions/canonical.ts';
import type { Row } from '../dynamodb/table.ts';
import { sealedPrefix } from '../ledger/sealed.ts';
import type { BackedUp, BackupTables } from './backupTables.ts';
import { toRowJson } from './rowJson.ts';

/** What became of a row: it was added; the same stood there; another stood there and stays; it was erased since and stays away. */
export type PutBack = 'added' | 'same' | 'other' | 'erased';

/** Rows of personal fields by what they begin with: those of each submission that was erased since. */
export const erasedRows = (
  erasures: readonly { readonly stream: string; readonly targetIds: readonly string[] }[],
): ReadonlySet<string> =>
  new Set(
    erasures.flatMap(({ stream, targetIds }) => targetIds.map((id) => `${stream}\n${sealedPrefix(id)}`)),
  );

/** Puts a row of a backup where none is. Nothing that stands is replaced, so it can only add. */
export async function putBack(
  tables: BackupTables,
  name: BackedUp,
  row: Row,
  erased: ReadonlySet<string>,
): Promise<PutBack> {
  if (name === 'personal' && erased.has(`${row.partition}\n${prefixIn(row.sort)}`)) return 'erased';
  if (await tables[name].put(row, { absent: true })) return 'added';
  const stands = await tables[name].get(row);
  return stands !== null &&
    firstDifference(toRowJson({ ...row, attributes: stands }), toRowJson(row)) === null
    ? 'same'
    : 'other';
}

const prefixIn = (sort: string): string => sealedPrefix(sort.slice(0, sort.lastIndexOf(':')));
