import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';

/** A server in a process of its own that can be killed without a chance to tidy up, and started again. */
export interface Killable {
  /** Starts it; resolves with the first line it prints, when it prints it. */
  start(): Promise<string>;
  /** SIGKILL, and waits until the process is gone. */
  kill(): Promise<void>;
}

/** `script` is run by this test's own Node. Whatever it prints on standard error is shown. */
export function killable(script: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Killable {
  let child: ChildProcess | null = null;
  return {
    async start() {
      const started = spawn(process.execPath, [script, ...args], {
        env: { ...process.env, ...env },
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      child = started;
      const lines = createInterface({ input: started.stdout });
      const [line] = (await Promise.race([
        once(lines, 'line'),
        once(started, 'exit').then(([code]) => {
          throw new Error(`${script} ended with ${String(code)} before it was ready`);
        }),
      ])) as [string];
      return line;
    },
    async kill() {
      if (child === null || child.exitCode !== null || child.signalCode !== null) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
}

export interface CrashReplay<Item, Answer> {
  readonly items: readonly Item[];
  /** Hands one in; rejects when the server did not answer. */
  readonly send: (item: Item) => Promise<Answer>;
  readonly server: Killable;
  /** How many are under way at once. */
  readonly parallel: number;
  /** Killed when this many have been answered. */
  readonly killAfter: number;
}

/**
 * Hands items in, kills the server in the middle, starts it again and hands in every item once more, as devices do
 * that keep an entry until it is confirmed. Answers what became of each in both rounds; a rejected one is null in
 * the first round and throws in the second.
 */
export async function replayThroughCrash<Item, Answer>(
  replay: CrashReplay<Item, Answer>,
): Promise<{ readonly before: readonly (Answer | null)[]; readonly after: readonly Answer[] }> {
  const { items, send, server, parallel, killAfter } = replay;
  let answered = 0;
  let killed: Promise<void> | null = null;
  const before = await inParallel<Item, Answer | null>(items, parallel, async (item) => {
    try {
      const answer = await send(item);
      answered += 1;
      if (answered === killAfter) killed = server.kill();
      return answer;
    } catch {
      return null;
    }
  });
  await (killed ?? server.kill());
  // A port is free again a moment after its process is gone.
  await wait(50);
  await server.start();
  return { before, after: await inParallel(items, parallel, send) };
}

async function inParallel<Item, Answer>(
  items: readonly Item[],
  parallel: number,
  work: (item: Item) => Promise<Answer>,
): Promise<Answer[]> {
  const answers: Answer[] = [];
  let next = 0;
  const worker = async (): Promise<void> => {
    for (let index = (next += 1) - 1; index < items.length; index = (next += 1) - 1)
      answers[index] = await work(items[index]!);
  };
  await Promise.all(Array.from({ length: parallel }, worker));
  return answers;
}
