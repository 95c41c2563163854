import { mkdir, rmdir, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/**
 * Test files run side by side in processes of their own; what they share on disk (an unpacked browser, the built site)
 * is made by the first and waited for by the others.
 */
export async function oneAtATime<T>(name: string, work: () => Promise<T>): Promise<T> {
  const lock = join(tmpdir(), `hydrant-strike-ledger-${name}.lock`);
  for (let tries = 0; tries < 1200; tries++) {
    const mine = await mkdir(lock).then(
      () => true,
      () => false,
    );
    if (mine) {
      try {
        return await work();
      } finally {
        // Work that took very long may have lost its lock to one that waited: see below.
        await rmdir(lock).catch(() => undefined);
      }
    }
    // Left behind by a process that was killed.
    const made = await stat(lock).catch(() => null);
    if (made && Date.now() - made.mtimeMs > 90_000) await rmdir(lock).catch(() => undefined);
    await wait(100);
  }
  throw new Error(`the lock was never free: ${lock}`);
}
