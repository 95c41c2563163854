import { arrivalOf } from '../../functions/display/arrived.ts';
import { describeError, type Log } from '../../functions/log/log.ts';

/** What S3's events do on AWS: whatever arrives is handed to the function that makes display copies, one at a time. */
export interface Arrivals {
  /** An object was written under this key. Returns at once. */
  arrived(key: string): void;
  /** Resolves when nothing waits. */
  settled(): Promise<void>;
  /** Lets go of what waits: the next packet makes what is missing. Resolves when the one at work is done. */
  stop(): Promise<void>;
}

type Handle = (event: unknown) => Promise<void>;

/** With more waiting, somebody is emptying an outbox: accepting goes before showing, and packets make the rest. */
const MOST_WAITING = 500;

export function createArrivals(open: () => Promise<Handle>, log: Log): Arrivals {
  const waiting: string[] = [];
  let working: Promise<void> | null = null;
  let stopped = false;
  const work = async (): Promise<void> => {
    for (let key = waiting.shift(); key !== undefined && !stopped; key = waiting.shift()) {
      try {
        await (
          await open()
        )(arrivalOf(key));
      } catch (error) {
        log({ level: 'error', event: 'display-copy-failed', ...describeError(error) });
      }
    }
    working = null;
  };
  return {
    arrived(key) {
      if (stopped || waiting.length >= MOST_WAITING) return;
      waiting.push(key);
      working ??= work();
    },
    async settled() {
      while (working) await working;
    },
    async stop() {
      stopped = true;
      waiting.length = 0;
      await working;
    },
  };
}

/** With the handler that is deployed. Its picture library is read when the first photo comes. */
export const arrivalsHere = (log: Log): Arrivals =>
  createArrivals(async () => (await import('../../functions/display/handler.ts')).handler, log);
