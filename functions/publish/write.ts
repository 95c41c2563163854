import { createHash } from 'node:crypto';
import type { PublishedStore } from '../stores/published/published.ts';
import type { PublishedFile } from './pages.ts';
import type { Pointer } from './pointer.ts';

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** How often one address is fought over before a publication gives up. */
const MOST_TRIES = 8;

export type Written =
  | { readonly outcome: 'written' | 'unchanged'; readonly sha256: string; readonly etag: string }
  /** A newer check's page stands there; it is left alone. */
  | { readonly outcome: 'newer-stands' };

/**
 * Puts a file at its address unless the same content stands there already, or a newer one. Under the store's own
 * condition, so that an older page never replaces a newer one however two publishers interleave.
 */
export async function writeFile(
  store: PublishedStore,
  file: PublishedFile,
  standing: Pointer['files'][string] | undefined,
): Promise<Written> {
  const hash = sha256(file.bytes);
  if (standing?.sha256 === hash) return { outcome: 'unchanged', ...standing };
  // The pointer says what we last knew to be there; mostly that is still so, and saves a question.
  let expected = standing?.etag ?? null;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const etag = await store.put(file.key, file, expected);
    if (etag !== null) return { outcome: 'written', sha256: hash, etag };
    const there = await store.head(file.key);
    if (there && file.checkedAt !== null && there.checkedAt !== null)
      if (Date.parse(there.checkedAt) > Date.parse(file.checkedAt)) return { outcome: 'newer-stands' };
    // An asset's name changes with its content, so what stands under the name is the asset.
    if (there && file.checkedAt === null && file.key.startsWith('_assets/'))
      return { outcome: 'unchanged', sha256: hash, etag: there.etag };
    expected = there?.etag ?? null;
  }
  throw new Error(`${file.key} was changed by others ${MOST_TRIES} times while it was written`);
}
