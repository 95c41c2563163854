import type { ProjectorDeps } from '../../functions/project/deps.ts';
import { memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import type { Submission } from '../../shared/submissions/submission.ts';

export const delivery = { recordedAt: '2026-03-04T09:00:00.000Z', deliveredBy: null };

const types: Readonly<Record<string, Hydrant['type']>> = { A: 'dry-barrel', B: 'wet-barrel' };

export interface World extends ProjectorDeps, TableStores {}

/** An empty utility whose hydrant A is a dry barrel, B a wet barrel, and any other unknown. */
export function world(stores: TableStores = memoryStores()): World {
  return { ...stores, hydrantType: async (id) => types[id] ?? 'unknown', pause: async () => undefined };
}

export async function acceptAll({ ledger }: World, submissions: readonly Submission[]): Promise<void> {
  for (const submission of submissions) await ledger.accept(submission, delivery);
}

/** Everything that is kept, for comparison: partition, key and value. */
export async function kept({ projections }: World): Promise<Record<string, unknown>> {
  const all: Record<string, unknown> = {};
  for (const partition of Object.values(partitions))
    for (const { key, value } of await projections.list(partition)) all[`${partition} ${key}`] = value;
  return all;
}
