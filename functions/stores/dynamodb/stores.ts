import type { DynamoDBClient } from '@aws-sdk/client-dynamodb';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';
import type { Calendars } from '../calendars/calendars.ts';
import { tableCalendars } from '../calendars/tableCalendars.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { markedLedger } from '../ledger/markedLedger.ts';
import { tableLedger } from '../ledger/tableLedger.ts';
import type { Notices } from '../outbox/notices.ts';
import type { Outbox } from '../outbox/outbox.ts';
import { tableNotices } from '../outbox/tableNotices.ts';
import { tableOutbox } from '../outbox/tableOutbox.ts';
import type { ProjectionStore } from '../projections/projections.ts';
import { tableProjections } from '../projections/tableProjections.ts';
import { tableUploads } from '../uploads/tableUploads.ts';
import type { Uploads } from '../uploads/uploads.ts';
import { tableUnique } from '../unique/tableUnique.ts';
import type { Unique } from '../unique/unique.ts';
import { tableUnprojected } from '../unprojected/tableUnprojected.ts';
import type { Unprojected } from '../unprojected/unprojected.ts';
import { dynamodbClient } from './client.ts';
import type { TableNames } from './createTables.ts';
import { dynamodbTable } from './dynamodbTable.ts';
import { memoryTable } from './memoryTable.ts';
import type { Table } from './table.ts';

export interface TableStores {
  readonly ledger: Ledger;
  readonly unique: Unique;
  readonly projections: ProjectionStore;
  readonly unprojected: Unprojected;
  readonly outbox: Outbox;
  readonly notices: Notices;
  readonly calendars: Calendars;
  readonly uploads: Uploads;
}

/** The stores on their tables, whatever holds the tables. */
export function storesOn(open: (table: TableName) => Table): TableStores {
  const outbox = open('outbox');
  const unique = open('unique');
  const unprojected = tableUnprojected(open('unprojected'));
  const ledger = tableLedger({ submissions: open('submissions'), personal: open('personal') });
  return {
    ledger: markedLedger(ledger, unprojected),
    unprojected,
    unique: tableUnique(unique),
    projections: tableProjections(open('projections')),
    outbox: tableOutbox(outbox),
    notices: tableNotices(outbox),
    calendars: tableCalendars(outbox),
    uploads: tableUploads(unique),
  };
}

/** A table by the name that the stores know it by. */
export const openTable =
  (client: DynamoDBClient, names: TableNames) =>
  (table: TableName): Table => {
    const { partitionKey, sortKey } = tables[table];
    return dynamodbTable(client, { tableName: names[table], partitionKey, sortKey });
  };

export const dynamodbStores = (client: DynamoDBClient, names: TableNames): TableStores =>
  storesOn(openTable(client, names));

/** The stores of a handler. `endpoint` null: AWS itself, with the region and credentials of the environment. */
export function openDynamodbStores(settings: {
  readonly endpoint: string | null;
  readonly tableNames: TableNames;
}): TableStores {
  return dynamodbStores(dynamodbClient(settings.endpoint), settings.tableNames);
}

/** The twins in memory, with the same behaviour as the tables. */
export function memoryStores(): TableStores {
  return storesOn(() => memoryTable());
}
