import { problem } from '../../../../shared/problems/problem.ts';
import { postJson, putBytes } from '../core/api.ts';
import { recordedCount } from '../core/resource.ts';
import { isCurrent, session } from '../core/session.ts';
import { keepSignedIn } from '../core/signingIn.ts';
import type { Entry } from './database.ts';
import { heed, isUsedUp, leftAloneMs, photosAreHeld, type Failed } from './held.ts';
import { confirmEntry, entries, keepEntry, keepReceipt, readEntry, readFile, refresh } from './outbox.ts';

/** What the server says of a submission it has, for the first time or again. */
interface Accepted {
  readonly outcome: 'accepted' | 'repeat';
  readonly recordedAt: string;
}
type UploadAnswer =
  | { readonly state: 'arrived' }
  | {
      readonly state: 'awaited';
      readonly upload: { readonly url: string; readonly headers: Readonly<Record<string, string>> };
    };

/** Whether the next entry should be tried; `again`: this one later, the others now; `stop`: the line is down for all. */
type Next = 'go-on' | 'again' | 'stop';

const tried = (entry: Entry, change: Partial<Entry>): Entry => ({
  ...entry,
  tries: entry.tries + 1,
  lastTriedAt: new Date().toISOString(),
  ...change,
});

/** The error code of an answer that is no confirmation. Words: `outbox.error.<code>`. */
const errorOf = (answer: Failed): string =>
  isUsedUp(answer) ? 'upload-budget' : answer.outcome === 'unreachable' ? answer.reason : answer.outcome;

type What = 'report' | 'photos';

/** What came of a try. A device with no room to note it finds out again at the next, and holds nothing else up. */
const note = (entry: Entry): Promise<void> => keepEntry(entry).catch(() => undefined);

/** Entries whose report was recorded in this round, as they stand now: a full device cannot have noted it. */
type RecordedNow = Map<string, Entry>;

async function sendSubmission(entry: Entry, recordedNow: RecordedNow): Promise<Next> {
  const answer = await postJson<Accepted>('/api/submissions', entry.submission);
  if (answer.outcome === 'ok') {
    const { recordedAt } = answer.value;
    const recorded = tried(entry, { state: 'recorded', recordedAt, lastError: null, problems: [] });
    const by = session.get();
    // The receipt first: if the device stops here, the entry is sent again and answered as a repeat. A device without
    // room for either has nothing to lose by going on: the server has it.
    await keepReceipt({
      submissionId: entry.submissionId,
      kind: entry.submission.kind,
      authorId: entry.author.personId,
      authorName: entry.author.name,
      deliveredByName: by && by.personId !== entry.author.personId ? by.name : null,
      recordedAt,
      about: entry.draft.about,
      submission: entry.submission,
    }).catch(() => undefined);
    await note(recorded);
    recordedNow.set(entry.submissionId, recorded);
    recordedCount.set(recordedCount.get() + 1);
    // Its photos come after every report; without any, all of it is there.
    return recorded.photos.length === 0 ? sendPhotos(recorded) : 'go-on';
  }
  if (answer.outcome === 'refused') {
    // A refusal with no list still needs something to show beside the form.
    const problems = answer.problems.length > 0 ? answer.problems : [problem(`refused-${answer.status}`)];
    await note(tried(entry, { state: 'refused', problems, lastError: 'refused' }));
    return 'go-on';
  }
  heed(answer);
  await note(tried(entry, { lastError: errorOf(answer) }));
  return 'stop';
}

/** `arrived`, or why not (`outbox.error.<code>`). */
async function sendPhoto(entry: Entry, sha256: string): Promise<string> {
  const { subject, submissionId } = entry.submission;
  const answer = await postJson<UploadAnswer>('/api/evidence/uploads', { subject, submissionId, sha256 });
  if (answer.outcome !== 'ok') {
    heed(answer);
    return errorOf(answer);
  }
  if (answer.value.state === 'arrived') return 'arrived';
  const bytes = await readFile(sha256);
  if (!bytes) return 'photo-gone';
  const { url, headers } = answer.value.upload;
  return (await putBytes(url, bytes, headers)) ? 'arrived' : 'upload-failed';
}

