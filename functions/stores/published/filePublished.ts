import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rmdir, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import * as z from 'zod';
import { StoreUnavailable } from '../faults.ts';
import { assertKey, type PublishedHead, type PublishedStore } from './published.ts';

const meta = z.object({
  etag: z.string(),
  contentType: z.string(),
  cacheControl: z.string(),
  checkedAt: z.string().nullable(),
});

/** What a file system cannot hold beside a file (type, age, etag) stands under this folder. */
const META = '.published';
/** A lock this old was left by a process that was killed. */
const LOCK_STALE_MS = 10_000;
/** Each waits 5 to 15 ms: together longer than it takes a lock to count as left behind. */
const LOCK_TRIES = 2000;

const isMissing = (error: unknown): boolean => (error as { code?: unknown }).code === 'ENOENT';

/** Reads a file, or null when there is none; anything else is a fault and never an absence. */
async function readOrNull(path: string): Promise<Buffer | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if (isMissing(error)) return null;
    throw new StoreUnavailable(`cannot read ${path}`, { cause: error });
  }
}

/** Whole or not at all: a reader never meets half a page. */
async function replaceFile(path: string, content: Uint8Array | string): Promise<void> {
  const temporary = `${path}.${randomUUID()}.tmp`;
  await mkdir(dirname(path), { recursive: true });
  await writeFile(temporary, content);
  await rename(temporary, path);
}

const lockOf = (folder: string): string => join(folder, META, 'lock');

/**
 * Removes the lock that a killed process left. Only for whoever knows that no other process writes here, as a server
 * does that has just taken its data folder for itself.
 */
export async function breakLock(folder: string): Promise<void> {
  await rmdir(lockOf(folder)).catch((error: unknown) => {
    if (!isMissing(error)) throw error;
  });
}

/** Published objects as plain files under a folder, which any web server can serve. Safe between processes. */
export function filePublished(folder: string): PublishedStore {
  const lock = lockOf(folder);

  // Within this process writers stand in line, so that the lock on disk is only ever contended between processes.
  let line: Promise<unknown> = Promise.resolve();
  const locked = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = line.then(() => lockedOnDisk(work));
    line = turn.catch(() => undefined);
    return turn;
  };

  async function lockedOnDisk<T>(work: () => Promise<T>): Promise<T> {
    await mkdir(join(folder, META), { recursive: true });
    for (let tries = 0; tries < LOCK_TRIES; tries++) {
      try {
        await mkdir(lock);
      } catch (error) {
        if ((error as { code?: unknown }).code !== 'EEXIST') throw error;
        const made = await stat(lock).catch(() => null);
        if (made && Date.now() - made.mtimeMs > LOCK_STALE_MS) await rmdir(lock).catch(() => undefined);
        else await wait(5 + Math.random() * 10);
        continue;
      }
      try {
        return await work();
      } finally {
        await rmdir(lock);
      }
    }
    throw new Error('the lock was never free');
  }

  const metaPath = (key: string): string => join(folder, META, 'meta', `${key}.json`);
  async function metaOf(key: string): Promise<(z.infer<typeof meta> & PublishedHead) | null> {
    assertKey(key);
    const text = await readOrNull(metaPath(key));
    return text && meta.parse(JSON.parse(text.toString('utf8')));
  }

  return {
    head: metaOf,
    async get(key) {
      const head = await metaOf(key);
      const bytes = head && (await readOrNull(join(folder, key)));
      return head && bytes && { ...head, bytes };
    },
    async put(key, { bytes, ...facts }, expected) {
      assertKey(key);
      try {
        return await locked(async () => {
          const head = await metaOf(key);
          if ((head?.etag ?? null) !== expected) return null;
          const etag = `"${randomUUID()}"`;
          // The page first: were its age written first and the process killed, an old page would pass for new.
          await replaceFile(join(folder, key), bytes);
          await replaceFile(metaPath(key), JSON.stringify({ ...facts, etag }));
          return etag;
        });
      } catch (error) {
        if (error instanceof StoreUnavailable) throw error;
        throw new StoreUnavailable(`cannot write ${key}`, { cause: error });
      }
    },
  };
}
