import { randomUUID } from 'node:crypto';
import { dynamodbClient, patience } from '../../functions/stores/dynamodb/client.ts';
import {
  createTables,
  deleteTables,
  prefixedTableNames,
} from '../../functions/stores/dynamodb/createTables.ts';
import { dynamodbStores, memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { setCredentials, startDynamodb } from '../../infra/local/dynamodb.ts';

export interface OpenedStores {
  readonly stores: TableStores;
  readonly close: () => Promise<void>;
}

/** A place where the stores can be: the contract must hold on each. */
export interface Place {
  readonly name: string;
  /** Null: the place is not there today, and why. */
  readonly absent: string | null;
  readonly open: () => Promise<OpenedStores>;
}

/** Tables of their own on a server that is already there; removed at the end. */
export async function storesAt(endpoint: string): Promise<OpenedStores> {
  setCredentials();
  // What is kept is asked about here, not how soon: a machine with other work to do answers late.
  const client = dynamodbClient(endpoint, { ...patience, requestTimeoutMs: 30_000 });
  const names = prefixedTableNames(`test-${randomUUID()}-`);
  await createTables(client, names);
  return {
    stores: dynamodbStores(client, names),
    close: async () => {
      await deleteTables(client, names);
      client.destroy();
    },
  };
}

/** The stores over HTTP on an embedded server of their own. */
export async function storesOnDynalite(): Promise<OpenedStores> {
  const server = await startDynamodb({ folder: null, port: 0 });
  const { stores, close } = await storesAt(server.endpoint);
  return {
    stores,
    close: async () => {
      await close();
      await server.stop();
    },
  };
}

const elsewhere = process.env['LEDGER_TEST_ENDPOINT'];
/** Asked before the embedded server sets any, which the SDK would then take for this one's. */
const hasCredentials =
  process.env['AWS_ACCESS_KEY_ID'] !== undefined && process.env['AWS_REGION'] !== undefined;

async function storesElsewhere(endpoint: string): Promise<OpenedStores> {
  if (endpoint.startsWith('https:') && !hasCredentials)
    throw new Error('set AWS_REGION, AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY: docs/contract-suite.md');
  return storesAt(endpoint);
}

/**
 * The twin in memory, the embedded server over HTTP, and any server of the DynamoDB API that `LEDGER_TEST_ENDPOINT`
 * names (an emulator, or `https://dynamodb.<region>.amazonaws.com`): docs/contract-suite.md.
 */
export const places: readonly Place[] = [
  {
    name: 'twin in memory',
    absent: null,
    open: async () => ({ stores: memoryStores(), close: async () => undefined }),
  },
  { name: 'embedded DynamoDB API over HTTP', absent: null, open: storesOnDynalite },
  {
    name: 'endpoint of LEDGER_TEST_ENDPOINT',
    absent: elsewhere === undefined ? 'LEDGER_TEST_ENDPOINT is not set' : null,
    open: () => storesElsewhere(elsewhere ?? ''),
  },
];
