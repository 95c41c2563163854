import { exhibitLists } from '../../../../shared/evidence/declared.ts';
import { rowsOf, textOf } from '../form/nodes.ts';
import { copyDraft, readCopies, sweepCopies } from '../outbox/draftCopies.ts';
import type { Draft } from './draft.ts';
import { observable } from './observable.ts';
import { readStored, removeStored, storedKeys, writeStored } from './storage.ts';

export type { Draft } from './draft.ts';

/**
 * Unfinished forms stand twice on the device: in localStorage, which every screen reads at once and which a browser
 * writes to the disk some seconds late, and in the database, which is on the disk before the next touch.
 */
const keyOf = (submissionId: string): string => `draft.${submissionId}`;

/** Copies that localStorage had no room for. */
const held = new Map<string, Draft>();

/** Counts up with each change of the list, so that screens that show it read it again. */
export const draftsChanged = observable(0);
const changed = (): void => draftsChanged.set(draftsChanged.get() + 1);

let lastChange = 0;
/** Now, and always after what was written before, also by a clock that was set back. */
const nextChange = (): number => (lastChange = Math.max(Date.now(), lastChange + 1));

const changeOf = (draft: Draft | null): number => draft?.changedAt ?? 0;

export function readDraft(submissionId: string): Draft | null {
  const stored = readStored(keyOf(submissionId)) as Draft | null;
  const copy = held.get(submissionId) ?? null;
  return copy !== null && (stored === null || changeOf(copy) > changeOf(stored)) ? copy : stored;
}

/** Called at each keystroke. False when localStorage will not keep it, which the form must say. */
export function keepDraft(draft: Draft): boolean {
  const stamped: Draft = { ...draft, changedAt: nextChange() };
  // One in which nothing was typed is worth no copy.
  if (draft.touched) copyDraft(draft.submissionId, stamped, lastChange);
  return writeStored(keyOf(draft.submissionId), stamped);
}

export function dropDraft(submissionId: string): void {
  removeStored(keyOf(submissionId));
  held.delete(submissionId);
  // Removing is written as late as keeping: without a mark of it a killed browser brings back what was sent.
  copyDraft(submissionId, null, nextChange());
  changed();
}

/** Brings the two places together, the later change standing: before the first screen, so that each finds its form. */
export async function restoreDrafts(): Promise<void> {
  for (const { submissionId, draft, changedAt } of await readCopies()) {
    lastChange = Math.max(lastChange, changedAt);
    const stored = readStored(keyOf(submissionId)) as Draft | null;
    if (stored !== null && changeOf(stored) >= changedAt) continue;
    if (draft === null) removeStored(keyOf(submissionId));
    else if (!writeStored(keyOf(submissionId), draft)) held.set(submissionId, draft);
  }
  changed();
}

const draftIds = (): readonly string[] => [
  ...new Set([...storedKeys('draft.').map((key) => key.slice('draft.'.length)), ...held.keys()]),
];
const everybodys = (): readonly Draft[] => draftIds().flatMap((id) => readDraft(id) ?? []);

/** The unfinished forms of one person on this device, newest first. */
export const draftsOf = (authorId: string): Draft[] =>
  everybodys()
    .filter((draft) => draft.authorId === authorId && draft.touched)
    .sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1));

/** Hashes of the photos in everybody's unfinished forms on this device, but for one form that is finished. */
export const photosInDrafts = (finished?: string): string[] =>
  everybodys()
    .filter(({ submissionId }) => submissionId !== finished)
    .flatMap(({ values }) => exhibitLists.flatMap((name) => rowsOf(values[name])))
    .map((exhibit) => textOf(exhibit['sha256']));

/** Forms that were opened and left without a word, older than a day: nobody will miss them. */
export function sweepDrafts(now: Date): void {
  for (const key of storedKeys('draft.')) {
    const draft = readStored(key) as Draft | null;
    if (!draft || (!draft.touched && Date.parse(draft.openedAt) < now.getTime() - 86_400_000))
      removeStored(key);
  }
  void sweepCopies(now.getTime());
}
