import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, type TestContext } from 'vitest';
import type { Role } from '../../shared/roles.ts';
import { appServer, signedIn, type AppServer, type Load } from './app.ts';
import { launchBrowser, openPage, type Looking } from './browser.ts';
import { newDevice, type Device } from './device.ts';

export interface Screens {
  readonly browser: () => Browser;
  /** An empty page; closed after the test. */
  readonly open: (options?: BrowserContextOptions) => Promise<Looking>;
  /** Takes a screen under its watch, which is closed after the test, or after all tests of the file. */
  readonly watch: <L extends Looking>(looking: L, until?: 'test' | 'file') => L;
  /** A phone whose browser can be killed; gone after the test. */
  readonly device: () => Promise<Device>;
  /** What the browser may complain of until the end of this test, because the test is about it. */
  readonly tolerate: (fault: RegExp) => void;
}

/**
 * A browser for the tests of this file. A test fails on whatever goes wrong in a screen that it opened (an error or a
 * warning on the console, a rejection nobody caught), unless it is among what is tolerated. With `SHOTS=folder` a test
 * that fails leaves a picture of each screen there.
 */
export function browserScreens(tolerated: readonly RegExp[] = []): Screens {
  let browser: Browser | null = null;
  let passing: Looking[] = [];
  let devices: Device[] = [];
  const staying: Looking[] = [];
  let toleratedNow: RegExp[] = [];

  beforeAll(async () => {
    browser = await launchBrowser();
  }, 180_000);
  afterEach(async (context) => {
    const screens = [...passing, ...staying];
    const closing = passing;
    const ending = devices;
    const allowed = [...tolerated, ...toleratedNow];
    [passing, devices, toleratedNow] = [[], [], []];
    await picturesOfFailure(context, screens);
    for (const { close } of closing) await close();
    for (const { end } of ending) await end();
    const faults = screens.flatMap((screen) => screen.faults.splice(0));
    expect(
      faults.filter((fault) => !allowed.some((pattern) => pattern.test(fault))),
      'what went wrong in the browser',
    ).toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
  });

  const running = (): Browser => {
    if (browser === null) throw new Error('the browser starts in beforeAll: not before');
    return browser;
  };
  const watch = <L extends Looking>(looking: L, until: 'test' | 'file' = 'test'): L => {
    (until === 'test' ? passing : staying).push(looking);
    return looking;
  };
  return {
    browser: running,
    watch,
    open: async (options) => watch(await openPage(running(), options)),
    async device() {
      const device = await newDevice();
      devices.push(device);
      return { ...device, open: async () => watch(await device.open()) };
    },
    tolerate: (fault) => toleratedNow.push(fault),
  };
}

export interface AppTest extends Screens {
  readonly server: AppServer;
  /** A screen with somebody signed in; closed after the test. `reached` is the server as this screen reaches it. */
  readonly signIn: (role: Role, options?: BrowserContextOptions, reached?: AppServer) => Promise<Looking>;
  /** A screen with somebody signed in that all tests of the file go on with. */
  readonly signInForAll: (role: Role, options?: BrowserContextOptions) => Promise<Looking>;
}

export interface AppTestOptions {
  readonly load?: Load;
  /** The built site to serve, when it is not this project's. */
  readonly client?: () => Promise<string>;
  /** What the browser may complain of in any test of the file. */
  readonly tolerated?: readonly RegExp[];
}

/** The app for the tests of this file: a server of its own on this port, and a browser. Call it before other hooks. */
export function appTest(port: number, { load, client, tolerated }: AppTestOptions = {}): AppTest {
  const server = appServer(port, load, client);
  beforeAll(() => server.start(), 180_000);
  afterAll(() => server.end());
  const screens = browserScreens(tolerated);
  const { browser, watch } = screens;
  return {
    ...screens,
    server,
    signIn: async (role, options, reached = server) =>
      watch(await signedIn(browser(), reached, role, options)),
    signInForAll: async (role, options) => watch(await signedIn(browser(), server, role, options), 'file'),
  };
}

/** What the browser itself says of a request that nothing answered, or of a service that is away. */
export const noSignal = /^Failed to load resource: (net::|the server responded with a status of 503)/;
/** What it says some seconds after a page that the service worker gave it: its preload went by another way than its script. */
export const preloadPassedBy = /was preloaded using link preload but not used within a few seconds/;
/** What the browser itself says of a request that the server refused. */
export const refusal = /^Failed to load resource: the server responded with a status of 4\d\d/;

/** Where pictures are kept for somebody to look at: the folder that `SHOTS` names, made if it is not there; null if none. */
export async function shotsFolder(): Promise<string | null> {
  const folder = process.env['SHOTS'];
  if (folder === undefined) return null;
  await mkdir(folder, { recursive: true });
  return folder;
}

/** Keeps a picture in the folder of `SHOTS`, if there is one: of the whole page, or of one part of it. */
export async function shot(page: Page, name: string, part?: string): Promise<void> {
  const folder = await shotsFolder();
  if (folder === null) return;
  const path = join(folder, `${name}.png`);
  if (part === undefined) await page.screenshot({ path, fullPage: true });
  else await page.locator(part).first().screenshot({ path });
}

async function picturesOfFailure({ task }: TestContext, screens: readonly Looking[]): Promise<void> {
  if (task.result?.state !== 'fail') return;
  const name = task.name.replaceAll(/[^a-z0-9]+/gi, '-').slice(0, 60);
  for (const [index, { page }] of screens.entries())
    // A page that is gone has no picture; the test says itself what failed.
    await shot(page, `failed-${name}-${index + 1}`).catch(() => undefined);
}
