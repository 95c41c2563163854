/** Something that goes out to one person or one desk, and what became of it. */
export interface Delivery {
  /** `overtaken`: not sent, because what came after it says otherwise. */
  readonly state: 'waiting' | 'claimed' | 'sent' | 'failed' | 'dead' | 'overtaken';
  /** How often somebody set out to send it. */
  readonly tries: number;
  readonly addedAt: string;
  readonly changedAt: string;
  /** Whoever claimed it has until then; after that it counts as given up, because its process ended. */
  readonly claimedUntil: string | null;
  /** Not tried again before. */
  readonly nextTryAt: string;
  /** Why it did not go, as a code: never an address, never words of the service. */
  readonly why: string | null;
  /** What the service that took it calls it. */
  readonly messageId: string | null;
}

/** How patiently something is sent. */
export interface Patience {
  /** After so many tries it is dead, and somebody is told. */
  readonly mostTries: number;
  /** Longer than any sending takes. */
  readonly claimMs: number;
  /** The wait after the first failure; it doubles with each. */
  readonly firstWaitMs: number;
}

const at = (now: Date, laterMs = 0): string => new Date(now.getTime() + laterMs).toISOString();

export const newDelivery = (now: Date): Delivery => ({
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
 * The delivery as whoever sends it now takes it; null when it is not to be sent now. One whose last sender vanished is
 * taken again, so it may go out twice (its sender was killed after sending and before saying so) and is never lost in
 * silence: after the last try it is dead.
 */
export function claimDelivery<D extends Delivery>(
  delivery: D,
  { mostTries, claimMs }: Patience,
  now: Date,
): D | null {
  const { state, tries, claimedUntil, nextTryAt } = delivery;
  const abandoned = state === 'claimed' && claimedUntil !== null && claimedUntil <= at(now);
  const due = (state === 'waiting' || state === 'failed') && nextTryAt <= at(now);
  if (!abandoned && !due) return null;
  if (tries >= mostTries) return { ...endDelivery(delivery, 'dead', now), why: delivery.why ?? 'vanished' };
  return {
    ...delivery,
    state: 'claimed',
    tries: tries + 1,
    changedAt: at(now),
    claimedUntil: at(now, claimMs),
  };
}

export const sentDelivery = <D extends Delivery>(delivery: D, messageId: string | null, now: Date): D => ({
  ...endDelivery(delivery, 'sent', now),
  why: null,
  messageId,
});

export const failedDelivery = <D extends Delivery>(
  delivery: D,
  why: string,
  { mostTries, firstWaitMs }: Patience,
  now: Date,
): D => ({
  ...endDelivery(delivery, delivery.tries >= mostTries ? 'dead' : 'failed', now),
  nextTryAt: at(now, firstWaitMs * 2 ** (delivery.tries - 1)),
  why,
});

/** Not to be tried again, whatever the reason. */
export const endDelivery = <D extends Delivery>(delivery: D, state: Delivery['state'], now: Date): D => ({
  ...delivery,
  state,
  changedAt: at(now),
  claimedUntil: null,
});

/** One that failed, tried again from the start because a person asked; null for one that did not fail. */
export const resumedDelivery = <D extends Delivery>(delivery: D, now: Date): D | null =>
  delivery.state === 'failed' || delivery.state === 'dead'
    ? { ...endDelivery(delivery, 'waiting', now), tries: 0, nextTryAt: at(now) }
    : null;
