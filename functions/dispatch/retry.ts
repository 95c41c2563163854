import {
  DAYS_LOOKED_AT,
  dayOfInstant,
  daysLookedAt,
  type DispatchNotice,
} from '../../shared/dispatch/notice.ts';
import { resumedDelivery } from '../../shared/outbox/delivery.ts';
import { problem } from '../../shared/problems/problem.ts';
import { addressTo } from '../dispatchSend/make.ts';
import { notFound, refuse } from '../http/refused.ts';
import type { ReadDeps } from './read.ts';

/** Names of people who asked are kept so far back. */
const MOST_ASKED = 20;

/**
 * A person asks for a message again: what failed is tried anew, and one that was held goes out. Written here, sent by
 * the function that sends. Refuses one that a later message has overtaken, that is of the past, or that has gone.
 */
export async function retryNotice(
  deps: ReadDeps,
  asked: { readonly subject: string; readonly number: number; readonly byPersonId: string },
): Promise<void> {
  const { settings, notices, now } = deps;
  const messages = settings.dispatchMessages;
  if (!messages?.on) return refuse('taken', problem('messages-off'));
  const told = await notices.of(asked.subject);
  const kept = told.find(({ value }) => value.number === asked.number);
  if (!kept) return notFound('no-such-notice');
  if (told.some(({ value }) => value.number > asked.number))
    return refuse('taken', problem('notice-overtaken', 'number'));

  const today = dayOfInstant(now().toISOString());
  const notice: DispatchNotice = {
    ...kept.value,
    asked: [...kept.value.asked, { byPersonId: asked.byPersonId, at: now().toISOString() }].slice(
      -MOST_ASKED,
    ),
    ...(kept.value.held === null
      ? {}
      : { held: null, day: today, to: messages.to.map(({ recipientId }) => recipientId) }),
  };
  if (!daysLookedAt(now()).includes(notice.day))
    return refuse('taken', problem('notice-past', 'number', { days: DAYS_LOOKED_AT }));

  const resumed = (await notices.deliveriesOf(notice)).flatMap((delivery) => {
    const next = resumedDelivery(delivery.value, now());
    return next ? [{ delivery, next }] : [];
  });
  if (kept.value.held === null && resumed.length === 0)
    return refuse('taken', problem('notice-went', 'number'));
  // Somebody else asked in this moment: theirs stands, and brings about the same.
  await notices.replace(kept, notice);
  for (const { delivery, next } of resumed) await notices.replaceDelivery(delivery, next);
  await addressTo(deps, notice);
}
