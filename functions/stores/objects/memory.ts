import { assertKey, inByteOrder, type ObjectStore } from './objects.ts';

/** The twin in memory: same interface, same answers, for tests and previews. */
export function memoryObjects(): ObjectStore {
  const objects = new Map<string, Uint8Array>();
  return {
    put: async (key, bytes, { ifAbsent }) => {
      assertKey(key);
      if (ifAbsent && objects.has(key)) return { written: false };
      objects.set(key, bytes.slice());
      return { written: true };
    },
    get: async (key) => {
      const bytes = objects.get(key);
      return bytes ? { bytes: bytes.slice() } : null;
    },
    head: async (key) => {
      const bytes = objects.get(key);
      return bytes ? { sizeBytes: bytes.byteLength } : null;
    },
    list: async (prefix) => inByteOrder([...objects.keys()].filter((key) => key.startsWith(prefix))),
    delete: async (key) => {
      objects.delete(key);
    },
  };
}
