import { setTimeout as wait } from 'node:timers/promises';
import {
  dayOfInstant,
  hydrantOfSubject,
  strikeOfSubject,
  type DispatchNotice,
  type NoticeSubject,
} from '../../shared/dispatch/notice.ts';
import { nextNotice, type SubjectNow } from '../../shared/dispatch/next.ts';
import { nothingNow, nowOfHydrant, nowOfPlace } from '../../shared/dispatch/now.ts';
import { newDelivery } from '../../shared/outbox/delivery.ts';
import type { NoticeDeps } from './deps.ts';
import { factsFor } from './facts.ts';

/** Others kept writing messages of the same hydrant for as long as we tried. Theirs are newer than ours. */
export class NoticeContended extends Error {
  override readonly name = 'NoticeContended';
}

const MOST_TRIES = 10;

/**
 * Brings what dispatch was told of one hydrant or place up to what is. Told is read before the state is, and the next
 * message is written only if nobody has written one since, so a message never speaks of an older state than the one
 * before it. Doing it twice, late or in any order is harmless. Throws `StoreUnavailable` or `NoticeContended`; then it
 * must be done again.
 */
export async function bringUpToDate(deps: NoticeDeps, subject: NoticeSubject): Promise<void> {
  const { notices, settings, now, pause = wait } = deps;
  const messages = settings.dispatchMessages;
  if (!messages?.on) return;
  for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
    const told = await notices.of(subject);
    const last = told.at(-1)?.value ?? null;
    const state = await readNow(deps, subject);
    const next = nextNotice({
      subject,
      now: state,
      last,
      goesBy: await namesOf(deps, last?.outageIds ?? []),
      tooOldHours: messages.tooOldHours,
      at: now(),
    });
    if (!next) {
      // Whoever wrote the last one may have ended before it was addressed.
      if (last) await addressTo(deps, last);
      return;
    }
    const notice: DispatchNotice = {
      ...next,
      day: dayOfInstant(next.madeAt),
      to: messages.to.map(({ recipientId }) => recipientId),
      facts: await factsFor(deps, next),
      asked: [],
    };
    for (const outageId of notice.outageIds) await notices.mark(outageId, subject);
    if (await notices.add(notice)) return addressTo(deps, notice);
    await pause(Math.random() * 25 * 2 ** Math.min(tries, 5));
  }
  throw new NoticeContended('messages of one hydrant stayed contended');
}

/** One delivery a recipient, each written once. A held message has none. */
export async function addressTo(
  { notices, now }: Pick<NoticeDeps, 'notices' | 'now'>,
  notice: DispatchNotice,
): Promise<void> {
  if (notice.held !== null) return;
  const { subject, number, day } = notice;
  const there = new Set((await notices.deliveriesOf(notice)).map(({ value }) => value.recipientId));
  for (const recipientId of notice.to)
    if (!there.has(recipientId))
      await notices.addDelivery({ subject, number, day, recipientId, ...newDelivery(now()) });
}

async function readNow({ current }: NoticeDeps, subject: NoticeSubject): Promise<SubjectNow> {
  const hydrantId = hydrantOfSubject(subject);
  if (hydrantId !== null) {
    const status = await current.hydrant(hydrantId);
    return status ? nowOfHydrant(status) : nothingNow;
  }
  const strikeId = strikeOfSubject(subject) ?? '';
  const strike = await current.strike(strikeId);
  // Joined into another, it goes by that one's name, and whatever is known of that is told there.
  return strike?.strikeId === strikeId ? nowOfPlace(strike) : nothingNow;
}

/** By which id each outage goes today: a link may have joined the strike into another. */
async function namesOf(
  { current }: NoticeDeps,
  outageIds: readonly string[],
): Promise<(outageId: string) => string> {
  const names = new Map(
    await Promise.all(
      outageIds.map(
        async (outageId) => [outageId, (await current.strike(outageId))?.strikeId ?? outageId] as const,
      ),
    ),
  );
  return (outageId) => names.get(outageId) ?? outageId;
}
