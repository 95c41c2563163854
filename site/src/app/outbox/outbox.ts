import { photosInDrafts } from '../core/drafts.ts';
import { observable } from '../core/observable.ts';
import { database, type Entry, type Receipt } from './database.ts';

/** Every entry on this device, in the order in which they were queued; screens follow it. */
export const entries = observable<readonly Entry[]>([]);
/** The last confirmations, newest first. */
export const receipts = observable<readonly Receipt[]>([]);

/** Receipts kept on the device. */
const MOST_RECEIPTS = 30;

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('hsl-outbox');
channel?.addEventListener('message', () => void refresh());

export async function refresh(): Promise<void> {
  const db = await database();
  const all = await db.getAll('outbox');
  entries.set(all.sort((a, b) => (a.queuedAt < b.queuedAt ? -1 : a.queuedAt > b.queuedAt ? 1 : 0)));
  const kept = (await db.getAll('receipts')).sort((a, b) => (a.recordedAt < b.recordedAt ? 1 : -1));
  receipts.set(kept.slice(0, MOST_RECEIPTS));
  for (const old of kept.slice(MOST_RECEIPTS)) await db.delete('receipts', old.submissionId);
}

async function changed(): Promise<void> {
  await refresh();
  channel?.postMessage('changed');
}

/** Writes an entry before anything is sent. Rejects when the device cannot keep it. */
export async function keepEntry(entry: Entry): Promise<void> {
  // Durable: the promise is kept only when the browser says that it is on the disk.
  const transaction = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(entry), transaction.done]);
  await changed();
}

export async function readEntry(submissionId: string): Promise<Entry | null> {
  return (await (await database()).get('outbox', submissionId)) ?? null;
}

/** Takes an entry out after everything of it was confirmed. Its receipt stays. */
export async function confirmEntry(entry: Pick<Entry, 'submissionId' | 'photos'>): Promise<void> {
  const db = await database();
  await db.delete('outbox', entry.submissionId);
  await dropFilesOf(entry);
  await changed();
}

export async function keepReceipt(receipt: Receipt): Promise<void> {
  await (await database()).put('receipts', receipt);
  await changed();
}

/** Given up by its author, knowingly. */
export async function discardEntry(entry: Entry): Promise<void> {
  await confirmEntry(entry);
}

/** Its content goes on under another id, in an unfinished form that is kept already: its photos stay with that. */
export async function replaceEntry(entry: Entry): Promise<void> {
  await (await database()).delete('outbox', entry.submissionId);
  await changed();
}

/** What one person was told is no business of whoever picks the device up next. */
export async function forgetReceipts(authorId: string): Promise<void> {
  const db = await database();
  for (const { submissionId, authorId: of } of await db.getAll('receipts'))
    if (of === authorId) await db.delete('receipts', submissionId);
  await changed();
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
