import { logLine } from '../log/log.ts';
import { currentState } from '../records/currentState.ts';
import { environment, tables } from '../wiring.ts';
import { openSender } from '../stores/mail/openSender.ts';
import { runDigest, type DigestReport } from './run.ts';
import { OperatorFault, wordless } from '../log/wordless.ts';

/**
 * Writes and sends the day's letters. Woken each hour from the hour of the settings on; a second run of a day only tries
 * what has not gone yet. Throws when the stores are away, so that the schedule tries again and the alarm on errors sees it.
 */
export const handler = wordless(async (): Promise<DigestReport | null> => {
  const { utility: settings, mailUrl } = environment();
  if (!settings.digest) return null;
  if (mailUrl === null) throw new OperatorFault('no sender of letters is set here');
  const report = await runDigest({
    ...tables(),
    settings,
    current: currentState(tables()),
    sender: await openSender(mailUrl, settings.digest.from),
    now: () => new Date(),
    log: logLine,
  });
  logLine({ level: report.dead > 0 ? 'error' : 'info', event: 'digest', ...report });
  return report;
});
