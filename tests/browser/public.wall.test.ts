import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { PublicSources } from '../../shared/public/build.ts';
import { launchBrowser } from '../support/browser.ts';
import { openPublic, publicSite, type PublicSite } from '../support/publicSite.ts';
import { anOutage, aStatus, townNow, townSources } from '../support/town.ts';

let browser: Browser;
let site: PublicSite;

beforeAll(async () => {
  browser = await launchBrowser();
}, 180_000);
afterAll(() => browser.close());
beforeEach(async () => {
  site = await publicSite(townSources());
  return () => site.close();
}, 180_000);

const screen = { viewport: { width: 1920, height: 1080 } };
const isShown = (page: Page, selector: string): Promise<boolean> =>
  page.locator(selector).first().isVisible();

/** The town with one more hydrant out. */
function withOneMore(): PublicSources {
  const town = townSources();
  return {
    ...town,
    statuses: [
      ...town.statuses,
      aStatus('H-0300', [anOutage('o-new', { cause: 'frozen', since: '2026-03-04T20:06:00Z' })]),
    ],
  };
}
/** The town with so many out that one screen does not hold them. */
function withMany(): PublicSources {
  const town = townSources();
  const more = Array.from({ length: 40 }, (_, index) =>
    aStatus(`H-0${String(300 + index)}`, [
      anOutage(`o-${index}`, { cause: 'frozen', since: '2026-03-04T10:00:00Z' }),
    ]),
  ).filter(({ hydrantId }) => town.statuses.every((status) => status.hydrantId !== hydrantId));
  return { ...town, statuses: [...town.statuses, ...more] };
}

describe('the wall', () => {
  test('says how many, which, since when, what instead, when checked, and whom to call', async () => {
    const { page, faults, close } = await openPublic(browser, site, '/wall/', screen);
    expect((await page.innerText('h1')).replaceAll(/\s+/g, ' ')).toBe('5 of 412 hydrants are out of service');
    const first = await page.innerText('.wall-entry');
    expect(first).toMatch(/H-0131/);
    expect(first).toMatch(/Struck by a vehicle/);
    expect(first).toMatch(/Out since Wed, Mar 4, 12:40 CST \(1 hour\)/);
    expect(await page.locator('.wall-entry').first().locator('.wall-nearest li').count()).toBe(3);
    // In the utility's own units, and one that the inventory does not have by its position.
    expect(await page.locator('.wall-nearest li').first().innerText()).toMatch(
      /H-\d{4} [\d,]+ ft (north|south|east|west)/,
    );
    const unknown = page.locator('.wall-entry', { hasText: 'Hydrant not in the inventory' });
    expect(await unknown.locator('.wall-place').innerText()).toBe('Position: 39.20812, -98.39143');
    expect(await page.innerText('.wall-times')).toMatch(/14:05 CST.*14:25 CST.*14:06 CST/s);
    expect(await page.innerText('.wall-call')).toContain('555-0142');
    expect(await page.innerText('.wall-foot')).toMatch(/Longest out: H-0341, 5 days/);
    expect(await isShown(page, '[data-state]')).toBe(false);
    expect(await isShown(page, '[data-stopped]')).toBe(false);
    // Large: a capital is an inch of the screen's 1080 lines at least where it matters.
    const size = (selector: string): Promise<number> =>
      page
        .locator(selector)
        .first()
        .evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
    expect(await size('.wall-count')).toBeGreaterThanOrEqual(90);
    expect(await size('.wall-entry h2')).toBeGreaterThanOrEqual(36);
    expect(await size('.wall-nearest')).toBeGreaterThanOrEqual(24);
    expect(faults).toEqual([]);
    await close();
  });

  test.each([
    ['on the wall', '/wall/', screen],
    ['in Spanish, dark', '/es/wall/', { ...screen, colorScheme: 'dark' as const }],
    ['on a phone', '/wall/', { viewport: { width: 320, height: 640 } }],
    ['stale', '/wall/', { ...screen, at: new Date(townNow.getTime() + 3_600_000) }],
  ])('has nothing that axe objects to: %s', async (_, path, look) => {
    const { page, close } = await openPublic(browser, site, path, look);
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))])).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      look.viewport.width,
    );
    await close();
  });

  test('reads at twice the letter size and fits', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', {
      viewport: { width: 640, height: 900 },
    });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
    await close();
  });
});

