import {
  CreateTableCommand,
  DeleteTableCommand,
  ResourceInUseException,
  waitUntilTableExists,
  type DynamoDBClient,
} from '@aws-sdk/client-dynamodb';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';

export type TableNames = Readonly<Record<TableName, string>>;

/** Physical names with a common beginning. On AWS the stack names them; this is for one machine and for tests. */
export function prefixedTableNames(prefix: string): TableNames {
  return Object.fromEntries(Object.keys(tables).map((name) => [name, `${prefix}${name}`])) as TableNames;
}

/**
 * Creates the tables that are not there yet, and waits until all of them serve. For one machine and for tests: on AWS the
 * stack makes them.
 */
export async function createTables(client: DynamoDBClient, names: TableNames): Promise<void> {
  for (const [table, { partitionKey, sortKey }] of Object.entries(tables))
    await client
      .send(
        new CreateTableCommand({
          TableName: names[table as TableName],
          BillingMode: 'PAY_PER_REQUEST',
          AttributeDefinitions: [
            { AttributeName: partitionKey, AttributeType: 'S' },
            { AttributeName: sortKey, AttributeType: 'S' },
          ],
          KeySchema: [
            { AttributeName: partitionKey, KeyType: 'HASH' },
            { AttributeName: sortKey, KeyType: 'RANGE' },
          ],
        }),
      )
      .catch((error: unknown) => {
        if (!(error instanceof ResourceInUseException)) throw error;
      });
  for (const TableName of Object.values(names))
    await waitUntilTableExists({ client, maxWaitTime: 60, minDelay: 1, maxDelay: 2 }, { TableName });
}

/** Removes what `createTables` made. For tests against a server that outlives them. */
export async function deleteTables(client: DynamoDBClient, names: TableNames): Promise<void> {
  for (const TableName of Object.values(names)) await client.send(new DeleteTableCommand({ TableName }));
}
