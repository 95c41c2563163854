import { randomUUID } from 'node:crypto';
import { link, mkdir, open, readdir, readFile, rename, rm, stat, unlink } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { StoreUnavailable } from '../faults.ts';
import { keyOf, namesOf } from './fileNames.ts';
import { assertKey, inByteOrder, wholeSecond, type ObjectStore } from './objects.ts';

/** Where writes in progress lie; no key has this name, because `~` is never written alone. */
const workFolder = '~writing';

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';

/** Runs one request; what the disk answers instead of doing it is the store being unavailable. */
async function orUnavailable<T>(request: () => Promise<T>): Promise<T> {
  try {
    return await request();
  } catch (error) {
    if (codeOf(error) === '') throw error;
    throw new StoreUnavailable(`the folder of objects did not answer (${codeOf(error)})`, { cause: error });
  }
}

/** Reads; a name that is not there, or is a folder, is null. */
const orNull = <T>(request: () => Promise<T>): Promise<T | null> =>
  orUnavailable<T | null>(() =>
    request().catch((error: unknown) => {
      if (/^(ENOENT|ENOTDIR|EISDIR)$/.test(codeOf(error))) return null;
      throw error;
    }),
  );

/**
 * Objects as files under one folder. A write goes to a file of its own, is flushed to the disk, and is then put in
 * place in one step (`rename`, or `link` where the key must be new), so a reader or a power cut never meets half of it.
 */
export function fileObjects(folder: string): ObjectStore {
  const root = resolve(folder);
  const pathOf = (key: string): string => {
    assertKey(key);
    return join(root, ...namesOf(key));
  };

  return {
    put: async (key, bytes, { ifAbsent }) => {
      const target = pathOf(key);
      const written = await orUnavailable(async () => {
        const work = join(root, workFolder);
        await mkdir(work, { recursive: true });
        await mkdir(dirname(target), { recursive: true });
        const temporary = join(work, randomUUID());
        try {
          await writeFlushed(temporary, bytes);
          if (ifAbsent) return await linkIfAbsent(temporary, target);
          await rename(temporary, target);
          return true;
        } finally {
          await rm(temporary, { force: true });
        }
      });
      if (written) await flushFolder(dirname(target));
      return { written };
    },
    get: async (key) => {
      const bytes = await orNull(() => readFile(pathOf(key)));
      return bytes ? { bytes } : null;
    },
    head: async (key) => {
      const found = await orNull(() => stat(pathOf(key)));
      return found?.isFile() ? { sizeBytes: found.size, writtenAt: wholeSecond(found.mtime) } : null;
    },
    list: async (prefix) => {
      // The folders that the prefix names whole need no look at their neighbours.
      const whole = prefix.includes('/') ? prefix.slice(0, prefix.lastIndexOf('/')) : null;
      const names = whole === null ? [] : namesOf(whole);
      const keys = await filesUnder(join(root, ...names), names);
      return inByteOrder(keys.filter((key) => key.startsWith(prefix)));
    },
    delete: async (key) => {
      await orNull(() => unlink(pathOf(key)));
    },
  };
}

async function writeFlushed(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** A link to a name that exists fails in one step, which makes one winner among writers that try at once. */
async function linkIfAbsent(temporary: string, target: string): Promise<boolean> {
  try {
    await link(temporary, target);
    return true;
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
    if ((await stat(target)).isDirectory())
      throw new RangeError(`a key cannot be the folder of another: ${target}`, { cause: error });
    return false;
  }
}

/** The entry in the folder must reach the disk too, or the name is lost with the power. Not every system can; those that cannot say so. */
async function flushFolder(path: string): Promise<void> {
  const folder = await open(path, 'r').catch(() => null);
  try {
    await folder?.sync();
  } catch {
    // Windows flushes no folder; the file itself is flushed.
  } finally {
    await folder?.close();
  }
}

async function filesUnder(path: string, names: readonly string[]): Promise<string[]> {
  const entries = await orNull(() => readdir(path, { withFileTypes: true }));
  const keys: string[] = [];
  for (const entry of entries ?? []) {
    if (names.length === 0 && entry.name === workFolder) continue;
    const inside = [...names, entry.name];
    if (entry.isDirectory()) keys.push(...(await filesUnder(join(path, entry.name), inside)));
    else keys.push(keyOf(inside));
  }
  return keys;
}