describe('it renews itself', () => {
  test('in place, marks what is new, and says it to who hears it', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    await page.evaluate(() => Object.assign(window, { stayed: true }));
    await site.publish(withOneMore(), 2);
    await page.clock.runFor(31_000);
    await page.waitForFunction(() => document.body.innerText.includes('H-0300'));
    expect((await page.innerText('h1')).replaceAll(/\s+/g, ' ')).toBe('6 of 412 hydrants are out of service');
    expect(await page.innerText('.wall-times')).toMatch(/14:07 CST.*14:27 CST/s);
    expect(await page.locator('.wall-entry:has(.wall-new:visible) h2 bdi').first().innerText()).toBe(
      'H-0300',
    );
    expect(await page.locator('.wall-new:visible').count()).toBe(1);
    expect(await page.textContent('[data-news]')).toBe('New on the list: H-0300');
    expect(await page.evaluate(() => 'stayed' in window)).toBe(true);
    // What it says of its age follows the new check.
    await page.clock.fastForward('19:00');
    expect(await isShown(page, '[data-state]')).toBe(false);
    await close();
  });

  test('without script the page is loaded again every minute, and with it is not', async () => {
    const plain = await openPublic(browser, site, '/wall/', { ...screen, javaScriptEnabled: false });
    expect(await plain.page.locator('noscript meta[http-equiv="refresh"]').count()).toBe(1);
    expect(await plain.page.getAttribute('meta[http-equiv="refresh"]', 'content')).toBe('60');
    expect(await plain.page.locator('.wall-entry:visible').count()).toBe(6);
    await plain.close();
    const scripted = await openPublic(browser, site, '/wall/', screen);
    expect(
      await scripted.page.evaluate(() => document.querySelector('meta[http-equiv="refresh"]')),
    ).toBeNull();
    await scripted.close();
  });
});

