import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { openPublic, publicSite, type PublicSite } from '../support/publicSite.ts';
import { townHydrants, townNow, townSettings, townSources } from '../support/town.ts';

let browser: Browser;
let site: PublicSite;
let metric: PublicSite;
let city: PublicSite;

const tileSource = {
  url: 'https://tiles.example.gov/streets/{z}/{x}/{y}.png',
  attribution: '© Example County',
  maxzoom: 18,
};

beforeAll(async () => {
  site = await publicSite(townSources());
  metric = await publicSite(townSources(), {
    ...townSettings,
    units: 'metric',
    publishing: { ...townSettings.publishing, mapTiles: tileSource },
  });
  city = await publicSite(townSources(townHydrants(9000)));
  browser = await launchBrowser();
}, 180_000);
afterAll(async () => {
  await browser.close();
  await Promise.all([site, metric, city].map((one) => one.close()));
});

/** 70 ft southwest of H-0157 in the invented town, with a fix as a phone in the open gives it. */
const here = { latitude: 39.2078, longitude: -98.3915, accuracy: 9 };
const withPlace = { geolocation: here, permissions: ['geolocation'] };
const phone = { viewport: { width: 320, height: 640 } };

async function findMe(page: Page): Promise<void> {
  await page.click('[data-map="find"]');
  await page.waitForSelector('[data-near-result] h3');
}
const ids = (page: Page): Promise<string[]> => page.locator('.nearest.numbered .nearest-id').allInnerTexts();
const status = (page: Page): Promise<string> => page.innerText('[data-near-status]');
/** Scale and shift of what is drawn. */
const worldOf = async (page: Page): Promise<number[]> => {
  // What a gesture changes is drawn at the next frame of the held clock.
  await page.clock.runFor(50);
  const transform = await page.getAttribute('[data-layer="world"]', 'transform');
  return [...(transform ?? '').matchAll(/-?[\d.]+/g)].map(Number);
};

describe('without script', () => {
  test('the map is whole: signs that lead to the list, dots, scale, and nothing that would need a script', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', { javaScriptEnabled: false });
    expect(await page.textContent('h1')).toBe('Map of hydrants');
    expect(await page.locator('.town-map a').count()).toBe(6);
    expect(await page.locator('.town-map a').first().getAttribute('href')).toBe('/#out-1');
    expect(await page.getAttribute('[data-layer="dots"]', 'd')).toMatch(/^M[\d.]+ [\d.]+h0[mM]/);
    expect(await page.textContent('[data-furniture="scale"]')).toMatch(/ft \(\d+ m\)/);
    for (const selector of ['.near-me', '.map-buttons', '[data-streets]'])
      expect(await page.locator(selector).first().isVisible(), selector).toBe(false);
    await close();
  });
});

describe.each([
  ['light', {}],
  ['dark', { colorScheme: 'dark' as const }],
  ['narrow', phone],
  ['stale', { at: new Date(townNow.getTime() + 3_600_000) }],
])('with an answer on it, %s', (_, look) => {
  test.each(['/map/', '/es/map/'])('%s has nothing that axe objects to', async (path) => {
    const { page, faults, close } = await openPublic(browser, site, path, { ...withPlace, ...look });
    await findMe(page);
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))])).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });
});

