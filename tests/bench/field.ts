import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { CDPSession, Page } from 'playwright-core';
import { builtSite } from '../../infra/local/buildSite.ts';
import { appServer, goTo, signedIn } from '../support/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { ports } from '../support/ports.ts';
import type { BenchRow } from './row.ts';

/** 1.6 Mbit/s down, 0.75 up, 150 ms there and back, a processor four times slower: Lighthouse's "slow 4G" phone. */
const line = {
  offline: false,
  latency: 150,
  downloadThroughput: (1.6 * 1024 * 1024) / 8,
  uploadThroughput: (0.75 * 1024 * 1024) / 8,
};
const SLOWER = 4;
/** What the crew's first page may ask for: a phone on a slow line has it in a second. */
const MOST_SCRIPT_KB = 150;
const TIMES = 3;

/** Kilobytes of script, compressed, that the crew's page asks for before it can be used, the words of English among it. */
async function firstScriptKb(page: Page): Promise<number> {
  const names = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => path.endsWith('.js')),
  );
  const sizes = await Promise.all(
    [...new Set(names)].map(async (path) => gzipSync(await readFile(join(builtSite.client, path))).length),
  );
  return sizes.reduce((sum, size) => sum + size, 0) / 1000;
}

async function slow(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Network.enable');
  await cdp.send('Network.emulateNetworkConditions', line);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  return cdp;
}

/** Milliseconds from asking for the strike's form until a hydrant can be typed into it. */
async function readyMs(page: Page, address: string): Promise<number> {
  await page.goto('about:blank');
  const began = performance.now();
  await page.goto(address, { waitUntil: 'commit', timeout: 60_000 });
  await page.getByRole('searchbox').waitFor({ timeout: 60_000 });
  return performance.now() - began;
}

const median = (of: readonly number[]): number =>
  [...of].sort((a, b) => a - b)[Math.floor(of.length / 2)] ?? Number.NaN;

/**
 * The crew's strike form on a slow phone: first on a device that was never here (signed in, nothing kept), then again
 * from what the device has. Beside it the same without the brakes.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const server = appServer(ports.benchField);
  const browser = await launchBrowser();
  try {
    await server.start();
    const address = `${server.origin}/crew/#/new/strike`;
    const first: number[] = [];
    const again: number[] = [];
    const free: number[] = [];
    let scriptKb = Number.NaN;
    const token = await server.token('crew');
    for (let time = 0; time < TIMES; time++) {
      const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
      await context.addInitScript((text) => {
        if (location.protocol === 'http:') localStorage.setItem('hsl.token', text);
      }, token);
      const page = await context.newPage();
      const cdp = await slow(page);
      first.push(await readyMs(page, address));
      scriptKb = await firstScriptKb(page);
      // The worker takes its files while the brakes are off, as it would while the crew drives.
      await cdp.send('Network.emulateNetworkConditions', {
        ...line,
        latency: 0,
        downloadThroughput: -1,
        uploadThroughput: -1,
      });
      await goTo(page, server, '/crew/');
      await page.waitForFunction(
        async () => (await navigator.serviceWorker.ready).active?.state === 'activated',
      );
      await page.waitForTimeout(3_000);
      await cdp.send('Network.emulateNetworkConditions', line);
      again.push(await readyMs(page, address));
      await context.close();
      const looking = await signedIn(browser, server, 'crew');
      free.push(await readyMs(looking.page, address));
      await looking.close();
    }
    const beside = { name: 'no brakes', value: median(free) };
    return [
      {
        name: 'field form ready, slow 4G, first time',
        value: median(first),
        unit: 'ms',
        beside,
        atMost: 3_000,
      },
      {
        name: 'field form ready, slow 4G, again',
        value: median(again),
        unit: 'ms',
        beside,
        atMost: 1_000,
      },
      {
        name: 'script before the field form is ready, gzip',
        value: scriptKb,
        unit: 'kB',
        beside: { name: 'asked for', value: MOST_SCRIPT_KB },
        atMost: MOST_SCRIPT_KB,
      },
    ];
  } finally {
    await browser.close();
    await server.end();
  }
}
