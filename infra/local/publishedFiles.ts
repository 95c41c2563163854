import type { PublishedStore } from '../../functions/stores/published/published.ts';
import type { PublishedFiles } from './pages.ts';

/** The published store as a web server sees it. Addresses that no published file could have are simply not there. */
export function publishedFiles(store: PublishedStore): PublishedFiles {
  return {
    async read(key) {
      if (!key.split('/').every((name) => /^[\w.-]+$/.test(name) && !name.startsWith('.'))) return null;
      const found = await store.get(key);
      return (
        found && {
          bytes: found.bytes,
          contentType: found.contentType,
          cacheControl: found.cacheControl,
          lastModified: found.checkedAt === null ? null : new Date(found.checkedAt),
        }
      );
    },
  };
}
