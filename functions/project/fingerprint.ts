import { createHash } from 'node:crypto';
import { partitions } from '../../shared/projections/items.ts';
import { canonicalJson } from '../../shared/submissions/canonical.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';

export interface Fingerprint {
  readonly items: number;
  readonly sha256: string;
}

/**
 * SHA-256 (hex) over everything that is kept for reading, by partition, key and canonical JSON in one order: two stores
 * with the same one say the same to every reader. How often an item was written does not count.
 */
export async function fingerprint(projections: ProjectionStore): Promise<Fingerprint> {
  const hash = createHash('sha256');
  let items = 0;
  for (const partition of Object.values(partitions).sort())
    for (const { key, value } of await projections.list(partition)) {
      hash.update(`${canonicalJson([partition, key, value])}\n`, 'utf8');
      items += 1;
    }
  return { items, sha256: hash.digest('hex') };
}
