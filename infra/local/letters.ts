import { handler } from '../../functions/digest/handler.ts';
import type { DigestReport } from '../../functions/digest/run.ts';
import { describeError, type Log } from '../../functions/log/log.ts';
import { dayAt } from '../../shared/costs/days.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';

const CHECK_MS = 10 * 60_000;
const HOUR_MS = 3_600_000;

export interface Letters {
  /** Lets a run that is under way finish. */
  stop(): Promise<void>;
}

export interface LettersOptions {
  readonly settings: UtilitySettings;
  readonly log: Log;
  /** Told when letters were written to the data folder. */
  readonly told: (sent: number) => void;
  readonly run?: () => Promise<DigestReport | null>;
  readonly now?: () => Date;
}

/** Does what the schedule does on AWS: from the hour of the settings on, each day, until every letter has gone. */
export function sendLettersDaily({
  settings: { digest, timeZone },
  log,
  told,
  run = handler,
  now = () => new Date(),
}: LettersOptions): Letters {
  if (!digest) return { stop: async () => undefined };
  let running: Promise<void> = Promise.resolve();
  const check = (): void => {
    const ms = now().getTime();
    if (ms < dayAt(ms, timeZone).fromMs + digest.hour * HOUR_MS) return;
    running = running.then(async () => {
      try {
        const report = await run();
        if (report && report.sent > 0) told(report.sent);
      } catch (error) {
        log({ level: 'error', event: 'digest-failed', ...describeError(error) });
      }
    });
  };
  check();
  const timer = setInterval(check, CHECK_MS);
  timer.unref();
  return {
    stop: () => {
      clearInterval(timer);
      return running;
    },
  };
}
