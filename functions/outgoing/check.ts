import { todayIn } from '../../shared/clocks/clocks.ts';
import { daysLookedAt } from '../../shared/dispatch/notice.ts';
import { DISPATCH_PATIENCE_MS, isLate, LETTER_PATIENCE_MS } from '../../shared/outbox/late.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { lettersOfLastDays } from '../digest/undelivered.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import type { Log } from '../log/log.ts';
import type { SendingAccount } from '../stores/mail/sendingAccount.ts';
import type { Notices } from '../stores/outbox/notices.ts';
import type { Outbox } from '../stores/outbox/outbox.ts';

export interface OutgoingDeps {
  readonly settings: UtilitySettings;
  readonly outbox: Outbox;
  readonly notices: Notices;
  readonly account: SendingAccount;
  readonly now: () => Date;
  readonly log: Log;
}

export interface OutgoingReport {
  /** Messages to fire dispatch of the last days that should have gone and have not. */
  readonly lateMessages: number;
  /** Daily letters of the last days, likewise. */
  readonly lateLetters: number;
  /** What keeps mail or texts from anybody, as codes. */
  readonly closed: readonly ClosedWay[];
}
export type ClosedWay =
  'mail-sandbox' | 'text-sandbox' | 'letter-sender-unconfirmed' | 'dispatch-sender-unconfirmed';

/**
 * Looks whether what should go out does: counts what is late, and asks whether the account may send at all. One log line,
 * which the alarms count. Sends nothing and changes nothing. Throws when a store or service is away; the alarm on missing
 * lines sees that.
 */
export async function checkOutgoing(deps: OutgoingDeps): Promise<OutgoingReport> {
  const { settings, outbox, notices, now, log } = deps;
  const at = now();
  const deliveries = await Promise.all(daysLookedAt(at).map((day) => notices.deliveriesOn(day)));
  const letters = await lettersOfLastDays(outbox, todayIn(at, settings.timeZone));
  const report = {
    lateMessages: deliveries.flat().filter(({ value }) => isLate(value, DISPATCH_PATIENCE_MS, at)).length,
    lateLetters: letters.filter(({ entry }) => isLate(entry, LETTER_PATIENCE_MS, at)).length,
    closed: await closedWays(deps),
  };
  const { lateMessages, lateLetters, closed } = report;
  log({
    level: lateMessages + lateLetters + closed.length > 0 ? 'warn' : 'info',
    event: watchedEvents.lateMessages.event,
    lateMessages,
    lateLetters,
    closedWays: closed.length,
    closed: closed.join(' '),
  });
  return report;
}

/** Only of what the settings ask to be sent: a utility that sends no texts need not leave that sandbox. */
async function closedWays({ settings, account }: OutgoingDeps): Promise<ClosedWay[]> {
  const { digest } = settings;
  const messages = settings.dispatchMessages?.on ? settings.dispatchMessages : undefined;
  const mails = digest !== undefined || messages?.to.some(({ by }) => by === 'email') === true;
  const texts = messages?.to.some(({ by }) => by === 'text') === true;
  const asked: [ClosedWay, boolean][] = [
    ['mail-sandbox', mails && !(await account.mailIsOpen())],
    ['letter-sender-unconfirmed', digest !== undefined && !(await account.isConfirmed(digest.from))],
    [
      'dispatch-sender-unconfirmed',
      messages?.to.some(({ by }) => by === 'email') === true && !(await account.isConfirmed(messages.from)),
    ],
    ['text-sandbox', texts && !(await account.textsAreOpen())],
  ];
  return asked.flatMap(([way, closed]) => (closed ? [way] : []));
}
