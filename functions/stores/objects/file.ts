import { randomUUID } from 'node:crypto';
import { link, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { StoreUnavailable } from '../faults.ts';
import { keyOf, namesOf } from './fileNames.ts';
import { assertKey, inByteOrder, type ObjectStore } from './objects.ts';

/** Where writes in progress lie; no key has this name, because `~` is never written alone. */
const workFolder = '~writing';

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

/** Runs one request; a missing file is null, and everything else that the disk answers is the store being unavailable. */
async function orNull<T>(request: () => Promise<T>): Promise<T | null> {
  try {
    return await request();
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    if (codeOf(error) === '') throw error;
    throw new StoreUnavailable(`the folder of objects did not answer (${codeOf(error)})`, { cause: error });
  }
}

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
      const written = await orNull(async () => {
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
      // Null would be a folder that vanished between two steps: somebody deletes the data under a running program.
      if (written === null) throw new StoreUnavailable('the folder of objects is gone');
      if (written) await flushFolder(dirname(target));
      return { written };
    },
    get: async (key) => {
      const bytes = await orNull(() => readFile(pathOf(key)));
      return bytes ? { bytes } : null;
    },
    head: async (key) => {
      const found = await orNull(() => stat(pathOf(key)));
      return found?.isFile() ? { sizeBytes: found.size } : null;
    },
    list: async (prefix) => {
      // The folders that the prefix names whole need no look at their neighbours.
      const whole = prefix.includes('/') ? prefix.slice(0, prefix.lastIndexOf('/')) : null;
      const names = whole === null ? [] : namesOf(whole);
      const keys = await filesUnder(join(root, ...names), names);
      return inByteOrder(keys.filter((key) => key.startsWith(prefix)));
    },
    delete: async (key) => {
      await orNull(() => rm(pathOf(key)));
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
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
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