async function sendPhotos(entry: Entry): Promise<Next> {
  let current = entry;
  for (const { sha256, state } of entry.photos) {
    if (state === 'arrived') continue;
    const result = await sendPhoto(current, sha256);
    if (result !== 'arrived') {
      await note(tried(current, { lastError: result }));
      // A photo that is no longer on the device must not hold up the rest.
      if (result === 'photo-gone') continue;
      if (result === 'refused') return 'go-on';
      // The server answers and the store does not take this one: others may go.
      return result === 'upload-failed' ? 'again' : 'stop';
    }
    current = {
      ...current,
      lastError: null,
      photos: current.photos.map((photo) => (photo.sha256 === sha256 ? { sha256, state: 'arrived' } : photo)),
    };
    await note(current);
  }
  if (current.photos.every(({ state }) => state === 'arrived')) {
    await confirmEntry(current);
    recordedCount.set(recordedCount.get() + 1);
  }
  return 'go-on';
}

async function sendOne(submissionId: string, recordedNow: RecordedNow, what: What): Promise<Next> {
  const entry = recordedNow.get(submissionId) ?? (await readEntry(submissionId));
  if (what === 'report') return entry?.state === 'waiting' ? sendSubmission(entry, recordedNow) : 'go-on';
  return entry?.state === 'recorded' ? sendPhotos(entry) : 'go-on';
}

/** One tab at a time sends; the server would answer a double as a repeat, but a phone's battery would not. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (typeof navigator.locks === 'undefined') return work();
  await navigator.locks.request('hsl-outbox', work);
}

/** A device that is full or closes its database in the middle stops the line as no signal does: tried again later. */
async function sendSafely(...given: Parameters<typeof sendOne>): Promise<Next> {
  try {
    return await sendOne(...given);
  } catch {
    return 'stop';
  }
}

/**
 * Every report in order, then the photos: a photo that a poor line does not take may hold up no report. Answers what to do
 * with what is left.
 */
async function sendRound(deliver: string | undefined): Promise<Next> {
  const recordedNow: RecordedNow = new Map();
  let left: Next = 'go-on';
  for (const what of ['report', 'photos'] as const) {
    if (what === 'photos' && photosAreHeld()) return left;
    for (const { submissionId, author, state } of entries.get()) {
      // The list was read at the start of this round: what it says is done needs no look into the database.
      if (what === 'report' && state !== 'waiting') continue;
      const current = session.get();
      if (!current || !isCurrent(current)) return left;
      if (author.personId !== current.personId && submissionId !== deliver) continue;
      const next = await sendSafely(submissionId, recordedNow, what);
      if (next === 'stop') return next;
      if (next === 'again') left = next;
    }
  }
  return left;
}

let waitMs = 0;
let nextTry: ReturnType<typeof setTimeout> | undefined;

/** Sends what the signed-in person wrote, in order. `deliver` also sends one entry of a colleague, on their word. */
export async function sendAll(deliver?: string): Promise<void> {
  clearTimeout(nextTry);
  const aloneMs = leftAloneMs();
  if (aloneMs > 0) {
    nextTry = setTimeout(() => void sendAll(deliver), aloneMs);
    return;
  }
  const round: { left: Next } = { left: 'stop' };
  await alone(async () => {
    // What waits is sent in the middle of a night as well, when the sign-in of the evening has run out.
    await keepSignedIn();
    await refresh();
    round.left = await sendRound(deliver);
  }).catch(() => undefined);
  // Waits longer each time the line stays down, at most a minute.
  waitMs = round.left === 'go-on' ? 0 : Math.min(60_000, Math.max(2_000, waitMs * 2));
  if (waitMs > 0) nextTry = setTimeout(() => void sendAll(), waitMs);
}

/** Sends when the page opens, when there is signal again, when the page is looked at, and now and then. */
export function startSending(): void {
  const send = (): void => void sendAll();
  window.addEventListener('online', send);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') send();
  });
  session.subscribe(send);
  setInterval(() => {
    if (entries.get().some(({ state }) => state !== 'refused')) send();
  }, 30_000);
  send();
}
