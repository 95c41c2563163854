import type { OutboxEntry } from '../../../shared/digest/outbox.ts';

export interface StoredEntry {
  readonly entry: OutboxEntry;
  /** Counts its writes, so that of two who claim it one gets it. */
  readonly version: number;
}

/** Letters that wait to go out, or did: one a person and day. */
export interface Outbox {
  /** Puts a letter in. False when that person's letter of that day is there already; then nothing changes. */
  add(entry: OutboxEntry): Promise<boolean>;
  /** Letters of one day. */
  ofDay(day: string): Promise<readonly StoredEntry[]>;
  /** Writes what became of a letter if nobody has written since it was read. False when somebody has. */
  replace(stored: StoredEntry, next: OutboxEntry): Promise<boolean>;
}
