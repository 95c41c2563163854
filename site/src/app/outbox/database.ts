import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { Envelope } from '../../../../shared/submissions/submission.ts';
import type { Draft } from '../core/draft.ts';

/** A submission on its way. It stays here until the server has confirmed it and every photo of it. */
export interface Entry {
  readonly submissionId: string;
  readonly submission: Envelope & { readonly kind: string; readonly body: Record<string, unknown> };
  readonly author: { readonly personId: string; readonly name: string };
  /** What was typed: a refused entry opens again as it was. */
  readonly draft: Draft;
  /** `waiting` to be sent; `refused` until it is mended; `recorded`, with photos still to go. */
  readonly state: 'waiting' | 'refused' | 'recorded';
  readonly problems: readonly Problem[];
  /** Why the last try failed. Words: `outbox.error.<code>`. */
  readonly lastError: string | null;
  readonly lastTriedAt: string | null;
  readonly tries: number;
  readonly queuedAt: string;
  readonly recordedAt: string | null;
  readonly photos: readonly { readonly sha256: string; readonly state: 'awaited' | 'arrived' }[];
}

/** What was confirmed lately, so that the person sees that it was. */
export interface Receipt {
  readonly submissionId: string;
  readonly kind: string;
  readonly authorId: string;
  readonly recordedAt: string;
  readonly about: Draft['about'];
  readonly submission: Entry['submission'];
  /** Both by name, where a colleague delivered it; a receipt of before has neither. */
  readonly authorName?: string;
  readonly deliveredByName?: string | null;
}

/** An answer of the server, kept for one person: see `offline/reads.ts`. */
export interface Kept {
  readonly personId: string;
  readonly path: string;
  readonly value: unknown;
  /** Epoch milliseconds. */
  readonly fetchedAt: number;
}

interface Files {
  readonly sha256: string;
  readonly bytes: Blob;
  /** Epoch milliseconds. */
  readonly keptAt: number;
}

/** An unfinished form as it stood at its last change, or that there is none any more: see `draftCopies.ts`. */
export interface DraftCopy {
  readonly submissionId: string;
  readonly draft: Draft | null;
  /** Epoch milliseconds. */
  readonly changedAt: number;
}

interface Schema extends DBSchema {
  outbox: { key: string; value: Entry };
  receipts: { key: string; value: Receipt };
  files: { key: string; value: Files };
  reads: { key: [personId: string, path: string]; value: Kept };
  drafts: { key: string; value: DraftCopy };
}

let opened: Promise<IDBPDatabase<Schema>> | null = null;

/** The device's database, opened once. Rejects when the browser keeps none (a private window of some browsers). */
export function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('hsl', 3, {
    upgrade(db, before) {
      if (before < 1) {
        db.createObjectStore('outbox', { keyPath: 'submissionId' });
        db.createObjectStore('receipts', { keyPath: 'submissionId' });
        db.createObjectStore('files', { keyPath: 'sha256' });
      }
      if (before < 2) db.createObjectStore('reads', { keyPath: ['personId', 'path'] });
      if (before < 3) db.createObjectStore('drafts', { keyPath: 'submissionId' });
    },
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      opened = null;
    },
    terminated: () => {
      opened = null;
    },
  }).catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}
