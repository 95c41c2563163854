import {
  daysLookedAt,
  dispatchPatience,
  type DispatchNotice,
  type NoticeDelivery,
} from '../../shared/dispatch/notice.ts';
import { readerFor } from '../../shared/dispatch/reader.ts';
import type { DispatchRecipient } from '../../shared/dispatch/settings.ts';
import { noticeEmail, noticeText } from '../../shared/dispatch/text.ts';
import { claimDelivery, endDelivery, failedDelivery, sentDelivery } from '../../shared/outbox/delivery.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { describeError, type Log } from '../log/log.ts';
import { NotSent, type MailSender } from '../stores/mail/mailSender.ts';
import type { Kept, Notices } from '../stores/outbox/notices.ts';
import type { TextSender } from '../stores/texts/textSender.ts';

export interface SendDeps {
  readonly settings: UtilitySettings;
  readonly notices: Notices;
  readonly email: MailSender;
  readonly texts: TextSender;
  readonly now: () => Date;
  readonly log: Log;
}

export interface SendReport {
  readonly sent: number;
  readonly failed: number;
  readonly dead: number;
  readonly overtaken: number;
}

/**
 * Sends what waits and is due. May run as often as one likes, and several at once: each message to each recipient is
 * claimed by its version before it is handed over, and one that was sent is not sent again. At least once: where the
 * service took it and the answer was lost, it goes again.
 */
export async function sendDue(deps: SendDeps): Promise<SendReport> {
  const report = { sent: 0, failed: 0, dead: 0, overtaken: 0 };
  if (!deps.settings.dispatchMessages?.on) return report;
  // The oldest first: of one hydrant, what happened first is told first.
  for (const day of daysLookedAt(deps.now()).reverse())
    for (const kept of await deps.notices.deliveriesOn(day)) {
      const outcome = await deliver(deps, kept);
      if (outcome) report[outcome] += 1;
    }
  return report;
}

type Outcome = keyof SendReport;

async function deliver(deps: SendDeps, kept: Kept<NoticeDelivery>): Promise<Outcome | null> {
  const { notices, now, log } = deps;
  const taken = claimDelivery(kept.value, dispatchPatience, now());
  if (!taken) return null;
  const told = (await notices.of(kept.value.subject)).map(({ value }) => value);
  const notice = told.find(({ number }) => number === kept.value.number);
  // Sent now it would take back what came after it.
  if (told.some(({ number }) => number > kept.value.number)) {
    const overtaken = endDelivery(kept.value, 'overtaken', now());
    return (await notices.replaceDelivery(kept, overtaken)) ? 'overtaken' : null;
  }
  if (!(await notices.replaceDelivery(kept, taken))) return null;
  if (taken.state === 'dead') return 'dead';
  let outcome: NoticeDelivery;
  try {
    outcome = sentDelivery(taken, await handOver(deps, taken, notice), now());
  } catch (error) {
    const code = error instanceof NotSent ? error.code : 'sender-threw';
    outcome = failedDelivery(taken, code, dispatchPatience, now());
    // Whom it was for by its id in the settings; never an address, never what it says.
    log({
      level: outcome.state === 'dead' ? 'error' : 'warn',
      event: 'dispatch-message-not-sent',
      reference: notice?.reference ?? null,
      recipientId: taken.recipientId,
      tries: taken.tries,
      why: code,
      ...describeError(error),
    });
  }
  await notices.replaceDelivery({ value: taken, version: kept.version + 1 }, outcome);
  return outcome.state === 'sent' ? 'sent' : outcome.state === 'dead' ? 'dead' : 'failed';
}

async function handOver(
  { settings, email, texts }: SendDeps,
  { recipientId, number }: NoticeDelivery,
  notice: DispatchNotice | undefined,
): Promise<string | null> {
  const recipient = settings.dispatchMessages?.to.find((one) => one.recipientId === recipientId);
  if (!recipient) throw new NotSent('not-in-the-settings');
  if (!notice) throw new NotSent('no-such-notice');
  const key = ['dispatch', notice.reference, number, notice.what, recipientId].join('-');
  return recipient.by === 'email'
    ? email.send({ to: recipient.email, ...noticeEmail(notice, readerOf(settings, recipient)) }, key)
    : texts.send(
        { recipientId, phone: recipient.phone, text: noticeText(notice, readerOf(settings, recipient)) },
        key,
      );
}

const readerOf = (settings: UtilitySettings, { locale }: DispatchRecipient) =>
  readerFor(settings, locale ?? settings.locale);