describe('it shouts', () => {
  test('when it is too old although the service answers', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    await page.clock.fastForward('18:30');
    expect(await isShown(page, '[data-state]')).toBe(false);
    await page.clock.fastForward('01:00');
    expect(await isShown(page, '[data-state]')).toBe(true);
    const words = await page.innerText('[data-state]');
    expect(words).toMatch(/^DO NOT RELY ON THIS SCREEN/);
    expect(words).toMatch(/good until Wed, Mar 4, 14:25 CST.*checked Wed, Mar 4, 14:05 CST/s);
    expect(words).toMatch(/The service answers, but its page has not been made anew/);
    expect(words).toContain('555-0142');
    expect(await page.title()).toMatch(/^DO NOT RELY · /);
    expect(await page.locator('h1').evaluate((h1) => getComputedStyle(h1).textDecorationLine)).toBe(
      'line-through',
    );
    // A page that is made anew takes the shout away.
    await site.publish(townSources(), 20);
    await page.clock.runFor(31_000);
    await page.waitForFunction(() => document.querySelector<HTMLElement>('[data-state]')?.hidden === true);
    expect(await page.title()).not.toMatch(/DO NOT RELY/);
    await close();
  });

  test('when nobody answers: first that, then that it must not be relied on', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    await page.context().setOffline(true);
    await page.clock.runFor(61_000);
    expect(await isShown(page, '[data-state]')).toBe(false);
    await page.clock.runFor(60_000);
    expect(await page.innerText('[data-state]')).toMatch(
      /The service cannot be reached\s+No answer since Wed, Mar 4, 14:06 CST\..*good until Wed, Mar 4, 14:25 CST/s,
    );
    expect(await page.title()).toMatch(/^NO ANSWER · /);
    await page.clock.fastForward('18:00');
    const words = await page.innerText('[data-state]');
    expect(words).toMatch(/^DO NOT RELY ON THIS SCREEN/);
    expect(words).toMatch(/cannot be reached since Wed, Mar 4, 14:06 CST/);
    await page.context().setOffline(false);
    await site.publish(townSources(), 20);
    await page.clock.runFor(31_000);
    await page.waitForFunction(() => document.querySelector<HTMLElement>('[data-state]')?.hidden === true);
    await close();
  });

  test('when what answers is something else: a page of a portal is no wall', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    await page.route('**/wall/', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<h1>Sign in to the guest network</h1>' }),
    );
    await page.clock.runFor(121_000);
    expect(await page.innerText('[data-state]')).toMatch(/The service cannot be reached/);
    expect(await page.innerText('h1')).toContain('412');
    await close();
  });

  test('when its clock is behind the check, because then it cannot tell', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', {
      ...screen,
      at: new Date(townNow.getTime() - 3 * 3_600_000),
    });
    expect(await page.innerText('[data-state]')).toMatch(/clock is earlier than the check.*Set the clock/s);
    await close();
  });

  /** Lets the style's own five minutes pass: the held clock is the script's, not the style's. */
  const later = (page: Page, seconds: number): Promise<void> =>
    page.locator('[data-stopped]').evaluate((element, time) => {
      for (const animation of element.getAnimations()) animation.currentTime = time * 1000;
    }, seconds);

  test('when its script never came: five minutes later the style alone says so', async () => {
    const context = await browser.newContext(screen);
    const page = await context.newPage();
    await page.route('**/_assets/*.js', (route) => route.abort());
    await page.goto(`${site.url}/wall/`);
    await later(page, 290);
    expect(await isShown(page, '[data-stopped]')).toBe(false);
    await later(page, 301);
    expect(await isShown(page, '[data-stopped]')).toBe(true);
    expect(await page.innerText('[data-stopped]')).toMatch(
      /STOPPED RENEWING ITSELF.*Do not rely on it.*call 555-0142/s,
    );
    await context.close();
  });

  test('and a script that lives starts those five minutes anew', async () => {
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    await later(page, 301);
    expect(await isShown(page, '[data-stopped]')).toBe(true);
    await page.clock.runFor(6000);
    expect(await isShown(page, '[data-stopped]')).toBe(false);
    await close();
  });
});

describe('a list that is longer than the screen', () => {
  test('is turned part by part, can be held and turned by hand, and leaves nothing out', async () => {
    await site.publish(withMany(), 1);
    const { page, close } = await openPublic(browser, site, '/wall/', screen);
    const visible = (): Promise<string[]> => page.locator('.wall-entry:visible h2 bdi').allInnerTexts();
    await page.evaluate(() => document.fonts.ready);
    const place = await page.innerText('[data-turn-place]');
    const parts = Number(/^1 of (\d+)$/.exec(place)?.[1]);
    expect(parts).toBeGreaterThan(1);
    const seen = new Set(await visible());
    for (let part = 1; part < parts; part++) {
      await page.clock.runFor(15_000);
      expect(await page.innerText('[data-turn-place]')).toBe(`${part + 1} of ${parts}`);
      const bottom = await page.evaluate(() => {
        const main = document.querySelector('main');
        return (main?.scrollHeight ?? 0) - (main?.clientHeight ?? 0);
      });
      expect(bottom).toBeLessThanOrEqual(1);
      for (const name of await visible()) seen.add(name);
    }
    // The 24 newest are on the wall, each once; how many more there are is said.
    expect(seen.size).toBe(24);
    expect(await page.innerText('.wall-foot')).toMatch(/\d+ more are out, longer than these/);
    await page.click('[data-turn="hold"]');
    const held = await page.innerText('[data-turn-place]');
    await page.clock.runFor(40_000);
    expect(await page.innerText('[data-turn-place]')).toBe(held);
    await page.focus('[data-turn="next"]');
    await page.keyboard.press('Enter');
    expect(await page.innerText('[data-turn-place]')).not.toBe(held);
    await close();
  });
});
