import AxeBuilder from '@axe-core/playwright';
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { launchBrowser } from '../support/browser.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { servePublished } from '../support/servePublished.ts';
import { anOutage, aStatus, townHydrants, townNow, townSettings, townSources } from '../support/town.ts';

let browser: Browser;
let site: { url: string; close: () => Promise<void> };

/** The town with the main of its western edge shut: there every hydrant within 1,000 ft is out. */
function mainShut() {
  const hydrants = townHydrants();
  const edge = [125, 126, 127, 128, 150, 151, 152, 153, 175, 176, 177, 178];
  const shut = edge.flatMap((index) => {
    const hydrant = hydrants[index];
    const outage = anOutage(`m-${index}`, { cause: 'main-shut', since: '2026-03-04T15:00:00Z' });
    return hydrant ? [aStatus(hydrant.hydrantId, [outage])] : [];
  });
  const sources = townSources(hydrants);
  return { ...sources, statuses: [...sources.statuses, ...shut] };
}

beforeAll(async () => {
  const renderer = await builtRenderer();
  const store = memoryPublished();
  const deps = { settings: townSettings, store, renderer, readSources: async () => mainShut() };
  await publishOnce({ ...deps, stillRecorded: async () => true }, townNow);
  site = await servePublished(store);
  browser = await launchBrowser();
}, 180_000);
afterAll(async () => {
  await browser.close();
  await site.close();
});

async function open(path: string, options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  await page.clock.install({ time: new Date(townNow.getTime() + 60_000) });
  await page.goto(`${site.url}${path}`);
  return { page, close: () => context.close() };
}

const looks: readonly (readonly [string, BrowserContextOptions])[] = [
  ['light', {}],
  ['dark', { colorScheme: 'dark' }],
  ['forced colors', { forcedColors: 'active' }],
  ['narrow', { viewport: { width: 320, height: 640 } }],
];
describe.each([
  ['the areas that lost cover', '/cover/'],
  ['the same in Spanish', '/es/cover/'],
  ['the list with lost cover', '/'],
  ['a hydrant in such an area', '/hydrants/H-0151/'],
])('%s', (_, path) => {
  // WCAG 2.2 AA by the rules of axe-core.
  test.each(looks)('has nothing that axe objects to, and fits: %s', async (__, look) => {
    const { page, close } = await open(path, look);
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))])).toEqual([]);
    const width = page.viewportSize()?.width ?? 0;
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await close();
  });

  test('still fits at twice the letter size', async () => {
    const { page, close } = await open(path, { viewport: { width: 640, height: 900 } });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
    await close();
  });
});

test('without script a dispatcher sees which three can be used, what is left, and how sure the page is', async () => {
  const { page, close } = await open('/', { javaScriptEnabled: false });
  const entry = page.locator('.entry', { hasText: 'H-0151' }).first();
  expect(await entry.locator('.nearest li').count()).toBe(3);
  for (const near of await entry.locator('.nearest li').allInnerTexts())
    expect(near).toMatch(/ft \(\d+ m\) (north|south|east|west)/);
  expect(await entry.locator('.rings').innerText()).toMatch(/Within.*Now.*Before/s);
  expect(await entry.innerText()).toMatch(/hose may reach|beyond 1,200 ft/);
  expect(await entry.innerText()).toMatch(/Credit for distance: .*now, at most .* before/);
  await page.click('text=1 area lost its cover');
  expect(await page.textContent('h1')).toBe('Areas that lost cover');
  expect(await page.locator('.area-map svg .lost-none').first().isVisible()).toBe(true);
  await close();
});

test('on a phone the nearest hydrants come before what is left around', async () => {
  const { page, close } = await open('/', { viewport: { width: 360, height: 800 } });
  const entry = page.locator('.entry').first();
  const top = async (part: string): Promise<number> => (await entry.locator(part).boundingBox())?.y ?? 0;
  expect(await top('.entry-nearest')).toBeLessThan(await top('.entry-around'));
  await close();
  const wide = await open('/');
  const first = wide.page.locator('.entry').first();
  const box = async (part: string) => (await first.locator(part).boundingBox())!;
  expect((await box('.entry-around')).x).toBeLessThan((await box('.entry-nearest')).x);
  await wide.close();
});
