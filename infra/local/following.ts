import { setTimeout as wait } from 'node:timers/promises';
import type { Stream } from '../../shared/submissions/envelope.ts';
import { tables as tableKeys } from '../../shared/deployment/tables.ts';
import { handler as project } from '../../functions/project/handler.ts';
import { replayUnprojected } from '../../functions/project/rebuild.ts';
import { handler as publish } from '../../functions/publish/handler.ts';
import { describeError, type Log } from '../../functions/log/log.ts';
import { inventoryStore, onAppend, tables } from '../../functions/wiring.ts';

/** An answer waits this long for its projection, so that a reader sees what was just sent; the work goes on after. */
const ANSWER_WAITS_MS = 500;
/** With more than this waiting, somebody is emptying an outbox or importing: accepting goes before showing. */
const BUSY = 3;
/** Changes that come close together make one publication. */
const GATHER_MS = 400;
/** A stop waits this long for what is left to project; the next start makes good the rest. */
const STOP_WAITS_MS = 10_000;
const FIRST_RETRY_MS = 500;
const LAST_RETRY_MS = 30_000;

/** What a deployment's streams and schedule do: facts → projections → pages. */
export interface Following {
  /** Makes good what a killed process left undone. */
  replay(): Promise<void>;
  /**
   * Publishes now, unless a publication is under way; then once more after it. Answers whether the last of them was
   * published, and never throws: the report is in the log, and what failed is tried again soon.
   */
  publishNow(): Promise<boolean>;
  /** Begins to publish on change and at the interval. */
  startPublishing(everyMinutes: number): void;
  /** Resolves when nothing is left to project. */
  settled(): Promise<void>;
  /** Ends it; true when nothing was left undone. */
  stop(): Promise<boolean>;
}

export interface FollowingDeps {
  readonly project: (stream: Stream) => Promise<void>;
  readonly replay: () => Promise<void>;
  readonly publish: () => Promise<void>;
  readonly log: Log;
}

/** Follows facts accepted in this process, on the stores that the environment names, with the handlers that AWS runs. */
export function followHere(log: Log): Following {
  const { ledger, projections, unprojected } = tables();
  const hydrantType = async (hydrantId: string) =>
    (await (await inventoryStore()).hydrant(hydrantId))?.type ?? 'unknown';
  const { following, appended } = createFollowing({
    project: projectAsOnAws,
    replay: async () => {
      await replayUnprojected({ ledger, projections, unprojected, hydrantType });
    },
    publish,
    log,
  });
  onAppend(({ stream }) => appended(stream));
  return following;
}

/** Hands the projector the event that the table's stream would bring: keys are all it reads. */
async function projectAsOnAws(stream: Stream): Promise<void> {
  const { partitionKey } = tableKeys.submissions;
  const { batchItemFailures } = await project({
    Records: [
      {
        eventSource: 'aws:dynamodb',
        dynamodb: { Keys: { [partitionKey]: { S: stream } }, SequenceNumber: '1' },
      },
    ],
  });
  if (batchItemFailures.length > 0) throw new ProjectionFailed('the projector asks for this stream again');
}

/** The projector has said why in the log. */
class ProjectionFailed extends Error {
  override readonly name = 'ProjectionFailed';
}

/**
 * One projection at a time: they share the store and the processor, and a stream that changes ten times while it waits
 * is projected once. A failure is logged and tried again, later and later, for as long as the server runs.
 */
export function createFollowing({ project, replay, publish, log }: FollowingDeps): {
  readonly following: Following;
  readonly appended: (stream: Stream) => Promise<void>;
} {
  const waiting = new Map<Stream, { done: Promise<void>; resolve: (value?: undefined) => void }>();
  let stopping = false;
  let working: Promise<void> | null = null;

  function enqueue(stream: Stream): Promise<void> {
    const already = waiting.get(stream);
    if (already) return already.done;
    const { promise: done, resolve } = Promise.withResolvers<undefined>();
    waiting.set(stream, { done, resolve });
    if (!stopping) working ??= work();
    return done;
  }

  async function work(): Promise<void> {
    let retryMs = FIRST_RETRY_MS;
    while (!stopping) {
      const [stream, entry] = waiting.entries().next().value ?? [];
      if (stream === undefined || entry === undefined) break;
      // Taken off before the ledger is read: a fact that comes meanwhile waits for a run of its own.
      waiting.delete(stream);
      try {
        await project(stream);
        retryMs = FIRST_RETRY_MS;
        entry.resolve();
        publisher.soon();
      } catch (error) {
        log({ level: 'error', event: 'projection-failed', ...describeError(error) });
        const newer = waiting.get(stream);
        if (newer) void newer.done.then(() => entry.resolve());
        else waiting.set(stream, entry);
        await wait(retryMs, undefined, { ref: false });
        retryMs = Math.min(retryMs * 2, LAST_RETRY_MS);
      }
    }
    // In the same step as the last look at what waits, so that nothing can come in between and wait for ever.
    working = null;
  }

  const publisher = createPublisher(publish);
  const following: Following = {
    replay,
    publishNow: publisher.now,
    startPublishing: publisher.start,
    async settled() {
      while (working) await working;
    },
    async stop() {
      await publisher.stop();
      await Promise.race([working, wait(STOP_WAITS_MS, undefined, { ref: false })]);
      stopping = true;
      return working === null && waiting.size === 0;
    },
  };
  const appended = async (stream: Stream): Promise<void> => {
    const done = enqueue(stream);
    if (waiting.size > BUSY) return;
    await Promise.race([done, wait(ANSWER_WAITS_MS, undefined, { ref: false })]);
  };
  return { following, appended };
}

/** One publication at a time; asked again meanwhile, once more after it. */
function createPublisher(publish: () => Promise<void>) {
  let started = false;
  /** How many were asked for, and how many of those are in what was published. */
  let asked = 0;
  let running: Promise<boolean> | null = null;
  let gathering: NodeJS.Timeout | undefined;
  let interval: NodeJS.Timeout | undefined;
  let retry: NodeJS.Timeout | undefined;
  let retryMs = FIRST_RETRY_MS;
  let stopped = false;

  async function publishAll(): Promise<boolean> {
    let published = false;
    for (let begun = -1; begun < asked;) {
      begun = asked;
      // The publisher has reported it; the page that stands says itself until when it may be relied on.
      published = await publish().then(
        () => true,
        () => false,
      );
    }
    running = null;
    again(published);
    return published;
  }
  function again(published: boolean): void {
    clearTimeout(retry);
    if (published) retryMs = FIRST_RETRY_MS;
    if (published || stopped) return;
    retry = setTimeout(() => void now(), retryMs);
    retry.unref();
    retryMs = Math.min(retryMs * 2, LAST_RETRY_MS);
  }
  const now = (): Promise<boolean> => {
    asked += 1;
    return (running ??= publishAll());
  };
  return {
    now,
    soon: () => {
      if (started) gathering ??= setTimeout(() => ((gathering = undefined), void now()), GATHER_MS);
    },
    start: (everyMinutes: number) => {
      started = true;
      interval = setInterval(() => void now(), everyMinutes * 60_000);
    },
    stop: async () => {
      started = false;
      stopped = true;
      clearTimeout(retry);
      clearTimeout(gathering);
      clearInterval(interval);
      await running;
    },
  };
}
