import AxeBuilder from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { StreetLine } from '../../shared/layers/lines.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import { slugOf, type Station } from '../../shared/stations/stations.ts';
import { buildStreets } from '../../shared/streets/build.ts';
import { layOut } from '../../shared/streets/network.ts';
import { streetWalk } from '../../shared/streets/walk.ts';
import { launchBrowser } from '../support/browser.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { withPdf } from '../support/pdf.ts';
import { servePublished } from '../support/servePublished.ts';
import { anOutage, aStatus, townHydrants, townNow, townSettings, townSources } from '../support/town.ts';

/** Beyond every longitude of the town; its left half is one station's, its right half another's. */
const [west, middle, east, south, north] = [-98.41, -98.383, -98.35, 39.19, 39.24];
const area = (name: string, from: number, to: number): Station => ({
  name,
  slug: slugOf(name),
  polygons: [[[from, south, to, south, to, north, from, north, from, south]]],
});
const stations = [
  area('Station 1, Harbor', west, middle),
  // The longest that a name may be.
  area(`Estación número 2 ${'de la colina '.repeat(4)}y molinos`, middle, east),
  area('Station 3', -97.2, -97.1),
];
const [first, second, third] = stations;

/** Streets that run past every hydrant, row by row, joined at the left. */
function streets(): NonNullable<PublicSources['streets']> {
  const rows = Map.groupBy(townHydrants(), ({ hydrantId }) =>
    Math.floor((Number(hydrantId.slice(2)) - 1) / 25),
  );
  const lines: StreetLine[] = [...rows.values()].map((row, index) => ({
    row: index + 1,
    places: row.flatMap(({ longitudeDeg, latitudeDeg }) => [longitudeDeg, latitudeDeg]),
    level: 0,
  }));
  lines.push({ row: 99, level: 0, places: lines.flatMap(({ places }) => places.slice(0, 2)) });
  const network = layOut(buildStreets(lines, 300).streets);
  if (!network) throw new Error('no streets');
  return streetWalk(network);
}

/** A bad night: ninety hydrants out, with every name as long as the inventory lets it be. */
function badNight(): PublicSources {
  const hydrants = townHydrants().map((hydrant) => ({
    ...hydrant,
    place: `${hydrant.place ?? ''} ${'beside the long brick warehouse '.repeat(4)}`.slice(0, 200),
  }));
  const sources = townSources(hydrants);
  const more = hydrants
    .filter((_, index) => index % 4 === 2)
    .map(({ hydrantId }, index) => aStatus(hydrantId, [anOutage(`n-${index}`, { cause: 'main-shut' })]));
  return { ...sources, statuses: [...sources.statuses, ...more], stations };
}

let browser: Browser;
let town: { url: string; close: () => Promise<void> };
let night: { url: string; close: () => Promise<void> };
beforeAll(async () => {
  const renderer = await builtRenderer();
  const publish = async (sources: PublicSources) => {
    const store = memoryPublished();
    const deps = { settings: townSettings, store, renderer, readSources: async () => sources };
    await publishOnce({ ...deps, stillRecorded: async () => true }, townNow);
    return servePublished(store);
  };
  town = await publish({ ...townSources(), stations, streets: streets() });
  night = await publish(badNight());
  browser = await launchBrowser();
}, 300_000);
afterAll(async () => {
  await browser.close();
  await town.close();
  await night.close();
});

async function open(url: string, options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  await page.clock.install({ time: new Date(townNow.getTime() + 60_000) });
  await page.goto(url);
  return { page, faults, close: () => context.close() };
}
const pathOf = (station: Station | undefined, lang = ''): string =>
  `${lang}/stations/${station?.slug ?? ''}/`;
const rows = (page: Page) => page.locator('.station-list > li:not(.station-head)');

