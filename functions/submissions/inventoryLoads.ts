import { loadedBody, type InventoryEdition, type InventoryMeta } from '../../shared/inventory/edition.ts';
import { currentSchemaVersion } from '../../shared/submissions/envelope.ts';
import type { Fact } from '../../shared/submissions/submission.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import { append, type AppendDeps } from './append.ts';

/** The fact that an inventory came into force. Its id was made at the load, so whoever records it, it is one fact. */
export function inventoryLoaded(edition: InventoryEdition, meta: InventoryMeta): Fact<'inventory-loaded'> {
  return {
    schemaVersion: currentSchemaVersion,
    submissionId: meta.submissionId,
    kind: 'inventory-loaded',
    subject: { type: 'utility' },
    occurredAt: meta.loadedAt,
    sentAt: meta.loadedAt,
    person: { personId: meta.loadedBy },
    device: { deviceId: 'import' },
    enteredUnits: 'us',
    body: loadedBody(edition, meta),
  };
}

/** Records one load. True when it is in the ledger now. */
export async function recordLoad(
  deps: AppendDeps,
  edition: InventoryEdition,
  meta: InventoryMeta,
): Promise<boolean> {
  const { loadedBy } = meta;
  await append(deps, inventoryLoaded(edition, meta), {
    personId: loadedBy,
    name: loadedBy,
    roles: ['manager'],
  });
  return true;
}

/** Records the loads that were made while nobody could: an import works on files and needs no running server. */
export async function recordPendingLoads(deps: AppendDeps, inventory: InventoryStore): Promise<number> {
  const editions = await inventory.editions();
  if (editions.length === 0) return 0;
  const known = new Set(
    (await deps.ledger.readStream('utility', { personal: false })).map(
      ({ submission }) => submission.submissionId,
    ),
  );
  let recorded = 0;
  for (const edition of editions) {
    const meta = await inventory.meta(edition.manifestSha256);
    if (known.has(meta.submissionId)) continue;
    await recordLoad(deps, edition, meta);
    recorded += 1;
  }
  return recorded;
}