describe('what is near', () => {
  test('is named with distance and bearing, those out of service beside it, with the time of the list', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', withPlace);
    await findMe(page);
    // By hand from the town's own coordinates: H-0157 stands at 39.20794, -98.39134 (to five decimals).
    expect(await status(page)).toBe('H-0157 is the nearest in service: 70 ft (21 m) northeast.');
    expect(await ids(page)).toEqual(['H-0157', 'H-0156', 'H-0158', 'H-0182', 'H-0133']);
    const passed = await page.innerText('.passed');
    expect(passed).toMatch(/Hydrant not in the inventory/);
    expect(passed).toMatch(/H-0132\s+350 ft \(107 m\) south\s+OUT OF SERVICE since Wed, Mar 4, 11:05 CST/);
    expect(await ids(page)).not.toContain('H-0132');
    const result = await page.innerText('[data-near-result]');
    expect(result).toContain('Checked Wed, Mar 4, 14:05 CST. Do not rely on it after Wed, Mar 4, 14:25 CST.');
    expect(result).toContain('Distances are straight lines, not along streets.');
    expect(result).toContain('to within 30 ft (9 m)');
    // The same numbers on the map.
    expect(await page.locator('[data-layer="near"] .near-number').allTextContents()).toEqual([
      '5',
      '4',
      '3',
      '2',
      '1',
    ]);
    await close();
  });

  test('is found without a trace of the position in any request, address or store', async () => {
    const { page, asked, close } = await openPublic(browser, site, '/map/', withPlace);
    await findMe(page);
    expect(asked.every((url) => url.startsWith(site.url))).toBe(true);
    expect(asked.filter((url) => url.includes('/v1/map/')).map((url) => new URL(url).pathname)).toEqual([
      '/v1/map/index.json',
      '/v1/map/c.json',
    ]);
    for (const url of [...asked, page.url()]) expect(url).not.toMatch(/39\.2|98\.39|[?#]/);
    const kept = await page.evaluate(() => [document.cookie, localStorage.length, sessionStorage.length]);
    expect(kept).toEqual(['', 0, 0]);
    await close();
  });

  test('in a city asks for whole districts, and the same ones from anywhere in them', async () => {
    const cellsAsked = async (latitude: number, longitude: number): Promise<string[]> => {
      const { page, asked, close } = await openPublic(browser, city, '/map/', {
        ...withPlace,
        geolocation: { latitude, longitude, accuracy: 9 },
      });
      await findMe(page);
      expect(await ids(page)).toHaveLength(5);
      await close();
      return asked
        .filter((url) => url.includes('/v1/map/c'))
        .map((url) => new URL(url).pathname)
        .toSorted();
    };
    const first = await cellsAsked(39.21, -98.37);
    expect(first.length).toBeGreaterThan(0);
    expect(first.length).toBeLessThan(6);
    expect(await cellsAsked(39.2107, -98.3693)).toEqual(first);
  });

  test.each([
    ['/map/', 'metric', 'H-0157 is the nearest in service: 22 m (72 ft) northeast.'],
    ['/es/map/', 'us', 'H-0157 es el más cercano en servicio: 70 pies (21 m) al noreste.'],
  ])('is said in the units and the language of the page: %s', async (path, units, words) => {
    const from = units === 'metric' ? metric : site;
    const { page, close } = await openPublic(browser, from, path, withPlace);
    await findMe(page);
    expect(await status(page)).toBe(words);
    await close();
  });

  test('a position that is not exact is said to be so, before the list', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', {
      ...withPlace,
      geolocation: { ...here, accuracy: 500 },
    });
    await findMe(page);
    expect(await status(page)).toMatch(/only to within 1,640 ft \(500 m\): the order below may be wrong/);
    await close();
  });

  test('a position that is refused leaves another way, which works by keyboard alone', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', { permissions: [] });
    await page.click('[data-map="find"]');
    await page.waitForSelector('[data-near-status] .warning');
    expect(await status(page)).toMatch(/not allowed for this page.*“Nearest to the middle of the map”/s);
    expect(await page.locator('[data-near-result] h3').count()).toBe(0);
    await page.focus('[data-map="middle"]');
    await page.keyboard.press('Enter');
    await page.waitForSelector('[data-near-result] h3');
    expect(await page.textContent('[data-near-result] h3')).toBe('Nearest to the point on the map');
    expect(await ids(page)).toHaveLength(5);
    await close();
  });

  test('while reports are in no list yet the answer says so before it names any hydrant', async () => {
    const behind = await publicSite({ ...townSources(), unprojected: ['2026-03-04T20:03:00.000Z'] });
    const { page, close } = await openPublic(browser, behind, '/map/', withPlace);
    await findMe(page);
    expect(await status(page)).toMatch(
      /Reports received since Wed, Mar 4, 14:03 CST are not in this list yet.*Call 555-0142\./s,
    );
    await close();
    await behind.close();
  });

  test('with no network nothing is claimed, and with a list of before it is said that it is one', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', withPlace);
    await page.context().setOffline(true);
    await page.click('[data-map="find"]');
    await page.waitForSelector('[data-near-status] .warning');
    expect(await status(page)).toMatch(/could not be read.*Nothing can be said.*Call 555-0142/s);
    await page.context().setOffline(false);
    await findMe(page);
    await page.context().setOffline(true);
    await findMe(page);
    expect(await status(page)).toMatch(
      /There is no connection\. This is from the list read before: it was checked/,
    );
    expect(await ids(page)).toHaveLength(5);
    await close();
  });

  test('a list that is too old is not to be relied on, whatever it says', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', {
      ...withPlace,
      at: new Date(townNow.getTime() + 21 * 60_000),
    });
    await findMe(page);
    expect(await status(page)).toMatch(/Do not rely on this list: it was checked .*14:05.*until .*14:25/);
    await close();
  });

  test('answers that are no lists are a fault, and are said to be one', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', withPlace);
    await page.route('**/v1/map/c.json', (route) => route.fulfill({ status: 200, body: 'not json' }));
    await page.click('[data-map="find"]');
    await page.waitForSelector('[data-near-status] .warning');
    expect(await status(page)).toMatch(/could not be understood, which is a fault of this page/);
    await page.unroute('**/v1/map/c.json');
    await page.route('**/v1/map/c.json', (route) =>
      route.fulfill({ status: 200, body: JSON.stringify({ version: 1, stamp: 'older' }) }),
    );
    await page.click('[data-map="find"]');
    await page.waitForFunction(() => document.body.innerText.includes('being renewed'));
    expect(await ids(page)).toEqual([]);
    await close();
  });
});

