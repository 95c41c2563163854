import type { CompassPoint, Position } from '../nearest/sphere.ts';
import type { Proof } from '../outages/proofs.ts';
import type { Delivery, Patience } from '../outbox/delivery.ts';

/**
 * What a message is about: `hydrant:<id>`, or `place:<strike id>` for a report that names no hydrant. No id holds a
 * control character, so it can stand before a line feed in a key.
 */
export type NoticeSubject = string;
export const hydrantSubject = (hydrantId: string): NoticeSubject => `hydrant:${hydrantId}`;
export const placeSubject = (strikeId: string): NoticeSubject => `place:${strikeId}`;
/** The hydrant of a subject, or null for a place. */
export const hydrantOfSubject = (subject: NoticeSubject): string | null =>
  subject.startsWith('hydrant:') ? subject.slice('hydrant:'.length) : null;
/** The strike of a subject that is a place, or null. */
export const strikeOfSubject = (subject: NoticeSubject): string | null =>
  subject.startsWith('place:') ? subject.slice('place:'.length) : null;

/** A hydrant in service, as dispatch is told of it. */
export interface NearbyHydrant {
  readonly hydrantId: string;
  readonly place: string | null;
  /** Straight line, whole feet. */
  readonly distanceFt: number;
  readonly bearing: CompassPoint;
  /** By the name under which the utility shows it. */
  readonly className: string | null;
  /** Whole gpm, from the newest test that rates it, else from the inventory. */
  readonly ratedFlowGpm: number | null;
  readonly testedOn: string | null;
  readonly private: boolean;
}

/**
 * Everything that a message says. Places, hydrants, times: nothing of a driver, a claim or any person, and none of the
 * free words of a report but those that say where it is, when nothing else does.
 */
export interface NoticeFacts {
  readonly hydrantId: string | null;
  readonly place: string | null;
  readonly position: Position | null;
  /** `strike`, or a cause of the outage form; null where there is none to name. */
  readonly cause: string | null;
  readonly since: string | null;
  readonly expectedAt: string | null;
  readonly returnedAt: string | null;
  /** Proofs that were put off by name: it is back, and these were not shown. */
  readonly notShown: readonly Proof[];
  readonly nearest: readonly NearbyHydrant[];
  /** Hydrants one of which may be the one that was reported without its number. */
  readonly maybe: readonly string[];
  /** Of a correction: what is out instead. Of a hydrant that is out: what was told before in its stead. */
  readonly instead: { readonly hydrantId: string | null; readonly reference: string | null } | null;
}

/** A message to dispatch, one for each change of what it was told last of a hydrant or place. */
export interface DispatchNotice {
  readonly subject: NoticeSubject;
  /** 1, 2, 3: with the subject the key under which it is written once. */
  readonly number: number;
  readonly what: 'out' | 'back' | 'corrected';
  /** Short and sayable; the same from out of service to back. */
  readonly reference: string;
  /** The outages that it speaks of, oldest first. */
  readonly outageIds: readonly string[];
  /** When it happened. */
  readonly at: string;
  readonly madeAt: string;
  /** A person who told dispatch from this minute on told them this. */
  readonly confirmedFrom: string;
  /** Why it was not sent, or null: it was, or will be. */
  readonly held: 'too-old' | 'nothing-sent' | null;
  /** The day under which its deliveries stand (UTC date). */
  readonly day: string;
  /** Recipients of the settings on that day. */
  readonly to: readonly string[];
  readonly facts: NoticeFacts;
  /** Who had it sent although it was held, or sent again. */
  readonly asked: readonly { readonly byPersonId: string; readonly at: string }[];
}

/** One message to one recipient. Its address is in the settings and nowhere else. */
export interface NoticeDelivery extends Delivery {
  readonly subject: NoticeSubject;
  readonly number: number;
  readonly recipientId: string;
  readonly day: string;
}

/** Dispatch cannot wait: seven tries in about an hour (1, 2, 4, 8, 16, 32 minutes apart). */
export const dispatchPatience: Patience = { mostTries: 7, claimMs: 2 * 60_000, firstWaitMs: 60_000 };

/** For so many days, today's among them, a delivery is looked at and may be sent again. */
export const DAYS_LOOKED_AT = 3;

/** The UTC date of an instant. */
export const dayOfInstant = (instant: string): string => new Date(instant).toISOString().slice(0, 10);

/** The last days, today's first, on which a delivery is looked at. */
export const daysLookedAt = (now: Date): string[] =>
  Array.from({ length: DAYS_LOOKED_AT }, (_, back) =>
    dayOfInstant(new Date(now.getTime() - back * 86_400_000).toISOString()),
  );
