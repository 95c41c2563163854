import { clocksNotSet, todayIn } from '../../shared/clocks/clocks.ts';
import { digestOf } from '../../shared/digest/digest.ts';
import { claimed, failed, newEntry, sent } from '../../shared/digest/outbox.ts';
import { allDeadlines, type DeadlineDeps } from '../calendar/deadlines.ts';
import { describeError, type Log } from '../log/log.ts';
import type { Outbox, StoredEntry } from '../stores/outbox/outbox.ts';
import { NotSent, type MailSender } from '../stores/mail/mailSender.ts';
import { lettersOfLastDays, undeliveredLetters } from './undelivered.ts';

export interface DigestDeps extends DeadlineDeps {
  readonly outbox: Outbox;
  readonly sender: MailSender;
  readonly now: () => Date;
  readonly log: Log;
}

export interface DigestReport {
  readonly written: number;
  readonly sent: number;
  readonly failed: number;
  readonly dead: number;
}

/**
 * Writes today's letters, one a person, and sends what waits. May run as often as one likes: a person's letter of a day
 * is written once, and one that was sent is not sent again. What the mail service does not take stays and is tried
 * again by a later run. A store that is away throws; the next run makes good what is missing.
 */
export async function runDigest(deps: DigestDeps): Promise<DigestReport> {
  const { settings, outbox } = deps;
  const report = { written: 0, sent: 0, failed: 0, dead: 0 };
  if (!settings.digest) return report;
  const today = todayIn(deps.now(), settings.timeZone);
  report.written = await write(deps, today);
  for (const stored of await lettersOfLastDays(outbox, today)) {
    const outcome = await deliver(deps, stored);
    if (outcome) report[outcome] += 1;
  }
  return report;
}

async function write(deps: DigestDeps, today: string): Promise<number> {
  const { settings, outbox } = deps;
  const there = new Set((await outbox.ofDay(today)).map(({ entry }) => entry.personId));
  const missing = settings.digest?.to.filter(({ personId }) => !there.has(personId)) ?? [];
  if (missing.length === 0) return 0;
  const [{ items: deadlines, quiet }, undelivered] = await Promise.all([
    allDeadlines(deps, today),
    undeliveredLetters(outbox, today),
  ]);
  let written = 0;
  for (const { personId, email, locale } of missing) {
    const { subject, text, something } = digestOf({
      deadlines,
      quiet,
      today,
      locale: locale ?? settings.locale,
      utilityName: settings.name,
      publicUrl: settings.publicUrl,
      notSet: clocksNotSet(settings),
      undelivered: undelivered.length,
    });
    if (!something && settings.digest?.whenNothing === 'skip') continue;
    if (await outbox.add(newEntry(today, personId, { to: email, subject, text }, deps.now()))) written += 1;
  }
  return written;
}

async function deliver(
  { outbox, sender, now, log }: DigestDeps,
  stored: StoredEntry,
): Promise<'sent' | 'failed' | 'dead' | null> {
  const taken = claimed(stored.entry, now());
  // Not to be sent now, or another run was quicker.
  if (!taken || !(await outbox.replace(stored, taken))) return null;
  if (taken.state === 'dead') return 'dead';
  const mine: StoredEntry = { entry: taken, version: stored.version + 1 };
  const { day, personId } = taken;
  let outcome;
  try {
    outcome = sent(taken, await sender.send(taken.mail, `${day}-${personId}`), now());
  } catch (error) {
    outcome = failed(taken, error instanceof NotSent ? error.code : 'sender-threw', now());
    log({
      level: outcome.state === 'dead' ? 'error' : 'warn',
      event: 'letter-not-sent',
      day,
      tries: taken.tries,
      why: outcome.why,
      ...describeError(error),
    });
  }
  await outbox.replace(mine, outcome);
  return outcome.state === 'sent' ? 'sent' : outcome.state === 'dead' ? 'dead' : 'failed';
}
