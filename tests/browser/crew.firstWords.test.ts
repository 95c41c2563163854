import { describe, expect, it } from 'vitest';
import { appTest, noSignal } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

// The whole catalogue never comes.
const { signIn, server } = appTest(ports.firstWords, { tolerated: [noSignal] });

/** What has a name on the screen and says nothing: a word that was not here. */
const speechless = (): string[] =>
  [...document.querySelectorAll('h1, h2, h3, label, legend, summary, button, a, dt, p')]
    .filter((element) => (element as HTMLElement).offsetParent !== null)
    .filter(
      (element) =>
        (element.textContent ?? '').trim() === '' &&
        // A place that speaks when there is something to say.
        element.getAttribute('role') !== 'status' &&
        !element.getAttribute('aria-label') &&
        element.querySelector('img, svg, input') === null,
    )
    .map((element) => element.outerHTML.slice(0, 120));

describe('on a line that brings the first words and then nothing more', () => {
  it.each([
    ['en', '#/'],
    ['en', '#/find'],
    ['en', '#/new/strike'],
    ['es', '#/'],
    ['es', '#/new/strike'],
  ] as const)('%s %s has a word for everything it shows', async (locale, address) => {
    const { page } = await signIn('crew');
    if (locale === 'es') {
      await page.getByRole('button', { name: 'Español' }).click();
      await page.locator('html[lang=es]').waitFor();
    }
    // The whole catalogue is asked for and never comes.
    const asked: string[] = [];
    await page.route(/\/_assets\/(?:en|es)\.[\w-]+\.js$/, (route) => {
      asked.push(route.request().url());
      return route.abort();
    });
    await page.goto('about:blank');
    await page.goto(`${server.origin}/crew/${address}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    if (address.endsWith('strike')) await page.getByRole('searchbox').waitFor();
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    await page.waitForTimeout(300);
    expect(await page.evaluate(speechless)).toEqual([]);
    expect(await page.locator('html').getAttribute('lang')).toBe(locale);
    // Asked for in the end, so the names above are of the right files.
    await expect.poll(() => asked.length, { timeout: 10_000 }).toBeGreaterThan(0);
  });
});
