import { photosInDrafts } from '../core/drafts.ts';
import { observable } from '../core/observable.ts';
import { database, type Entry, type Receipt } from './database.ts';

/** Every entry on this device, in the order in which they were queued; screens follow it. */
export const entries = observable<readonly Entry[]>([]);
/** The last confirmations, newest first. */
export const receipts = observable<readonly Receipt[]>([]);

/** Receipts kept on the device. */
const MOST_RECEIPTS = 30;

/** How soon another tab follows what one wrote: a queue that leaves writes many times a second. */
const FOLLOW_MS = 100;

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('hsl-outbox');
let following: ReturnType<typeof setTimeout> | undefined;
channel?.addEventListener('message', () => {
  following ??= setTimeout(() => {
    following = undefined;
    void refresh();
  }, FOLLOW_MS);
});

/** Whether the lists above are those of the database, and what this page wrote while it was being read. */
let read = false;
let reading = 0;
const writtenMeanwhile = new Map<string, Entry | null>();

const inOrder = (all: readonly Entry[]): Entry[] =>
  [...all].sort((a, b) => (a.queuedAt < b.queuedAt ? -1 : a.queuedAt > b.queuedAt ? 1 : 0));

/** Reads everything: at the start, when another tab wrote, and before a round of sending. */
export async function refresh(): Promise<void> {
  reading += 1;
  try {
    const db = await database();
    const all = new Map((await db.getAll('outbox')).map((entry) => [entry.submissionId, entry]));
    const kept = (await db.getAll('receipts')).sort((a, b) => (a.recordedAt < b.recordedAt ? 1 : -1));
    for (const [id, entry] of writtenMeanwhile)
      if (entry) all.set(id, entry);
      else all.delete(id);
    entries.set(inOrder([...all.values()]));
    receipts.set(kept.slice(0, MOST_RECEIPTS));
    read = true;
    for (const old of kept.slice(MOST_RECEIPTS)) await db.delete('receipts', old.submissionId);
  } finally {
    reading -= 1;
    if (reading === 0) writtenMeanwhile.clear();
  }
}

/**
 * What the database has just been told of one entry (null: taken out), in the list as well. The list is not read anew: with
 * a thousand entries that would cost each of them a thousand.
 */
async function told(submissionId: string, entry: Entry | null): Promise<void> {
  if (reading > 0) writtenMeanwhile.set(submissionId, entry);
  if (!read) await refresh();
  else {
    const others = entries.get().filter((each) => each.submissionId !== submissionId);
    entries.set(entry ? inOrder([...others, entry]) : others);
  }
  channel?.postMessage('changed');
}

/** Writes an entry before anything is sent. Rejects when the device cannot keep it. */
export async function keepEntry(entry: Entry): Promise<void> {
  // Durable: the promise is kept only when the browser says that it is on the disk.
  const transaction = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(entry), transaction.done]);
  await told(entry.submissionId, entry);
}

export async function readEntry(submissionId: string): Promise<Entry | null> {
  return (await (await database()).get('outbox', submissionId)) ?? null;
}

/** Takes an entry out after everything of it was confirmed. Its receipt stays. */
export async function confirmEntry(entry: Pick<Entry, 'submissionId' | 'photos'>): Promise<void> {
  const db = await database();
  await db.delete('outbox', entry.submissionId);
  await dropFilesOf(entry);
  await told(entry.submissionId, null);
}

export async function keepReceipt(receipt: Receipt): Promise<void> {
  await (await database()).put('receipts', receipt);
  // The oldest go at the next reading of everything.
  const others = receipts.get().filter(({ submissionId }) => submissionId !== receipt.submissionId);
  receipts.set([receipt, ...others].slice(0, MOST_RECEIPTS));
  channel?.postMessage('changed');
}

/** Given up by its author, knowingly. */
export async function discardEntry(entry: Entry): Promise<void> {
  await confirmEntry(entry);
}

/** Its content goes on under another id, in an unfinished form that is kept already: its photos stay with that. */
export async function replaceEntry(entry: Entry): Promise<void> {
  await (await database()).delete('outbox', entry.submissionId);
  await told(entry.submissionId, null);
}

/** What one person was told is no business of whoever picks the device up next. */
export async function forgetReceipts(authorId: string): Promise<void> {
  const db = await database();
  for (const { submissionId, authorId: of } of await db.getAll('receipts'))
    if (of === authorId) await db.delete('receipts', submissionId);
  await refresh();
  channel?.postMessage('changed');
}

export async function keepFile(sha256: string, bytes: Blob): Promise<void> {
  const transaction = (await database()).transaction('files', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put({ sha256, bytes, keptAt: Date.now() }), transaction.done]);
}

export async function readFile(sha256: string): Promise<Blob | null> {
  return (await (await database()).get('files', sha256))?.bytes ?? null;
}

/** Bytes that another entry or an unfinished form still has to send stay. */
async function dropFilesOf({ submissionId, photos }: Pick<Entry, 'submissionId' | 'photos'>): Promise<void> {
  const db = await database();
  const wanted = new Set([
    ...photosInDrafts(submissionId),
    ...(await db.getAll('outbox')).flatMap((other) => other.photos.map(({ sha256 }) => sha256)),
  ]);
  for (const { sha256 } of photos) if (!wanted.has(sha256)) await db.delete('files', sha256);
}

/** Bytes of photos whose form was thrown away, a day later: no entry and no unfinished form (`inDrafts`) has them. */
export async function sweepFiles(inDrafts: readonly string[]): Promise<void> {
  const db = await database();
  const wanted = new Set([
    ...inDrafts,
    ...(await db.getAll('outbox')).flatMap(({ photos }) => photos.map(({ sha256 }) => sha256)),
  ]);
  for (const { sha256, keptAt } of await db.getAll('files'))
    if (!wanted.has(sha256) && keptAt < Date.now() - 86_400_000) await db.delete('files', sha256);
}
