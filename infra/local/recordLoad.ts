import type { InventoryEdition, InventoryMeta } from '../../shared/inventory/edition.ts';
import { inventoryLoaded } from '../../functions/submissions/inventoryLoads.ts';
import { readKeys, serverUsing } from './dataFolder.ts';
import type { ApiAccess } from './deployed/access.ts';
import { createIssuer } from './issuer.ts';

/** Longer than a busy server takes; the load itself is done, and its fact can also wait for the next start. */
const PATIENCE_MS = 15_000;

/**
 * Tells the server that uses this data folder that an inventory came into force, through the API like everyone. False
 * when no server runs, or it did not take it: the next start records what is not recorded yet, under the same id.
 */
export async function recordLoadAtServer(
  root: string,
  edition: InventoryEdition,
  meta: InventoryMeta,
): Promise<boolean> {
  const server = await serverUsing(root);
  if (!server) return false;
  const issuer = await createIssuer((await readKeys(root)).issuerKey);
  const { loadedBy } = meta;
  const token = await issuer.tokenFor({ personId: loadedBy, name: loadedBy, roles: ['manager'] });
  return recordLoadThere({ origin: server.origin, token }, edition, meta);
}

/** The same of a server anywhere, by whoever signed in there. */
export async function recordLoadThere(
  { origin, token }: ApiAccess,
  edition: InventoryEdition,
  meta: InventoryMeta,
): Promise<boolean> {
  const response = await fetch(`${origin}/api/submissions`, {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    body: JSON.stringify(inventoryLoaded(edition, meta)),
    signal: AbortSignal.timeout(PATIENCE_MS),
  }).catch(() => null);
  return response?.ok ?? false;
}
