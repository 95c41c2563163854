import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { openPage } from './browser.ts';
import { builtRenderer } from './builtSite.ts';
import { servePublished } from './servePublished.ts';
import { townNow, townSettings } from './town.ts';

/** The town's pages, published and served, and published again as often as a test likes. */
export interface PublicSite {
  readonly url: string;
  /** Publishes what stands `minutes` after the town's own instant. */
  readonly publish: (sources: PublicSources, minutes: number) => Promise<void>;
  readonly close: () => Promise<void>;
}

export async function publicSite(
  sources: PublicSources,
  settings: UtilitySettings = townSettings,
): Promise<PublicSite> {
  const renderer = await builtRenderer();
  const store = memoryPublished();
  const publish = async (now: PublicSources, minutes: number): Promise<void> => {
    const deps = { settings, store, renderer, readSources: async () => now };
    await publishOnce(
      { ...deps, stillRecorded: async () => false },
      new Date(townNow.getTime() + minutes * 60_000),
    );
  };
  await publish(sources, 0);
  const { url, close } = await servePublished(store);
  return { url, publish, close };
}

export interface Opened {
  readonly page: Page;
  /** What the browser complained of. */
  readonly faults: string[];
  /** Every address that was asked for. */
  readonly asked: string[];
  readonly close: () => Promise<void>;
}

/** Opens a page as a reader would, a minute after its check unless told otherwise. */
export async function openPublic(
  browser: Browser,
  site: { readonly url: string },
  path: string,
  {
    at = new Date(townNow.getTime() + 60_000),
    ...options
  }: BrowserContextOptions & { readonly at?: Date } = {},
): Promise<Opened> {
  const desktop = { viewport: { width: 1280, height: 900 } };
  const { page, faults, close } = await openPage(browser, { ...desktop, ...options });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  if (options.javaScriptEnabled !== false) await page.clock.install({ time: at });
  await page.goto(`${site.url}${path}`);
  return { page, faults, asked, close };
}