describe('the map moves', () => {
  test('by buttons and by keys, and back to the whole', async () => {
    const { page, close } = await openPublic(browser, site, '/map/');
    const whole = await worldOf(page);
    await page.click('[data-map="in"]');
    const nearer = await worldOf(page);
    expect(nearer[0]).toBeCloseTo(whole[0]! * 1.6, 6);
    await page.click('[data-map="left"]');
    // A step to the west: what was on the left comes 80 pixels to the right.
    expect((await worldOf(page))[4]! - nearer[4]!).toBeCloseTo(80, 1);
    await page.focus('.map-box');
    await page.keyboard.press('ArrowRight');
    expect((await worldOf(page))[4]).toBeCloseTo(nearer[4]!, 1);
    await page.keyboard.press('-');
    expect((await worldOf(page))[0]).toBeCloseTo(whole[0]!, 6);
    await page.keyboard.press('+');
    await page.click('[data-map="whole"]');
    expect(await worldOf(page)).toEqual(whole);
    await close();
  });

  test('with the mouse, and with the wheel only where Ctrl is held', async () => {
    const { page, close } = await openPublic(browser, site, '/map/');
    await page.click('[data-map="in"]');
    const before = await worldOf(page);
    await page.locator('.map-box').scrollIntoViewIfNeeded();
    const box = (await page.locator('.map-box').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + 120];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 30, { steps: 4 });
    await page.mouse.up();
    const after = await worldOf(page);
    expect(after[4]! - before[4]!).toBeGreaterThan(40);
    expect(after[4]! - before[4]!).toBeLessThanOrEqual(60.01);
    // The end of a movement is not a choice of a point.
    expect(await page.locator('[data-near-result] h3').count()).toBe(0);
    await page.mouse.wheel(0, -200);
    expect((await worldOf(page))[0]).toBe(after[0]);
    // That scrolled the page away from under the mouse.
    await page.locator('.map-box').hover({ position: { x: 100, y: 100 } });
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -200);
    expect((await worldOf(page))[0]).toBeGreaterThan(after[0]!);
    await page.keyboard.up('Control');
    await close();
  });

  test('with two fingers, while one finger scrolls the page', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', {
      ...phone,
      hasTouch: true,
      isMobile: true,
    });
    await page.locator('.map-box').scrollIntoViewIfNeeded();
    const before = await worldOf(page);
    const box = (await page.locator('.map-box').boundingBox())!;
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: [number, number][]) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map(([px, py], id) => ({ x: box.x + px, y: box.y + py, id })),
      });
    await touch('touchStart', [
      [100, 120],
      [180, 120],
    ]);
    for (const step of [10, 20, 30, 40])
      await touch('touchMove', [
        [100 - step, 120],
        [180 + step, 120],
      ]);
    await touch('touchEnd', []);
    const pinched = await worldOf(page);
    // Fingers 80 px apart, then 160: twice as near.
    expect(pinched[0]! / before[0]!).toBeCloseTo(2, 1);
    await touch('touchStart', [[100, 120]]);
    for (const step of [20, 40, 60]) await touch('touchMove', [[100, 120 - step]]);
    await touch('touchEnd', []);
    expect(await worldOf(page)).toEqual(pinched);
    expect(await page.locator('[data-near-result] h3').count()).toBe(0);
    await close();
  });

  test('and close up each hydrant stands in its exact place with its name', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', withPlace);
    await findMe(page);
    await page.clock.runFor(1000);
    await page.waitForSelector('.dot-name');
    expect(await page.locator('.dot-name').allTextContents()).toContain('H-0157');
    // Signs out of sight cannot be reached by keyboard either.
    expect(await page.locator('.town-map a[hidden]').count()).toBeGreaterThan(0);
    await close();
  });

  test('a touch on a place lists what is nearest to it; one on a sign goes to the list', async () => {
    const { page, close } = await openPublic(browser, site, '/map/');
    await page.locator('.map-box').click({ position: { x: 40, y: 300 } });
    await page.waitForSelector('[data-near-result] h3');
    expect(await page.textContent('[data-near-result] h3')).toBe('Nearest to the point on the map');
    await page.click('[data-map="whole"]');
    await page.clock.runFor(50);
    await page.locator('.town-map a').first().click();
    await page.waitForURL('**/#out-1');
    await close();
  });

  test.each([
    [phone, 320, '100%'],
    [{ viewport: { width: 640, height: 900 } }, 640, '200%'],
  ])('and never makes the page wider than the screen: %o', async (look, width, letters) => {
    const { page, close } = await openPublic(browser, site, '/es/map/', { ...withPlace, ...look });
    await page.evaluate((size) => {
      document.documentElement.style.fontSize = size;
    }, letters);
    await findMe(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await close();
  });

  test('with the colors forced, marks still have a color of the system', async () => {
    const { page, close } = await openPublic(browser, site, '/map/', {
      ...withPlace,
      forcedColors: 'active',
    });
    await findMe(page);
    const stroke = (selector: string): Promise<string> =>
      page
        .locator(selector)
        .first()
        .evaluate((element) => getComputedStyle(element).stroke);
    const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    for (const selector of ['.dots', '.leader', '.you']) expect(await stroke(selector)).not.toBe(ground);
    expect(
      await page.locator('.map-box > svg').evaluate((svg) => getComputedStyle(svg).backgroundColor),
    ).toBe(ground);
    expect(
      await page
        .locator('.passed li')
        .first()
        .evaluate((li) => getComputedStyle(li).borderTopStyle),
    ).toBe('solid');
    await close();
  });
});

