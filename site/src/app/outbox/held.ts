import type { Answer } from '../core/api.ts';
import { session } from '../core/session.ts';

export type Failed = Exclude<Answer<unknown>, { outcome: 'ok' }>;

/** One person may send no more photos today: those of others may still go, and every report. */
export const isUsedUp = (answer: Failed): boolean =>
  answer.outcome === 'unreachable' && (answer.problems ?? []).some(({ code }) => code === 'upload-budget');

/** However long the server asks to be left alone: a report that dispatch waits for is not held up longer. */
const MOST_ALONE_MS = 60_000;
/** The same of photos: the limit may be raised meanwhile. */
const MOST_HELD_MS = 15 * 60_000;

// By a clock that only goes forward: a phone whose hour is set right must not wait for as long as it was wrong.
let aloneUntilMs = 0;
let photosHeld = { personId: '', untilMs: 0 };

/** Keeps in mind what the server asked for: to be left alone, or no more of this person's photos today. */
export function heed(answer: Failed): void {
  if (answer.outcome !== 'unreachable' || answer.retryAfterMs === undefined) return;
  if (isUsedUp(answer))
    photosHeld = {
      personId: session.get()?.personId ?? '',
      untilMs: performance.now() + Math.min(answer.retryAfterMs, MOST_HELD_MS),
    };
  else aloneUntilMs = performance.now() + Math.min(answer.retryAfterMs, MOST_ALONE_MS);
}

/** So long nothing is to be tried, ms; 0 or less: now. */
export const leftAloneMs = (): number => aloneUntilMs - performance.now();

/** Whether the photos that the signed-in person sends have to wait. A colleague's do not. */
export const photosAreHeld = (): boolean =>
  photosHeld.untilMs > performance.now() && photosHeld.personId === session.get()?.personId;
