import type { ListedDocument } from '../../../shared/evidence/declared.ts';
import { partitions } from '../../../shared/projections/items.ts';
import type { ProjectionStore } from '../projections/projections.ts';

/** Which documents submissions name, by hash, and who may read them. The projector keeps it. */
export interface ExhibitIndex {
  find(sha256: string): Promise<ListedDocument | null>;
}

export function createExhibitIndex(projections: ProjectionStore): ExhibitIndex {
  return {
    find: async (sha256) =>
      (await projections.get<ListedDocument>(partitions.exhibits, sha256))?.value ?? null,
  };
}
