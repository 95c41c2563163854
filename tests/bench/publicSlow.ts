import type { Browser } from 'playwright-core';
import { assetWriter } from '../../functions/publish/assets.ts';
import { assetsIn, pagesOf, renderPage, type PublishedFile } from '../../functions/publish/pages.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { buildEdition } from '../../shared/public/build.ts';
import { hydrantPath } from '../../shared/public/address.ts';
import { launchBrowser } from '../support/browser.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { servePublished } from '../support/servePublished.ts';
import { townNow, townSettings } from '../support/town.ts';
import type { BenchRow } from './row.ts';
import { cityWith, OUT } from './support/city.ts';

/**
 * 250 kbit/s down, 50 up, 300 ms to an answer: "Regular 2G" of Firefox's network monitor (its user guide, Throttling).
 * Looking up the name and greeting the server are not slowed down; they add some four ways to and fro, 1.2 s, once.
 */
const line = {
  offline: false,
  latency: 300,
  downloadThroughput: (250 * 1024) / 8,
  uploadThroughput: (50 * 1024) / 8,
};
/** A processor four times slower than this one. */
const SLOWER = 4;
const TIMES = 3;

interface Seen {
  /** From asking for the page until its first text is painted, ms: the headline and what it says stand at the top. */
  readonly readableMs: number;
  /** Everything that the page asked for, compressed, kB. */
  readonly kB: number;
}

async function look(
  browser: Browser,
  url: string,
  { script, slow }: { readonly script: boolean; readonly slow: boolean },
): Promise<Seen> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    javaScriptEnabled: script,
  });
  try {
    const page = await context.newPage();
    await page.goto('about:blank');
    const cdp = await context.newCDPSession(page);
    await cdp.send('Network.enable');
    await cdp.send('Page.enable');
    await cdp.send('Page.setLifecycleEventsEnabled', { enabled: true });
    if (slow) {
      await cdp.send('Network.emulateNetworkConditions', line);
      await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    }
    let bytes = 0;
    cdp.on('Network.loadingFinished', ({ encodedDataLength }) => (bytes += encodedDataLength));
    const began = performance.now();
    const painted = new Promise<number>((resolve) => {
      cdp.on('Page.lifecycleEvent', ({ name }) => {
        if (name === 'firstContentfulPaint') resolve(performance.now() - began);
      });
    });
    await page.goto(url, { waitUntil: 'load', timeout: 120_000 });
    return { readableMs: await painted, kB: bytes / 1000 };
  } finally {
    await context.close();
  }
}

const median = (of: readonly number[]): number =>
  of.toSorted((a, b) => a - b)[Math.floor(of.length / 2)] ?? Number.NaN;

/** What a 2G phone gets of a city with 2,000 hydrants out: its first page and a hydrant's page, with script and without. */
export async function bench(): Promise<readonly BenchRow[]> {
  const renderer = await builtRenderer();
  const edition = buildEdition(cityWith(OUT), townSettings, townNow.toISOString());
  const store = memoryPublished();
  const write = async (file: PublishedFile): Promise<void> => {
    await store.put(file.key, file, null);
  };
  const writeAssets = assetWriter(renderer, write);
  const { lists, others } = pagesOf(edition, []);
  const hydrant = edition.snapshot.outOfService[0]?.hydrantId ?? '';
  const paths = { 'first page': '/', 'hydrant’s page': `/${hydrantPath(hydrant)}` };
  for (const path of Object.values(paths)) {
    const wanted = [...lists, ...others].find((one) => one.path === path);
    if (!wanted) throw new Error(`no page at ${path}`);
    const file = await renderPage(renderer, wanted);
    await writeAssets(assetsIn(new TextDecoder().decode(file.bytes)));
    await write(file);
  }
  const site = await servePublished(store, { compressed: true });
  const browser = await launchBrowser();
  try {
    const rows: BenchRow[] = [];
    for (const [name, path] of Object.entries(paths))
      for (const script of [false, true]) {
        const how = script ? 'with script' : 'no script';
        const slow: Seen[] = [];
        const free: Seen[] = [];
        for (let time = 0; time < TIMES; time++) {
          slow.push(await look(browser, `${site.url}${path}`, { script, slow: true }));
          free.push(await look(browser, `${site.url}${path}`, { script, slow: false }));
        }
        rows.push(
          {
            name: `a city: ${name} readable, 2G, ${how}`,
            value: median(slow.map(({ readableMs }) => readableMs)),
            unit: 'ms',
            beside: { name: 'no brakes', value: median(free.map(({ readableMs }) => readableMs)) },
          },
          {
            name: `a city: ${name} and all it asks for, ${how}`,
            value: median(slow.map(({ kB }) => kB)),
            unit: 'kB',
          },
        );
      }
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
