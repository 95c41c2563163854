import { ScanCommand, type AttributeValue } from '@aws-sdk/client-dynamodb';
import { dynamodbClient } from '../../../functions/stores/dynamodb/client.ts';
import { localTableNames } from '../../../infra/local/dynamodb.ts';
import type { TableName } from '../../../shared/deployment/tables.ts';

export interface KeptItem {
  readonly table: TableName;
  readonly item: Record<string, AttributeValue>;
  /** As storage is billed: names and values in UTF-8 and 100 bytes (Amazon DynamoDB developer guide, "Item sizes"). */
  readonly bytes: number;
}

const utf8 = (text: string): number => Buffer.byteLength(text);
const valueBytes = (value: AttributeValue): number => {
  if (value.S !== undefined) return utf8(value.S);
  if (value.N !== undefined) return Math.ceil(value.N.length / 2) + 1;
  return utf8(JSON.stringify(value));
};

/** Every item of every table, with its size. */
export async function allItems(endpoint: string): Promise<readonly KeptItem[]> {
  const client = dynamodbClient(endpoint);
  try {
    const found: KeptItem[] = [];
    for (const table of Object.keys(localTableNames) as TableName[]) {
      let from: Record<string, AttributeValue> | undefined;
      do {
        const page = await client.send(
          new ScanCommand({ TableName: localTableNames[table], ExclusiveStartKey: from }),
        );
        for (const item of page.Items ?? []) {
          const attributes = Object.entries(item).map(([name, value]) => utf8(name) + valueBytes(value));
          found.push({ table, item, bytes: 100 + attributes.reduce((sum, bytes) => sum + bytes, 0) });
        }
        from = page.LastEvaluatedKey;
      } while (from);
    }
    return found;
  } finally {
    client.destroy();
  }
}
