import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { expectAccessible, expectNoSideScroll, goTo } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** The crew at work: a strike in under a minute, and a screen to be read in the sun, at night, on a small phone. */
const { server, signIn } = appTest(ports.atWork);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const touch = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();

/**
 * A pace for a hand in a wet glove: the keystroke-level model's times (Card, Moran, Newell, Communications of the ACM
 * 23 (7), 1980; from memory: thinking 1.35 s, pointing 1.1 s, pressing 0.1 s, a key 0.28 s for an average typist),
 * every one doubled.
 */
const TOUCH_MS = 2 * (1350 + 1100 + 100);
const KEY_MS = 2 * 280;
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

describe('a strike in under 60 seconds', () => {
  test.each(['near me', 'by number'] as const)(
    '%s: from the start screen to out of service on the server',
    async (way) => {
      const { page } = await crew();
      const hydrantId = way === 'near me' ? 'T-103' : 'T-106';
      await goTo(page, server, '/crew/');
      let touches = 0;
      const press = async (find: ReturnType<Page['getByRole']>): Promise<void> => {
        await wait(TOUCH_MS);
        touches += 1;
        await find.click();
      };
      const began = Date.now();
      await press(page.getByRole('link', { name: 'Report a strike' }));
      if (way === 'near me') await press(page.getByRole('button', { name: 'Near me' }));
      else {
        await press(page.getByRole('searchbox', { name: 'Hydrant' }));
        await page.keyboard.type(hydrantId, { delay: KEY_MS });
      }
      await press(page.locator('.results button').first());
      await press(page.getByRole('button', { name: 'Send' }));
      await page.getByText('Recorded.', { exact: true }).waitFor();
      const took = (Date.now() - began) / 1000;
      const { status } = await server.ask<{ status: { inService: boolean } }>(
        'manager',
        `/api/hydrants/${hydrantId}`,
      );
      expect(status.inService).toBe(false);
      expect(touches).toBe(4);
      expect(took).toBeLessThan(60);
      process.stdout.write(`strike ${way}: ${touches} touches, ${took.toFixed(1)} s\n`);
    },
    90_000,
  );

  test('keyboard alone does it', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await page.getByRole('searchbox', { name: 'Hydrant' }).focus();
    await page.keyboard.type('T-102');
    await page.locator('.results button').first().waitFor();
    const at_ = async (): Promise<string> =>
      page.evaluate(() => document.activeElement?.textContent?.replace(/\s+/g, ' ').trim() ?? '');
    for (let tabs = 0; tabs < 8 && !(await at_()).startsWith('T-102'); tabs += 1)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change T-102' }).waitFor();
    for (let tabs = 0; tabs < 80 && (await at_()) !== 'Send'; tabs += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Recorded.', { exact: true }).waitFor();
  });
});

describe('to be read anywhere', () => {
  const screens = {
    home: '/crew/',
    strike: '/crew/#/new/strike',
    find: '/crew/#/find',
    repair: '/crew/#/new/repair?hydrant=T-103',
  };
  test.each([
    ['light', {}],
    ['dark', { colorScheme: 'dark' }],
    ['sunlight', {}],
  ] as const)(
    '%s, 320 px, Spanish: accessible, no side scroll, nothing to touch under 44 px',
    async (look, options) => {
      const { page } = await crew({ viewport: { width: 320, height: 640 }, ...options });
      await goTo(page, server, '/crew/');
      await touch(page, 'Español');
      if (look === 'sunlight') {
        await page.getByLabel('Pantalla').selectOption('sunlight');
        expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
          'rgb(255, 255, 255)',
        );
      }
      for (const [name, path] of Object.entries(screens)) {
        await goTo(page, server, path);
        if (name === 'repair') await page.locator('.timer').first().waitFor();
        if (name === 'strike') {
          await touch(page, 'Mapa');
          await page.locator('svg.drawing').waitFor();
        }
        await shot(page, `${look}-${name}-320`);
        if (name === 'repair') await shot(page, `${look}-crew-320`, '#f-crew');
        await expectAccessible(page);
        await expectNoSideScroll(page);
        const small = await page.evaluate(() =>
          [
            ...document.querySelectorAll<HTMLElement>(
              'button, a[href], select, summary, input:not([type=file])',
            ),
          ]
            .filter((each) => each.checkVisibility() && !each.closest('.visually-hidden, .skip, p a, li p'))
            .map((each) => each.closest<HTMLElement>('label.choice') ?? each)
            .map((each) => ({
              text: (each.textContent ?? '').trim().slice(0, 40) || each.id,
              height: each.getBoundingClientRect().height,
              tag: each.tagName,
              inline: getComputedStyle(each).display === 'inline',
            }))
            .filter(({ height, inline }) => height > 1 && height < 43.9 && !inline)
            .map(({ tag, text, height }) => `${tag} ${text}: ${height}`),
        );
        expect(small, name).toEqual([]);
      }
      // The choice is this device's and stays.
      if (look === 'sunlight')
        expect(await page.evaluate(() => document.documentElement.dataset['look'])).toBe('sunlight');
    },
    90_000,
  );

  test('the look chosen stands after a reload in the utility’s own language and units; a time keeps its AM or PM', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/');
    await page.getByLabel('Screen').selectOption('sunlight');
    await goTo(page, server, '/crew/#/new/valve-operation?hydrant=T-103');
    expect(await page.evaluate(() => document.documentElement.dataset['look'])).toBe('sunlight');
    const when = page.locator('input[type="datetime-local"]').first();
    await when.fill('2026-12-28T20:58');
    expect(await when.evaluate((input) => input.clientWidth - input.scrollWidth)).toBe(0);
    await goTo(page, server, '/crew/');
    expect(await page.getByLabel('Screen').inputValue()).toBe('sunlight');
  });
});
