import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { Role } from '../../../shared/roles.ts';

export interface Served {
  readonly origin: string;
  readonly tokens: Readonly<Record<Role, string>>;
  readonly replayed: boolean;
  /** Kills it where it stands (SIGKILL): no handler of ours runs. */
  kill(): Promise<void>;
  /** Asks it to close. Answers its exit code. */
  close(): Promise<number | null>;
}

const script = fileURLToPath(new URL('serve.ts', import.meta.url));

/** Starts the local server in a process of its own on a data folder. */
export async function serve(folder: string, port: number): Promise<Served> {
  const child: ChildProcess = spawn(process.execPath, [script, folder, String(port)], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  const lines = createInterface({ input: child.stdout! });
  const [line] = (await Promise.race([
    once(lines, 'line'),
    ended.then(([code]) => {
      throw new Error(`the server ended with ${code} before it was ready`);
    }),
  ])) as [string];
  return {
    ...(JSON.parse(line) as Pick<Served, 'origin' | 'tokens' | 'replayed'>),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    close: async () => {
      child.stdin!.end();
      return ((await ended) as [number | null])[0];
    },
  };
}
