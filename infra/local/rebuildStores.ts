import { pathToFileURL } from 'node:url';
import { environmentNames as names } from '../../shared/deployment/environment.ts';
import { tables, type TableName } from '../../shared/deployment/tables.ts';
import type { ProjectorDeps } from '../../functions/project/deps.ts';
import { openDynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { openDataFolder } from './dataFolder.ts';
import { FolderInUse, localTableNames, startDynamodb } from './dynamodb.ts';
import { dataDir } from './options.ts';
import { RefusedStart } from './refusedStart.ts';

type Variables = Readonly<Record<string, string | undefined>>;

export interface OpenedForRebuild {
  readonly deps: ProjectorDeps;
  /** `right`: what is kept is what the facts say, so that the next start has nothing to make good. */
  readonly close: (right: boolean) => Promise<void>;
}

/**
 * The stores to rebuild: a deployment's, when the environment names its tables as its functions have them; else those in
 * the data folder, which no server may be using.
 */
export function openForRebuild(variables: Variables): Promise<OpenedForRebuild> {
  return variables[tables.submissions.environment] ? openDeployment(variables) : openFolder(variables);
}

async function openDeployment(variables: Variables): Promise<OpenedForRebuild> {
  const needed = (name: string): string => {
    const value = variables[name];
    if (value === undefined || value === '') throw new RefusedStart('command.rebuild-variable', { name });
    return value;
  };
  const tableNames = Object.fromEntries(
    Object.entries(tables).map(([table, { environment }]) => [table, needed(environment)]),
  ) as Record<TableName, string>;
  const endpoint = variables[names.dynamodbEndpoint] ?? null;
  return {
    deps: await depsOn(endpoint, tableNames, needed(names.inventoryUrl)),
    close: async () => undefined,
  };
}

async function openFolder(variables: Variables): Promise<OpenedForRebuild> {
  const folder = await openDataFolder(dataDir(variables));
  const store = await startDynamodb({ folder: folder.dynamodb, port: 0 }).catch((error: unknown) => {
    if (error instanceof FolderInUse)
      throw new RefusedStart('command.folder-locked', { folder: folder.path });
    throw error;
  });
  return {
    deps: await depsOn(store.endpoint, localTableNames, pathToFileURL(folder.objects.inventory).href),
    close: async (right) => {
      await store.stop();
      if (right || folder.closedCleanly) await folder.markClosed();
    },
  };
}

async function depsOn(
  endpoint: string | null,
  tableNames: Readonly<Record<TableName, string>>,
  inventoryUrl: string,
): Promise<ProjectorDeps> {
  const inventory = objectInventory(await openObjectStore(inventoryUrl));
  return {
    ...openDynamodbStores({ endpoint, tableNames }),
    hydrantType: async (hydrantId) => (await inventory.hydrant(hydrantId))?.type ?? 'unknown',
  };
}
