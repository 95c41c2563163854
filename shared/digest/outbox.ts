import type { LocalDate } from '../costs/days.ts';

/** A letter to one person. */
export interface Mail {
  readonly to: string;
  readonly subject: string;
  /** Plain text. */
  readonly text: string;
}

/** A letter that waits to go out, or did. One a person and day, whoever asks for it how often. */
export interface OutboxEntry {
  readonly day: LocalDate;
  readonly personId: string;
  readonly mail: Mail;
  readonly state: 'waiting' | 'claimed' | 'sent' | 'failed' | 'dead';
  /** How often somebody set out to send it. */
  readonly tries: number;
  readonly addedAt: string;
  readonly changedAt: string;
  /** Whoever claimed it has until then; after that it counts as given up, because its process ended. */
  readonly claimedUntil: string | null;
  /** Not tried again before. */
  readonly nextTryAt: string;
  /** Why it did not go, as a code: never an address, never words of the mail service. */
  readonly why: string | null;
  /** What the mail service calls it. */
  readonly messageId: string | null;
}

/** After so many tries a letter is dead, and the desk says so. */
export const MOST_TRIES = 5;
/** Longer than any sending takes. */
export const CLAIM_MS = 5 * 60_000;
/** The wait after the first failure; it doubles with each. */
export const FIRST_WAIT_MS = 5 * 60_000;

const at = (now: Date, laterMs = 0): string => new Date(now.getTime() + laterMs).toISOString();

export const newEntry = (day: LocalDate, personId: string, mail: Mail, now: Date): OutboxEntry => ({
  day,
  personId,
  mail,
  state: 'waiting',
  tries: 0,
  addedAt: at(now),
  changedAt: at(now),
  claimedUntil: null,
  nextTryAt: at(now),
  why: null,
  messageId: null,
});

/**
 * The entry as whoever sends it now takes it; null when it is not to be sent now. One whose last sender vanished is
 * taken again, so a letter may go out twice (its sender was killed after sending and before saying so) and is never lost
 * in silence: after `MOST_TRIES` it is dead.
 */
export function claimed(entry: OutboxEntry, now: Date): OutboxEntry | null {
  const { state, tries, claimedUntil, nextTryAt } = entry;
  const abandoned = state === 'claimed' && claimedUntil !== null && claimedUntil <= at(now);
  const due = (state === 'waiting' || state === 'failed') && nextTryAt <= at(now);
  if (!abandoned && !due) return null;
  if (tries >= MOST_TRIES)
    return { ...entry, state: 'dead', changedAt: at(now), claimedUntil: null, why: entry.why ?? 'vanished' };
  return {
    ...entry,
    state: 'claimed',
    tries: tries + 1,
    changedAt: at(now),
    claimedUntil: at(now, CLAIM_MS),
  };
}

export const sent = (entry: OutboxEntry, messageId: string | null, now: Date): OutboxEntry => ({
  ...entry,
  state: 'sent',
  changedAt: at(now),
  claimedUntil: null,
  why: null,
  messageId,
});

export const failed = (entry: OutboxEntry, why: string, now: Date): OutboxEntry => ({
  ...entry,
  state: entry.tries >= MOST_TRIES ? 'dead' : 'failed',
  changedAt: at(now),
  claimedUntil: null,
  nextTryAt: at(now, FIRST_WAIT_MS * 2 ** (entry.tries - 1)),
  why,
});
