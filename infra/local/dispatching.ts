import { tables as tableKeys } from '../../shared/deployment/tables.ts';
import { partitions } from '../../shared/projections/items.ts';
import { handler } from '../../functions/dispatchSend/handler.ts';
import { describeError, type Log } from '../../functions/log/log.ts';
import type { KeptItem } from '../../functions/project/deps.ts';
import { onKept, tables } from '../../functions/wiring.ts';

/** Changes that come close together are one waking. */
const GATHER_MS = 200;
/** How often what failed is tried again; a deployment's clock does it each minute. */
const AGAIN_MS = 15_000;
/** Records of one waking, as many as a deployment's stream brings. */
const MOST_RECORDS = 25;

/** What a deployment's stream and clock do for messages to dispatch. */
export interface Dispatching {
  /** Looks at every hydrant and strike: for a start after a kill, which may have come between a projection and its message. */
  lookAtAll(): Promise<void>;
  /** Resolves when nothing is left to look at. */
  settled(): Promise<void>;
  /** Ends it; true when nothing was left undone. */
  stop(): Promise<boolean>;
}

/** Hands the handler the event that the projections table's stream would bring: keys are all it reads. */
export function dispatchHere(log: Log): Dispatching {
  const waiting = new Map<string, KeptItem>();
  let working: Promise<void> = Promise.resolve();
  let gathering: NodeJS.Timeout | undefined;

  const add = (items: readonly KeptItem[]): void => {
    for (const item of items) waiting.set(`${item.partition}\n${item.key}`, item);
  };
  const work = (): Promise<void> => {
    clearTimeout(gathering);
    gathering = undefined;
    return (working = working.then(oneWaking));
  };
  const oneWaking = async (): Promise<void> => {
    do {
      const items = [...waiting.values()].slice(0, MOST_RECORDS);
      for (const { partition, key } of items) waiting.delete(`${partition}\n${key}`);
      try {
        const run = await handler({ Records: items.map(recordOf) });
        const again = new Set(run?.batchItemFailures.map(({ itemIdentifier }) => itemIdentifier));
        const failed = items.filter((_, index) => again.has(String(index)));
        add(failed);
        // Tried again at the next waking, and not at once.
        if (failed.length > 0) return;
      } catch (error) {
        log({ level: 'error', event: 'dispatch-messages-failed', ...describeError(error) });
        add(items);
        return;
      }
    } while (waiting.size > 0);
  };

  onKept((items) => {
    add(items);
    gathering ??= setTimeout(() => void work(), GATHER_MS);
  });
  const again = setInterval(() => void work(), AGAIN_MS);
  again.unref();
  return {
    async lookAtAll() {
      const { projections } = tables();
      for (const partition of [partitions.hydrant, partitions.strike, partitions.joined])
        add((await projections.list(partition)).map(({ key }) => ({ partition, key })));
      await work();
    },
    settled: () => (waiting.size > 0 ? work() : working),
    async stop() {
      clearInterval(again);
      await (waiting.size > 0 ? work() : working);
      return waiting.size === 0;
    },
  };
}

const recordOf = ({ partition, key }: KeptItem, index: number) => {
  const { partitionKey, sortKey } = tableKeys.projections;
  return {
    eventSource: 'aws:dynamodb',
    eventName: 'MODIFY' as const,
    dynamodb: {
      Keys: { [partitionKey]: { S: partition }, [sortKey]: { S: key } },
      SequenceNumber: String(index),
      StreamViewType: 'KEYS_ONLY' as const,
    },
  };
};
