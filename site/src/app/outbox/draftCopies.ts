import { database, type DraftCopy } from './database.ts';
import type { Draft } from '../core/draft.ts';

/** The copies of unfinished forms in the device's database, which a browser that is killed a moment later still has. */

/** A mark that a form was sent or thrown away is kept for this long: localStorage has caught up many times by then. */
const MARKS_MS = 30 * 86_400_000;

/** What is to be written next, the last change of each form alone. */
const waiting = new Map<string, DraftCopy>();
let writing = false;

/**
 * Writes a form as it stands, or with `null` that there is none any more. One write at a time, since each waits for the
 * disk; of what is typed meanwhile the last state follows. A device that keeps no database has localStorage alone.
 */
export function copyDraft(submissionId: string, draft: Draft | null, changedAt: number): void {
  waiting.set(submissionId, { submissionId, draft, changedAt });
  if (!writing) void writeAll();
}

async function writeAll(): Promise<void> {
  writing = true;
  while (waiting.size > 0) {
    const next = [...waiting.values()];
    waiting.clear();
    try {
      const transaction = (await database()).transaction('drafts', 'readwrite', { durability: 'strict' });
      await Promise.all([...next.map((copy) => transaction.store.put(copy)), transaction.done]);
    } catch {
      // Full, or none: what localStorage would not keep either, the form says.
    }
  }
  writing = false;
}

/** Every copy and every mark; none where the database cannot be opened. */
export async function readCopies(): Promise<readonly DraftCopy[]> {
  try {
    return await (await database()).getAll('drafts');
  } catch {
    return [];
  }
}

/** Old marks go. */
export async function sweepCopies(now: number): Promise<void> {
  try {
    const { store } = (await database()).transaction('drafts', 'readwrite');
    for (const { submissionId, draft, changedAt } of await store.getAll())
      if (draft === null && changedAt < now - MARKS_MS) await store.delete(submissionId);
  } catch {
    // No database, so nothing to sweep.
  }
}
