import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import type { FunctionAnswer, FunctionLoaded } from './functionChild.ts';

export interface FunctionProcess {
  /** Processor time from the start of Node to a loaded handler, ms. */
  readonly loadedCpuMs: number;
  /** Hands it one event. Throws what the handler threw. */
  call(event: unknown): Promise<FunctionAnswer & { readonly logBytes: number }>;
  end(): void;
}

/** Starts a bundled function in a process of its own, with the environment of this one. */
export async function startFunction(file: string, env: NodeJS.ProcessEnv): Promise<FunctionProcess> {
  const child = fork(join(import.meta.dirname, 'functionChild.ts'), [file], {
    env,
    execArgv: [],
    // What it logs is billed by the byte.
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
    serialization: 'advanced',
  });
  let logBytes = 0;
  child.stdout?.on('data', (chunk: Buffer) => (logBytes += chunk.length));
  const { loadedCpuMs } = await heard<FunctionLoaded>(child);
  return {
    loadedCpuMs,
    async call(event) {
      logBytes = 0;
      const answered = heard<FunctionAnswer>(child);
      child.send(event as object);
      const answer = await answered;
      if (answer.problem !== null) throw new Error(answer.problem);
      return { ...answer, logBytes };
    },
    end: () => child.kill(),
  };
}

async function heard<T>(child: ChildProcess): Promise<T> {
  const ended = new AbortController();
  try {
    return await Promise.race([
      once(child, 'message', { signal: ended.signal }).then(([message]) => message as T),
      once(child, 'exit', { signal: ended.signal }).then(([code]) => {
        throw new Error(`the function's process ended with exit ${String(code)}`);
      }),
    ]);
  } finally {
    ended.abort();
  }
}
