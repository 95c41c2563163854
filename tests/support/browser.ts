import { existsSync } from 'node:fs';
import type { Browser, LaunchOptions } from 'playwright-core';
import { oneAtATime } from './oneAtATime.ts';

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
  const executablePath = given ?? (await oneAtATime('browser', () => packed.executablePath()));
  return chromium.launch({ executablePath, args, headless: true, ...options });
}
