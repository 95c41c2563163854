import { execFile } from 'node:child_process';
import { root } from './root.ts';

/** Runs npm in the repository and answers what it printed, whatever its exit code says; null when it did not run. */
export function npm(args: readonly string[], limitMs: number): Promise<string | null> {
  return new Promise((resolve) => {
    execFile(
      'npm',
      [...args],
      { cwd: root, timeout: limitMs, maxBuffer: 64 * 1024 * 1024 },
      (error, stdout) => resolve(error && stdout === '' ? null : stdout),
    );
  });
}
