import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { expectAccessible, expectNoSideScroll } from '../support/app.ts';
import { browserScreens, refusal } from '../support/browserTest.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { servePublished } from '../support/servePublished.ts';
import { townNow, townSettings, townSources } from '../support/town.ts';

const screens = browserScreens();
let site: { url: string; close: () => Promise<void> };
let notSetUp: { url: string; close: () => Promise<void> };

beforeAll(async () => {
  const renderer = await builtRenderer();
  const publish = async (sources: ReturnType<typeof townSources>) => {
    const store = memoryPublished();
    const deps = { settings: townSettings, store, renderer, readSources: async () => sources };
    await publishOnce({ ...deps, stillRecorded: async () => true }, townNow);
    return servePublished(store);
  };
  site = await publish(townSources());
  notSetUp = await publish({ ...townSources(), inventory: null });
}, 180_000);
afterAll(async () => {
  await site.close();
  await notSetUp.close();
});

/** A minute after the check, twenty before the page is too old. */
const fresh = new Date(townNow.getTime() + 60_000);

interface Looking extends BrowserContextOptions {
  readonly at?: Date;
  readonly from?: { url: string };
}

/** Opens a page as a reader would, and answers with what went wrong in the browser meanwhile. */
async function open(path: string, { at = fresh, from = site, ...options }: Looking = {}) {
  const { page, faults, close } = await screens.open({ viewport: { width: 1280, height: 900 }, ...options });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.clock.install({ time: at });
  await page.goto(`${from.url}${path}`);
  return { page, faults, asked, close };
}

const phone = { viewport: { width: 320, height: 640 } };
const pages = [
  ['the list', '/'],
  ['the list in Spanish', '/es/'],
  ['a hydrant that is out', '/hydrants/H-0058/'],
  ['a hydrant out for two reasons', '/hydrants/H-0223/'],
  ['a hydrant not re-tested', '/es/hydrants/H-0059/'],
  ['the help page', '/how-to-read/'],
  ['the years', '/years/'],
  ['a year in Spanish', '/es/years/2026/'],
  ['a page that is not there', '/404.html'],
] as const;

const looks: readonly (readonly [string, Looking])[] = [
  ['light', {}],
  ['dark', { colorScheme: 'dark' }],
  ['narrow', phone],
  ['stale', { at: new Date(townNow.getTime() + 3_600_000) }],
];

describe.each(pages)('%s', (_, path) => {
  test.each(looks)('has nothing that axe objects to: %s', async (__, look) => {
    const { page, close } = await open(path, look);
    await expectAccessible(page);
    await close();
  });

  test('fits a phone of 320 px without scrolling sideways', async () => {
    const { page, close } = await open(path, phone);
    await expectNoSideScroll(page);
    await close();
  });

  test('works under a strict content policy and asks only its own host', async () => {
    const { page, asked, close } = await open(path);
    await page.waitForLoadState('networkidle');
    expect(asked.length).toBeGreaterThan(1);
    expect(asked.filter((url) => !url.startsWith(site.url))).toEqual([]);
    // Loaded, and not merely unknown: `document.fonts.check` is true of a face that nobody declares.
    const loaded = await page.evaluate(() =>
      [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family),
    );
    expect(loaded.some((family) => family.includes('Atkinson Hyperlegible'))).toBe(true);
    expect(await page.context().cookies()).toEqual([]);
    await close();
  });

  test('still fits and reads at twice the letter size', async () => {
    const { page, close } = await open(path, { viewport: { width: 640, height: 900 } });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await expectNoSideScroll(page);
    await close();
  });
});

const isShown = (page: Page, selector: string): Promise<boolean> =>
  page.locator(selector).first().isVisible();

describe('without script', () => {
  test('everything is there: count, times, number, map, list and neighbours', async () => {
    const { page, close } = await screens.open({ javaScriptEnabled: false });
    await page.goto(site.url);
    expect(await page.textContent('h1')).toBe('5 of 412 hydrants are out of service');
    expect(await page.textContent('.checked')).toMatch(
      /Checked Wed, Mar 4, 14:05 CST.*after Wed, Mar 4, 14:25 CST/,
    );
    expect(await isShown(page, '.emergency .phone')).toBe(true);
    expect(await isShown(page, '.town-map svg')).toBe(true);
    expect(await page.locator('.entry').count()).toBe(6);
    expect(await page.locator('.entry').first().locator('.nearest li').count()).toBe(3);
    // What only a script can know is not claimed: the loud warning stays away, the time stands.
    expect(await isShown(page, '#stale')).toBe(false);
    await page.click('text=Español');
    expect(await page.textContent('h1')).toBe('5 de 412 hidrantes están fuera de servicio');
    await close();
  });
});

