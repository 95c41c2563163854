import type { Delivery } from './delivery.ts';

/**
 * Whether something that should have gone out has not: given up, or still to be sent so long after it was written. The
 * second also finds a sender that no longer runs, which would give up nothing.
 */
export const isLate = ({ state, addedAt }: Delivery, patienceMs: number, now: Date): boolean =>
  state === 'dead' ||
  ((state === 'waiting' || state === 'claimed' || state === 'failed') &&
    Date.parse(addedAt) + patienceMs <= now.getTime());

/** A message to fire dispatch may take so long; by then it has failed three times. */
export const DISPATCH_PATIENCE_MS = 10 * 60_000;
/** The daily letter: its sender is woken each hour. */
export const LETTER_PATIENCE_MS = 2 * 3_600_000;