describe('streets', () => {
  test('without a source there is no way to show any, and the policy allows none', async () => {
    const { page, close } = await openPublic(browser, site, '/map/');
    expect(await page.locator('[data-streets]').count()).toBe(0);
    expect(await page.getAttribute('meta[http-equiv="Content-Security-Policy"]', 'content')).toContain(
      "img-src 'self';",
    );
    await close();
  });

  test('are asked of the one source, when they are asked for, with its attribution; not around one’s position', async () => {
    const { page, close } = await openPublic(browser, metric, '/map/', withPlace);
    // The test's own host sends a policy without the source, so nothing leaves: what is asked for is what is counted.
    const tiles = (): Promise<string[]> =>
      page
        .locator('[data-layer="tiles"] image')
        .evaluateAll((images) => images.map((image) => image.getAttribute('href') ?? ''));
    expect(await tiles()).toEqual([]);
    expect(await page.isVisible('[data-streets-by]')).toBe(false);
    await page.check('[data-streets]');
    await page.clock.runFor(50);
    const shown = await tiles();
    expect(shown.length).toBeGreaterThan(0);
    for (const url of shown)
      expect(url).toMatch(/^https:\/\/tiles\.example\.gov\/streets\/\d+\/\d+\/\d+\.png$/);
    expect(await page.innerText('[data-streets-by]')).toBe('Streets: © Example County');
    expect(await page.getAttribute('meta[http-equiv="Content-Security-Policy"]', 'content')).toContain(
      "img-src 'self' https://tiles.example.gov;",
    );
    await findMe(page);
    await page.clock.runFor(50);
    expect(await tiles()).toEqual([]);
    expect(await page.isChecked('[data-streets]')).toBe(false);
    expect(await page.innerText('[data-streets-status]')).toMatch(
      /would tell tiles\.example\.gov where you are/,
    );
    await close();
  });
});
