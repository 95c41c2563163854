import { existsSync } from 'node:fs';
import { mkdir, rmdir, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { Browser, LaunchOptions } from 'playwright-core';

/** No default arguments of the package: some of them (one process, no sandboxing of sites) change how pages behave. */
const args = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-dev-shm-usage',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--hide-scrollbars',
  '--font-render-hinting=none',
];

/** Test files run side by side, and the package unpacks into one folder: the second would start half a browser. */
async function oneAtATime<T>(work: () => Promise<T>): Promise<T> {
  const lock = join(tmpdir(), 'hydrant-strike-ledger-browser.lock');
  for (let tries = 0; tries < 600; tries++) {
    const mine = await mkdir(lock).then(
      () => true,
      () => false,
    );
    if (mine) {
      try {
        return await work();
      } finally {
        await rmdir(lock);
      }
    }
    // Left behind by a process that was killed.
    const made = await stat(lock).catch(() => null);
    if (made && Date.now() - made.mtimeMs > 60_000) await rmdir(lock).catch(() => undefined);
    await wait(100);
  }
  throw new Error(`the browser's lock was never free: ${lock}`);
}

/**
 * A real Chromium, started from the npm package alone: no download, nothing from the system. `BROWSER_PATH` names
 * another one. Close it in `afterAll`.
 */
export async function launchBrowser(options: LaunchOptions = {}): Promise<Browser> {
  // Read on import: with it the package unpacks the libraries that a bare machine lacks (libnss3 and friends).
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs24.x';
  const [{ chromium }, { default: packed }] = await Promise.all([
    import('playwright-core'),
    import('@sparticuz/chromium'),
  ]);
  const given = process.env['BROWSER_PATH'];
  if (given !== undefined && !existsSync(given)) throw new Error(`BROWSER_PATH names no file: ${given}`);
  const executablePath = given ?? (await oneAtATime(() => packed.executablePath()));
  return chromium.launch({ executablePath, args, headless: true, ...options });
}
