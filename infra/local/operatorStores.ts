import { pathToFileURL } from 'node:url';
import { environmentNames as names } from '../../shared/deployment/environment.ts';
import { tables, type TableName } from '../../shared/deployment/tables.ts';
import type { ProjectorDeps } from '../../functions/project/deps.ts';
import { dynamodbBackupTables, type BackupTables } from '../../functions/stores/backup/backupTables.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import type { TableNames } from '../../functions/stores/dynamodb/createTables.ts';
import { dynamodbStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { evidenceHeld } from '../../functions/stores/evidence/byHash.ts';
import type { Erasures } from '../../functions/stores/erasures/erasures.ts';
import { objectErasures } from '../../functions/stores/erasures/objectErasures.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { openDataFolder } from './dataFolder.ts';
import { FolderInUse, localTableNames, startDynamodb } from './dynamodb.ts';
import { dataDir } from './options.ts';
import { RefusedStart } from './refusedStart.ts';

type Variables = Readonly<Record<string, string | undefined>>;

/** The stores under the hands of an operator: of a deployment, or of this machine. */
export interface OperatorStores {
  readonly stores: TableStores;
  readonly projector: ProjectorDeps;
  readonly backupTables: BackupTables;
  /** Opened when asked for, because a rebuild needs no evidence and its operator no right to it. */
  readonly evidence: () => Promise<OperatorEvidence>;
  /** `right`: what is kept is what the facts say, so that the next start has nothing to make good. */
  readonly close: (right: boolean) => Promise<void>;
}

export interface OperatorEvidence {
  readonly held: (sha256: string) => Promise<boolean>;
  readonly erasures: Erasures;
}

/**
 * A deployment's stores, when the environment names its tables as its functions have them; else those in the data folder,
 * which no server may be using.
 */
export function openOperatorStores(variables: Variables): Promise<OperatorStores> {
  return variables[tables.submissions.environment] ? openDeployment(variables) : openFolder(variables);
}

async function openDeployment(variables: Variables): Promise<OperatorStores> {
  const needed = (name: string): string => {
    const value = variables[name];
    if (value === undefined || value === '') throw new RefusedStart('command.tables-variable', { name });
    return value;
  };
  const tableNames = Object.fromEntries(
    Object.entries(tables).map(([table, { environment }]) => [table, needed(environment)]),
  ) as Record<TableName, string>;
  return {
    ...(await storesAt(
      variables[names.dynamodbEndpoint] ?? null,
      tableNames,
      needed(names.inventoryUrl),
      () => needed(names.evidenceUrl),
    )),
    close: async () => undefined,
  };
}

async function openFolder(variables: Variables): Promise<OperatorStores> {
  const folder = await openDataFolder(dataDir(variables));
  const store = await startDynamodb({ folder: folder.dynamodb, port: 0 }).catch((error: unknown) => {
    if (error instanceof FolderInUse)
      throw new RefusedStart('command.folder-locked', { folder: folder.path });
    throw error;
  });
  const url = (path: string): string => pathToFileURL(path).href;
  return {
    ...(await storesAt(store.endpoint, localTableNames, url(folder.objects.inventory), () =>
      url(folder.objects.evidence),
    )),
    close: async (right) => {
      await store.stop();
      if (right || folder.closedCleanly) await folder.markClosed();
    },
  };
}

async function storesAt(
  endpoint: string | null,
  tableNames: TableNames,
  inventoryUrl: string,
  evidenceUrl: () => string,
): Promise<Omit<OperatorStores, 'close'>> {
  const client = dynamodbClient(endpoint);
  const inventory = objectInventory(await openObjectStore(inventoryUrl));
  const stores = dynamodbStores(client, tableNames);
  return {
    stores,
    projector: {
      ...stores,
      hydrantType: async (hydrantId) => (await inventory.hydrant(hydrantId))?.type ?? 'unknown',
    },
    backupTables: dynamodbBackupTables(client, tableNames),
    evidence: async () => {
      const objects = await openObjectStore(evidenceUrl());
      return { held: evidenceHeld(objects), erasures: objectErasures(objects) };
    },
  };
}
