import {
  BatchGetItemCommand,
  ConditionalCheckFailedException,
  DeleteItemCommand,
  GetItemCommand,
  paginateQuery,
  paginateScan,
  PutItemCommand,
  type AttributeValue,
  type DynamoDBClient,
} from '@aws-sdk/client-dynamodb';
import { marshall, unmarshall } from '@aws-sdk/util-dynamodb';
import { setTimeout as wait } from 'node:timers/promises';
import { StoreUnavailable } from '../faults.ts';
import { orUnavailable } from '../outage.ts';
import { assertFits, type Condition, type Key, type Row, type Table } from './table.ts';

export interface TableAddress {
  readonly tableName: string;
  readonly partitionKey: string;
  readonly sortKey: string;
}

/** Most keys that one BatchGetItem may ask for (Amazon DynamoDB API Reference, BatchGetItem). */
const batchKeys = 100;
/** How often the rest of a batch is asked for again before it counts as an outage, and the first pause, ms. */
const batchTries = 6;
const batchPauseMs = 50;

const asked = <T>(request: () => Promise<T>): Promise<T> => orUnavailable('the table', request);

/** A table over the DynamoDB API: any server that speaks it. */
export function dynamodbTable(client: DynamoDBClient, address: TableAddress): Table {
  const { tableName: TableName, partitionKey, sortKey } = address;
  const names = { '#partition': partitionKey, '#sort': sortKey };
  const keyOf = ({ partition, sort }: Key): Record<string, AttributeValue> =>
    marshall({ [partitionKey]: partition, [sortKey]: sort });
  const rowOf = (item: Record<string, AttributeValue>): Row => {
    const { [partitionKey]: partition, [sortKey]: sort, ...attributes } = unmarshall(item);
    return { partition: String(partition), sort: String(sort), attributes };
  };

  async function getBatch(keys: readonly Key[]): Promise<Row[]> {
    const rows: Row[] = [];
    let left = keys.map(keyOf);
    for (let attempt = 0; left.length > 0; attempt += 1) {
      if (attempt === batchTries) throw new StoreUnavailable('the table kept leaving keys of a batch unread');
      if (attempt > 0) await wait(batchPauseMs * 2 ** attempt);
      const answer = await asked(() =>
        client.send(
          new BatchGetItemCommand({ RequestItems: { [TableName]: { Keys: left, ConsistentRead: true } } }),
        ),
      );
      rows.push(...(answer.Responses?.[TableName] ?? []).map(rowOf));
      left = answer.UnprocessedKeys?.[TableName]?.Keys ?? [];
    }
    return rows;
  }

  return {
    async get(key) {
      const { Item } = await asked(() =>
        client.send(new GetItemCommand({ TableName, Key: keyOf(key), ConsistentRead: true })),
      );
      return Item === undefined ? null : rowOf(Item).attributes;
    },

    async getMany(keys) {
      const rows: Row[] = [];
      for (let from = 0; from < keys.length; from += batchKeys)
        rows.push(...(await getBatch(keys.slice(from, from + batchKeys))));
      return rows;
    },

    async put(row, condition) {
      assertFits(row);
      const command = new PutItemCommand({
        TableName,
        Item: { ...marshall(row.attributes), ...keyOf(row) },
        ...conditionOf(condition, partitionKey),
      });
      try {
        await asked(() => client.send(command));
        return true;
      } catch (error) {
        if (error instanceof ConditionalCheckFailedException) return false;
        throw error;
      }
    },

    async remove(key) {
      await asked(() => client.send(new DeleteItemCommand({ TableName, Key: keyOf(key) })));
    },

    async query(partition, prefix = '') {
      const begins = prefix === '' ? '' : ' AND begins_with(#sort, :prefix)';
      const pages = paginateQuery(
        { client },
        {
          TableName,
          ConsistentRead: true,
          KeyConditionExpression: `#partition = :partition${begins}`,
          ExpressionAttributeNames: prefix === '' ? { '#partition': partitionKey } : names,
          ExpressionAttributeValues: marshall({
            ':partition': partition,
            ...(prefix === '' ? {} : { ':prefix': prefix }),
          }),
        },
      );
      return asked(async () => {
        const rows: Row[] = [];
        for await (const { Items } of pages) rows.push(...(Items ?? []).map(rowOf));
        return rows;
      });
    },

    async *scan() {
      const pages = paginateScan({ client }, { TableName, ConsistentRead: true });
      for (;;) {
        const page = await asked(() => pages.next());
        if (page.done === true) return;
        yield (page.value.Items ?? []).map(rowOf);
      }
    },
  };
}

function conditionOf(condition: Condition, partitionKey: string) {
  return 'absent' in condition
    ? {
        ConditionExpression: 'attribute_not_exists(#condition)',
        ExpressionAttributeNames: { '#condition': partitionKey },
      }
    : {
        ConditionExpression: '#condition = :equals',
        ExpressionAttributeNames: { '#condition': condition.attribute },
        ExpressionAttributeValues: marshall({ ':equals': condition.equals }),
      };
}