describe('a page that grows old before the reader’s eyes', () => {
  test('says nothing while it is good, and shouts from the minute on, with both clocks', async () => {
    const { page, close } = await open('/', { at: new Date(townNow.getTime() + 19 * 60_000) });
    expect(await isShown(page, '#stale')).toBe(false);
    expect(await page.title()).toBe('Hydrants out of service · Alder Reach Water');
    await page.clock.fastForward('01:10');
    expect(await isShown(page, '#stale')).toBe(true);
    const words = await page.innerText('#stale');
    expect(words).toContain('Do not rely on this page');
    expect(words).toContain('It was to be relied on until Wed, Mar 4, 14:25 CST.');
    expect(words).toMatch(/Your device’s clock says Wed, Mar 4, 14:25 CST/);
    expect(words).toContain('555-0142');
    expect(words).not.toContain('earlier than');
    expect(await page.getAttribute('#stale', 'role')).toBe('alert');
    expect(await page.title()).toMatch(/^OUT OF DATE · /);
    await close();
  });

  test('stays in sight when one scrolls', async () => {
    // The held clock holds a smooth scroll as well.
    const { page, close } = await open('/', {
      at: new Date(townNow.getTime() + 3_600_000),
      reducedMotion: 'reduce',
    });
    await page.evaluate(() => {
      window.scrollTo(0, document.body.scrollHeight / 2);
    });
    const box = await page.locator('#stale').boundingBox();
    expect(box!.y).toBeGreaterThanOrEqual(0);
    expect(box!.y).toBeLessThan(10);
    await close();
  });

  test('says so when the device’s clock is behind the check, because then it cannot tell', async () => {
    const { page, close } = await open('/es/', { at: new Date(townNow.getTime() - 3 * 3_600_000) });
    expect(await page.innerText('#stale')).toMatch(
      /reloj de su dispositivo va por detrás.*14:05 CST.*11:05/s,
    );
    await close();
  });

  test('a clock a minute behind is not made a fuss of', async () => {
    const { page, close } = await open('/', { at: new Date(townNow.getTime() - 60_000) });
    expect(await isShown(page, '#stale')).toBe(false);
    await close();
  });
});

describe('by keyboard', () => {
  test('the first stop skips to the content, and every sign on the map leads to its entry', async () => {
    const { page, close } = await open('/');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
    expect((await page.locator('.skip').boundingBox())!.y).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
    const sign = page.locator('.town-map a').first();
    await sign.focus();
    await page.keyboard.press('Enter');
    expect(new URL(page.url()).hash).toBe('#out-1');
    await close();
  });
});

describe('on paper', () => {
  test('the list prints its times, number, map and entries, and no navigation', async () => {
    const { page, close } = await open('/');
    await page.emulateMedia({ media: 'print' });
    for (const selector of ['.emergency .phone', '.checked .rely', '.town-map svg', '.entry', '.site-foot'])
      expect(await isShown(page, selector), selector).toBe(true);
    for (const selector of ['nav', '#stale', '.index'])
      expect(await isShown(page, selector), selector).toBe(false);
    // Black on white, also for a reader who likes the screen dark.
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
      'rgb(255, 255, 255)',
    );
    await page.pdf({ format: 'Letter' }).then((pdf) => expect(pdf.length).toBeGreaterThan(10_000));
    await close();
  });
});

describe('with the colors forced', () => {
  test('signs, dots and classes are told apart without the page’s own colors', async () => {
    const { page, close } = await open('/', { forcedColors: 'active' });
    const style = (selector: string, property: string): Promise<string> =>
      page
        .locator(selector)
        .first()
        .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), property);
    expect(await style('.town-map .sign-shape', 'fill')).not.toBe(
      await style('.town-map .sign-number', 'fill'),
    );
    expect(await style('.class-mark', 'border-top-style')).toBe('solid');
    expect(await style('.checked .rely', 'border-top-style')).toBe('solid');
    expect(await page.locator('.class-mark').first().innerText()).toMatch(/^(AA|A|B|C)$/);
    await close();
  });
});

describe('where nothing is set up, and where nothing is', () => {
  test('a deployment without inventory says so and whom to call', async () => {
    const { page, close } = await open('/', { from: notSetUp });
    expect(await page.textContent('h1')).toBe('This page is not set up yet');
    expect(await page.locator('.town-map').count()).toBe(0);
    expect(await page.innerText('main')).toContain('555-0142');
    await expectAccessible(page);
    await close();
  });

  test('an address that leads nowhere is an honest 404 in both languages', async () => {
    const { page, close } = await screens.open();
    screens.tolerate(refusal);
    const response = await page.goto(`${site.url}/hydrants/none/`);
    expect(response!.status()).toBe(404);
    expect(await page.innerText('main')).toMatch(/There is no page here.*Aquí no hay ninguna página/s);
    expect(await page.getAttribute('section[lang]', 'lang')).toBe('es');
    await close();
  });
});
