import { exhibitLists } from '../../../../shared/evidence/declared.ts';
import type { Subject } from '../../../../shared/submissions/envelope.ts';
import { rowsOf, textOf, type Values } from '../form/nodes.ts';
import { observable } from './observable.ts';
import { readStored, removeStored, storedKeys, writeStored } from './storage.ts';

/** A form that is being filled in: what was typed, as typed, under the id that the submission will have. */
export interface Draft {
  readonly submissionId: string;
  readonly kind: string;
  readonly subject: Subject;
  readonly authorId: string;
  readonly openedAt: string;
  /** False until something was typed: such a draft is not worth keeping. */
  readonly touched: boolean;
  readonly values: Values;
  /** Set when this form corrects a recorded submission. */
  readonly corrects?: {
    readonly targetId: string;
    readonly occurredAt: string;
    readonly reason: string;
    readonly withdraw: boolean;
  };
  /** What is recorded already and this is about: a new strike has no id here, because nothing is known of it yet. */
  readonly about: {
    readonly hydrantId: string | null;
    readonly strikeId: string | null;
    /** The claim that it was opened from, to go back to; left out where it was none. */
    readonly claimId?: string;
  };
}

const keyOf = (submissionId: string): string => `draft.${submissionId}`;

/** Counts up with each change of the list, so that screens that show it read it again. */
export const draftsChanged = observable(0);
const changed = (): void => draftsChanged.set(draftsChanged.get() + 1);

export const readDraft = (submissionId: string): Draft | null =>
  readStored(keyOf(submissionId)) as Draft | null;

/** Called at each keystroke. False when the device will not keep it, which the form must say. */
export const keepDraft = (draft: Draft): boolean => writeStored(keyOf(draft.submissionId), draft);

export function dropDraft(submissionId: string): void {
  removeStored(keyOf(submissionId));
  changed();
}

/** The unfinished forms of one person on this device, newest first. */
export function draftsOf(authorId: string): Draft[] {
  return storedKeys('draft.')
    .flatMap((key) => (readStored(key) as Draft | null) ?? [])
    .filter((draft) => draft.authorId === authorId && draft.touched)
    .sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1));
}

/** Hashes of the photos in everybody's unfinished forms on this device, but for one form that is finished. */
export function photosInDrafts(finished?: string): string[] {
  return storedKeys('draft.').flatMap((key) => {
    const draft = readStored(key) as Draft | null;
    if (draft !== null && draft.submissionId === finished) return [];
    return exhibitLists
      .flatMap((name) => rowsOf(draft?.values[name]))
      .map((exhibit) => textOf(exhibit['sha256']));
  });
}

/** Forms that were opened and left without a word, older than a day: nobody will miss them. */
export function sweepDrafts(now: Date): void {
  for (const key of storedKeys('draft.')) {
    const draft = readStored(key) as Draft | null;
    if (!draft || (!draft.touched && Date.parse(draft.openedAt) < now.getTime() - 86_400_000))
      removeStored(key);
  }
}
