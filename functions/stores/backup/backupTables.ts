import type { DynamoDBClient } from '@aws-sdk/client-dynamodb';
import type { TableName } from '../../../shared/deployment/tables.ts';
import type { TableNames } from '../dynamodb/createTables.ts';
import { openTable } from '../dynamodb/stores.ts';
import { memoryTable } from '../dynamodb/memoryTable.ts';
import type { Table } from '../dynamodb/table.ts';

/**
 * The tables whose content nothing can compute anew, in the order in which a backup reads them. A ledger that goes on
 * taking facts in is read whole all the same: a fact's personal fields and its number are written before the fact is, so
 * they are there when their tables are read after it. The two other tables follow from these (`npm run rebuild`).
 */
export const backedUp = [
  'submissions',
  'personal',
  'unique',
  'outbox',
] as const satisfies readonly TableName[];
export type BackedUp = (typeof backedUp)[number];
export type BackupTables = Readonly<Record<BackedUp, Table>>;

const each = (open: (name: BackedUp) => Table): BackupTables =>
  Object.fromEntries(backedUp.map((name) => [name, open(name)])) as unknown as BackupTables;

export const dynamodbBackupTables = (client: DynamoDBClient, names: TableNames): BackupTables =>
  each(openTable(client, names));

/** The twins in memory. */
export const memoryBackupTables = (): BackupTables => each(() => memoryTable());

/** The tables in which a row stands; a restore asks for none. */
export async function filledTables(tables: BackupTables): Promise<readonly BackedUp[]> {
  const filled: BackedUp[] = [];
  for (const name of backedUp)
    for await (const rows of tables[name].scan())
      if (rows.length > 0) {
        filled.push(name);
        break;
      }
  return filled;
}
