import { daysLookedAt, type NoticeDelivery } from '../../shared/dispatch/notice.ts';
import type { Notices } from '../stores/outbox/notices.ts';

/** Deliveries of the last days that failed, tried again or not. */
export async function failedDeliveries(notices: Notices, now: Date): Promise<readonly NoticeDelivery[]> {
  const kept = await Promise.all(daysLookedAt(now).map((day) => notices.deliveriesOn(day)));
  return kept
    .flat()
    .map(({ value }) => value)
    .filter(({ state }) => state === 'failed' || state === 'dead');
}