describe('a station\u2019s area', () => {
  test('says what is out, what is in service by class, and what to use instead, along the streets', async () => {
    const { page, faults, close } = await open(town.url + pathOf(first));
    expect(await page.textContent('h1')).toBe('Station 1, Harbor');
    const [, out, total] = /(\d+) hydrants? of (\d+)/.exec((await page.textContent('.lead')) ?? '') ?? [];
    const inService = await page.locator('.station-classes td').allTextContents();
    expect(inService.reduce((sum, count) => sum + Number(count), 0)).toBe(Number(total) - Number(out));
    // One more that the inventory does not know is on the list.
    expect(await rows(page).count()).toBe(Number(out) + 1);
    expect(await page.textContent('main')).toContain('Distances are along streets.');
    expect(await rows(page).first().locator('.station-instead li').count()).toBeGreaterThan(0);
    // Numbers are those of the list of all, and a sign on the map leads to its line.
    const number = await page.locator('.station-map a').first().getAttribute('href');
    expect(await page.locator(`${number ?? ''}.station-list > li, li${number ?? ''}`).count()).toBe(1);
    expect(faults).toEqual([]);
    await close();
  });

  test('that holds no hydrant says so and claims nothing', async () => {
    const { page, close } = await open(town.url + pathOf(third));
    expect(await page.textContent('.lead')).toBe('No hydrant of the inventory stands in this area');
    await close();
  });

  test('is led to from the page of all areas, in both languages', async () => {
    const { page, close } = await open(`${town.url}/es/`);
    await page.getByRole('link', { name: 'Por estación' }).click();
    expect(await page.locator('.station-index li').count()).toBe(3);
    await page.getByRole('link', { name: 'Station 1, Harbor' }).click();
    expect(await page.textContent('main')).toContain('Las distancias son por las calles.');
    await close();
  });

  // Letter paper: 8.5 by 11 inches, 612 by 792 points.
  test.each([
    ['an ordinary day', () => town.url, first, ''],
    ['a bad night', () => night.url, first, ''],
    ['a bad night, the longest name, in Spanish', () => night.url, second, '/es'],
    ['nothing out', () => town.url, third, ''],
  ])('prints on one sheet of letter paper: %s', async (_, url, station, lang) => {
    const { page, close } = await open(url() + pathOf(station, lang));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const sheets = await withPdf(pdf, async (document) =>
      Promise.all(
        Array.from({ length: document.numPages }, async (_each, index) => {
          const sheet = await document.getPage(index + 1);
          const { items } = await sheet.getTextContent();
          return { view: sheet.view, text: items.map((item) => ('str' in item ? item.str : '')).join(' ') };
        }),
      ),
    );
    expect(sheets.map(({ view }) => view)).toEqual([[0, 0, 612, 792]]);
    expect(sheets[0]?.text).toContain(townSettings.emergencyPhone);
    expect(sheets[0]?.text).toContain(
      lang === '' ? 'Do not rely on this page after' : 'No confíe en esta página',
    );
    await close();
  });

  test('a sheet that cannot hold every line names those that it leaves out, and counts what it does not name', async () => {
    const { page, close } = await open(night.url + pathOf(first));
    await page.emulateMedia({ media: 'print' });
    const all = await rows(page).count();
    const seen = await rows(page).filter({ visible: true }).count();
    const said = (await page.locator('.print-only').textContent()) ?? '';
    expect(seen).toBeLessThan(all);
    expect(Number(/\d+/.exec(said)?.[0])).toBe(all - seen);
    const named = said.match(/H-\d{4}/g)?.length ?? 0;
    const unnamed = Number(/and (\d+) more on the page/.exec(said)?.[1] ?? 0);
    expect(named + unnamed).toBe(all - seen);
    await close();
  });

  const looks: readonly (readonly [string, BrowserContextOptions])[] = [
    ['light', {}],
    ['dark', { colorScheme: 'dark' }],
    ['narrow', { viewport: { width: 320, height: 640 } }],
    ['forced colours', { forcedColors: 'active' }],
  ];
  // WCAG 2.2 AA by the rules of axe-core.
  test.each(looks)('has nothing that axe objects to: %s', async (_, look) => {
    for (const path of [pathOf(first), '/stations/', pathOf(second, '/es')]) {
      const { page, close } = await open(town.url + path, look);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))])).toEqual([]);
      await close();
    }
  });

  test('fits a phone of 320 px, and a screen at twice the letter size', async () => {
    for (const path of [pathOf(first), pathOf(second), '/stations/']) {
      const { page, close } = await open(town.url + path, { viewport: { width: 320, height: 640 } });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
      await page.setViewportSize({ width: 640, height: 900 });
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
      await close();
    }
  });
});
