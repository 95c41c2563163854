import type { LocalDate } from '../costs/days.ts';
import {
  claimDelivery,
  failedDelivery,
  newDelivery,
  sentDelivery,
  type Delivery,
  type Patience,
} from '../outbox/delivery.ts';

/** A letter to one person. */
export interface Mail {
  readonly to: string;
  readonly subject: string;
  /** Plain text. */
  readonly text: string;
}

/** A letter that waits to go out, or did. One a person and day, whoever asks for it how often. */
export interface OutboxEntry extends Delivery {
  readonly day: LocalDate;
  readonly personId: string;
  readonly mail: Mail;
}

/** After so many tries a letter is dead, and the desk says so. */
export const MOST_TRIES = 5;
/** Longer than any sending takes. */
export const CLAIM_MS = 5 * 60_000;
/** The wait after the first failure; it doubles with each. */
export const FIRST_WAIT_MS = 5 * 60_000;

const patience: Patience = { mostTries: MOST_TRIES, claimMs: CLAIM_MS, firstWaitMs: FIRST_WAIT_MS };

export const newEntry = (day: LocalDate, personId: string, mail: Mail, now: Date): OutboxEntry => ({
  day,
  personId,
  mail,
  ...newDelivery(now),
});

/** The entry as whoever sends it now takes it; null when it is not to be sent now. */
export const claimed = (entry: OutboxEntry, now: Date): OutboxEntry | null =>
  claimDelivery(entry, patience, now);

export const sent = (entry: OutboxEntry, messageId: string | null, now: Date): OutboxEntry =>
  sentDelivery(entry, messageId, now);

export const failed = (entry: OutboxEntry, why: string, now: Date): OutboxEntry =>
  failedDelivery(entry, why, patience, now);
