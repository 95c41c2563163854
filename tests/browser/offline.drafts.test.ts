import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { goTo, pickHydrant, sendAndConfirm } from '../support/app.ts';
import { appTest } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/**
 * Unfinished forms and a browser that is killed (SIGKILL) within a second of the last touch. Chromium writes localStorage
 * to the disk some seconds late, so whatever is found again was in the database.
 */
const { device, server } = appTest(ports.offlineDrafts);

/** Time for the sign-in, which stands in localStorage alone, to reach the disk. */
const SETTLED_MS = 6_000;
/** From the last touch to the end of the browser: less than a second, and far from what localStorage needs. */
const SOON_MS = 700;

async function signIn(page: Page, role: 'crew' | 'manager'): Promise<void> {
  await page.goto(`${server.origin}/local/sign-in?role=${role}`);
  await page.waitForSelector('h1[tabindex]');
}
const unfinished = (page: Page) => page.locator('section', { hasText: 'Unfinished forms' }).locator('li');

describe('a browser killed within a second of a touch', () => {
  test('has the form as it was typed, for whoever typed it; one that was sent does not come back', async () => {
    const phone = await device();
    const first = await phone.open();
    await signIn(first.page, 'crew');
    await new Promise((resolve) => setTimeout(resolve, SETTLED_MS));

    // Opened, filled in and killed, all before localStorage is written.
    await goTo(first.page, server, '/crew/#/new/strike');
    await pickHydrant(first.page, 'Hydrant', 'T-101');
    await first.page.getByRole('button', { name: 'Change T-101' }).waitFor();
    await first.page
      .locator('details', { has: first.page.locator('#f-note') })
      .locator('summary')
      .click();
    await first.page.getByLabel('Note', { exact: true }).fill('North leg of the barrel is split');
    const address = first.page.url();
    await new Promise((resolve) => setTimeout(resolve, SOON_MS));
    await first.kill();

    const second = await phone.open();
    await second.page.goto(address);
    await second.page.getByRole('button', { name: 'Change T-101' }).waitFor();
    expect(await second.page.getByLabel('Note', { exact: true }).inputValue()).toBe(
      'North leg of the barrel is split',
    );
    await goTo(second.page, server, '/crew/');
    await unfinished(second.page).getByText('T-101', { exact: false }).waitFor();
    // Somebody else on the same device is shown no form of theirs.
    await signIn(second.page, 'manager');
    await goTo(second.page, server, '/crew/');
    expect(await unfinished(second.page).count()).toBe(0);
    await second.page.goto('about:blank');
    await second.page.goto(address);
    await second.page.getByText('Not found here').waitFor();

    // Sent, and killed at once: the strike is recorded, and the form is not offered a second time.
    await signIn(second.page, 'crew');
    await second.page.goto('about:blank');
    await second.page.goto(address);
    await second.page.getByRole('button', { name: 'Change T-101' }).waitFor();
    await new Promise((resolve) => setTimeout(resolve, SETTLED_MS));
    await sendAndConfirm(second.page);
    await new Promise((resolve) => setTimeout(resolve, SOON_MS));
    await second.kill();

    const third = await phone.open();
    await third.page.goto(`${server.origin}/crew/`);
    await third.page.waitForSelector('h1[tabindex]');
    await third.page.getByText('T-101', { exact: false }).first().waitFor();
    expect(await unfinished(third.page).count()).toBe(0);
  }, 120_000);

  test('of what stands in both places the later change stands', async () => {
    const { page } = await (await device()).open();
    await signIn(page, 'crew');
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-102');
    await page.getByLabel('Note', { exact: true }).fill('as the database has it');
    await new Promise((resolve) => setTimeout(resolve, SOON_MS));
    const id = page.url().split('/').at(-1) ?? '';
    /** What localStorage would have, had it been written so much before the database or after it. */
    const storedBy = (milliseconds: number, note: string): Promise<void> =>
      page.evaluate(
        ([key, later, typed]) => {
          const draft = JSON.parse(localStorage.getItem(key) ?? '{}') as {
            changedAt: number;
            values: Record<string, unknown>;
          };
          draft.changedAt += later;
          draft.values['note'] = typed;
          localStorage.setItem(key, JSON.stringify(draft));
        },
        [`hsl.draft.${id}`, milliseconds, note] as const,
      );
    await storedBy(-1, 'older');
    await page.reload();
    await page.getByLabel('Note', { exact: true }).waitFor();
    expect(await page.getByLabel('Note', { exact: true }).inputValue()).toBe('as the database has it');
    await storedBy(1, 'newer');
    await page.reload();
    await page.getByLabel('Note', { exact: true }).waitFor();
    expect(await page.getByLabel('Note', { exact: true }).inputValue()).toBe('newer');
  }, 60_000);
});
