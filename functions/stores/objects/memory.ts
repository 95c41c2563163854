import { assertKey, inByteOrder, wholeSecond, type ObjectStore } from './objects.ts';

/** The twin in memory: same interface, same answers, for tests and previews. Without a clock it knows no times. */
export function memoryObjects(now?: () => Date): ObjectStore {
  const objects = new Map<string, Uint8Array>();
  const written = new Map<string, string>();
  return {
    put: async (key, bytes, { ifAbsent }) => {
      assertKey(key);
      if (ifAbsent && objects.has(key)) return { written: false };
      objects.set(key, bytes.slice());
      if (now) written.set(key, wholeSecond(now()));
      return { written: true };
    },
    get: async (key) => {
      const bytes = objects.get(key);
      return bytes ? { bytes: bytes.slice() } : null;
    },
    head: async (key) => {
      const bytes = objects.get(key);
      const writtenAt = written.get(key);
      return bytes
        ? { sizeBytes: bytes.byteLength, ...(writtenAt === undefined ? {} : { writtenAt }) }
        : null;
    },
    list: async (prefix) => inByteOrder([...objects.keys()].filter((key) => key.startsWith(prefix))),
    delete: async (key) => {
      objects.delete(key);
    },
  };
}
