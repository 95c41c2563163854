import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Browser, BrowserContext, BrowserContextOptions, LaunchOptions, Page } from 'playwright-core';
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
  const { chromium, executablePath } = await found();
  return chromium.launch({ executablePath, args, headless: true, ...options });
}

export interface Looking {
  readonly page: Page;
  /** What went wrong in any tab: errors and warnings of the console, rejections nobody caught, breaches of a page's policy. */
  readonly faults: string[];
  readonly close: () => Promise<void>;
}

/** An empty page in a context of its own, of which everything that goes wrong is kept. */
export async function openPage(browser: Browser, options: BrowserContextOptions = {}): Promise<Looking> {
  const context = await browser.newContext(options);
  const faults = faultsOf(context);
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  return { page, faults, close: () => context.close() };
}

/** What the browser says of its own doings under test, and of no page. */
const ofTheBrowser = [
  'Service Worker registration blocked by Playwright',
  // A file came from the worker's cache while its preload was on its way.
  'cross-world service worker resource mismatch',
];

/** What goes wrong in the tabs of a context from now on; the list grows. */
export function faultsOf(context: BrowserContext): string[] {
  const faults: string[] = [];
  context.on('console', (message) => {
    if (ofTheBrowser.some((words) => message.text().includes(words))) return;
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  context.on('weberror', (fault) => faults.push(String(fault.error())));
  return faults;
}

export interface KillableBrowser {
  readonly context: BrowserContext;
  /** SIGKILL to the browser's own process, as a phone that runs out of battery. */
  readonly kill: () => Promise<void>;
}

/** A browser whose profile stands in a folder, so that it can be killed in the middle and opened again on the same one. */
export async function launchOn(profile: string): Promise<KillableBrowser> {
  const { chromium, executablePath } = await found();
  const child = spawn(
    executablePath,
    [...args, `--user-data-dir=${profile}`, '--remote-debugging-port=0', 'about:blank'],
    { stdio: ['ignore', 'ignore', 'pipe'], env: process.env },
  );
  const address = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stderr }).on('line', (line) => {
      const listening = /DevTools listening on (\S+)/.exec(line);
      if (listening?.[1] !== undefined) resolve(listening[1]);
    });
    child.once('exit', (code) => reject(new Error(`the browser ended with ${String(code)}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  if (!context) throw new Error('the browser has no context');
  return {
    context,
    async kill() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
}

async function found() {
  // Read on import: with it the package unpacks the libraries that a bare machine lacks (libnss3 and friends).
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs24.x';
  const [{ chromium }, { default: packed }] = await Promise.all([
    import('playwright-core'),
    import('@sparticuz/chromium'),
  ]);
  const given = process.env['BROWSER_PATH'];
  if (given !== undefined && !existsSync(given)) throw new Error(`BROWSER_PATH names no file: ${given}`);
  const executablePath = given ?? (await oneAtATime('browser', () => packed.executablePath()));
  return { chromium, executablePath };
}
