import { assertKey, type PublishedHead, type PublishedObject, type PublishedStore } from './published.ts';

/** The twin in memory. `objects` is for tests to look at. */
export function memoryPublished(): PublishedStore & {
  readonly objects: ReadonlyMap<string, PublishedObject & PublishedHead>;
} {
  const objects = new Map<string, PublishedObject & PublishedHead>();
  let writes = 0;
  return {
    objects,
    get: async (key) => objects.get(key) ?? null,
    head: async (key) => objects.get(key) ?? null,
    async put(key, object, expected) {
      assertKey(key);
      if ((objects.get(key)?.etag ?? null) !== expected) return null;
      const etag = `"${String(++writes)}"`;
      objects.set(key, { ...object, bytes: Uint8Array.from(object.bytes), etag });
      return etag;
    },
  };
}
