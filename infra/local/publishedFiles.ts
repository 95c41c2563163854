import type { PublishedStore } from '../../functions/stores/published/published.ts';
import type { PublishedFiles } from './pages.ts';

/** Object stores take keys of 1,024 bytes, file systems names of 255, to which the store adds an ending. */
const longestKey = 1024;
const isName = (name: string): boolean => /^[\w-][\w.-]{0,247}$/.test(name);

/** The published store as a web server sees it. Addresses that no published file could have are simply not there. */
export function publishedFiles(store: PublishedStore): PublishedFiles {
  return {
    async read(key) {
      if (key.length > longestKey || !key.split('/').every(isName)) return null;
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
