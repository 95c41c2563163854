import { database, type Kept } from '../outbox/database.ts';

/**
 * Answers of the server, kept for the one person who may see them, so that their screens open with no signal. They
 * stand in the database of the page, never in a cache that a service worker hands out, and go when the person signs out.
 */

/** What a crew's screens read. Claims, rates and people's papers are the desk's and are never kept. */
const keepable = /^\/api\/(?:strikes|models|stock|job-codes|(?:strikes|hydrants)\/[^/?]+)$/;
const MOST = 200;
const OLDEST_MS = 14 * 86_400_000;

/** Only the crew app turns it on: a desk has a line, and its answers hold more. */
const keeping = { on: false };
export const keepReads = (): void => {
  keeping.on = true;
};
export const mayKeep = (path: string): boolean => keeping.on && keepable.test(path);

/** Keeps an answer. A device that will not keep it still has it on screen. */
export async function keepRead(personId: string, path: string, value: unknown): Promise<void> {
  try {
    await (await database()).put('reads', { personId, path, value, fetchedAt: Date.now() });
  } catch {
    // Full or closed: what a person typed has the better right to the room.
  }
}

export async function readKept(personId: string, path: string): Promise<Kept | null> {
  try {
    return (await (await database()).get('reads', [personId, path])) ?? null;
  } catch {
    return null;
  }
}

/** Forgets what was read by anybody but `except`: whoever picks the device up next is to find nothing. */
export async function forgetReads(except: string | null): Promise<void> {
  try {
    const store = (await database()).transaction('reads', 'readwrite').store;
    for (const key of await store.getAllKeys()) if (key[0] !== except) await store.delete(key);
  } catch {
    // No database, so nothing was kept.
  }
}

/** Old answers go, and beyond so many the oldest. */
export async function sweepReads(now: number): Promise<void> {
  const store = (await database()).transaction('reads', 'readwrite').store;
  const all = (await store.getAll()).sort((a, b) => b.fetchedAt - a.fetchedAt);
  for (const [index, { personId, path, fetchedAt }] of all.entries())
    if (index >= MOST || fetchedAt < now - OLDEST_MS) await store.delete([personId, path]);
}
