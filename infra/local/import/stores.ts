import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { claimDataFolder, inventoryFolder } from '../dataFolder.ts';
import { deploymentOf, openAccess } from '../deployed/access.ts';
import { dataDir } from '../options.ts';
import { recordLoadAtServer, recordLoadThere } from '../recordLoad.ts';
import { RefusedStart } from '../refusedStart.ts';
import type { ImportDeps } from './run.ts';

type Variables = Readonly<Record<string, string | undefined>>;
export type ImportStores = Pick<ImportDeps, 'openInventory' | 'lookAtInventory' | 'recordLoad'>;

/**
 * The store that the environment names (a deployment's bucket); null: this machine's. Throws `RefusedStart` where a
 * deployment is named and its bucket is not, because what was meant for it would be in force here and not there.
 */
export function namedStore(variables: Variables, name: string): string | null {
  const named = variables[name] ?? '';
  if (named !== '') return named;
  if (deploymentOf(variables) !== null) throw new RefusedStart('command.deployment-variable', { name });
  return null;
}

/**
 * Where an import goes: with `DEPLOYMENT_URL` to that deployment, whose bucket `INVENTORY_URL` names, with the operator's own
 * rights in the account and their own sign-in at its API; without, to this machine's data folder.
 */
export function importStores(variables: Variables): ImportStores {
  const deployment = deploymentOf(variables);
  const bucket = namedStore(variables, environmentNames.inventoryUrl);
  if (deployment === null || bucket === null) {
    if (bucket !== null)
      throw new RefusedStart('command.deployment-url-too', { name: environmentNames.inventoryUrl });
    return ofThisMachine(variables);
  }
  const open = async () => objectInventory(await openObjectStore(bucket));
  return {
    // Signed in before anything is written: files that no fact speaks of would be in force and on no record.
    openInventory: async () => {
      await openAccess(deployment, variables);
      return open();
    },
    lookAtInventory: open,
    recordLoad: async (edition, meta) =>
      recordLoadThere(await openAccess(deployment, variables), edition, meta),
  };
}

function ofThisMachine(variables: Variables): ImportStores {
  const at = async (folder: string) => objectInventory(await openObjectStore(pathToFileURL(folder).href));
  return {
    openInventory: async () => at(inventoryFolder(await claimDataFolder(dataDir(variables)))),
    lookAtInventory: async () => {
      const folder = inventoryFolder(dataDir(variables));
      return existsSync(folder) ? at(folder) : null;
    },
    recordLoad: async (edition, meta) =>
      recordLoadAtServer(await claimDataFolder(dataDir(variables)), edition, meta),
  };
}
