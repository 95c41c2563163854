import { namedDocuments, type NamedDocument } from '../../../shared/evidence/declared.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import type { ProjectionStore } from '../projections/projections.ts';

/** Where documents are listed by hash: a projection like any other, made anew by a rebuild. */
export const exhibitPartition = 'exhibits';

/** Which documents submissions name, by hash, and who may read them. */
export interface ExhibitIndex {
  find(sha256: string): Promise<NamedDocument | null>;
  /** Lists the documents that a submission names. Idempotent; a second naming can only add readers. */
  add(submission: Submission): Promise<void>;
}

/** A write loses to another at most this often before it gives up; each loss means that someone else got on. */
const MOST_TRIES = 10;

export function createExhibitIndex(projections: ProjectionStore): ExhibitIndex {
  const addOne = async (document: NamedDocument): Promise<void> => {
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const stored = await projections.get<NamedDocument>(exhibitPartition, document.sha256);
      const value = stored ? withReaders(stored.value, document.readers) : document;
      if (stored && value.readers.length === stored.value.readers.length) return;
      // A key that a rebuild removed counts on from there.
      const version = stored?.version ?? (await projections.versionOf(exhibitPartition, document.sha256));
      if (await projections.put(exhibitPartition, document.sha256, value, version)) return;
    }
    throw new Error('the exhibit index stayed contended');
  };
  return {
    find: async (sha256) => (await projections.get<NamedDocument>(exhibitPartition, sha256))?.value ?? null,
    add: async (submission) => {
      for (const document of namedDocuments(submission)) await addOne(document);
    },
  };
}

const withReaders = (document: NamedDocument, more: NamedDocument['readers']): NamedDocument => ({
  ...document,
  readers: [...new Set([...document.readers, ...more])].sort(),
});
