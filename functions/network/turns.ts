import { StoreUnavailable } from '../stores/faults.ts';

/** Runs some things at a time; the rest wait their turn, and beyond `mostWaiting` they are asked to come again. */
export function inTurns(atOnce: number, mostWaiting: number): <T>(run: () => Promise<T>) => Promise<T> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (run) => {
    if (running >= atOnce) {
      if (waiting.length >= mostWaiting)
        throw new StoreUnavailable(`${mostWaiting} questions about the network are waiting already`);
      await new Promise<void>((turn) => waiting.push(turn));
    } else running += 1;
    try {
      return await run();
    } finally {
      // The turn passes on, so the number that run stays the same.
      const next = waiting.shift();
      if (next) next();
      else running -= 1;
    }
  };
}
