import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendAndConfirm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

/** Time with one touch on the repair form: people start, pause and stop, and what runs is never lost. */
const { device, server, signIn } = appTest(ports.timing);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const struck = (hydrantId: string): Promise<string> => reportStrike(signIn, server, hydrantId);
const repairsOf = (id: string): Promise<BodyOf<'repair'>[]> => bodiesOf(server, id, 'repair');
const person = (page: Page, number: number) => page.locator(`#f-crew-${number - 1}`);
const touch = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
/** The sign-in stands in localStorage, which reaches the disk some seconds after it is written. */
const KEPT_AFTER_MS = Number(process.env['KEPT_AFTER_MS'] ?? 6000);
/** The page's clock, which the form reads; the server keeps its own. */
const at = (page: Page, instant: number): Promise<void> => page.clock.setFixedTime(new Date(instant));

describe('time with one touch', () => {
  test('people start, pause and stop one by one and together; the draft survives a reload; times stay editable', async () => {
    const strikeId = await struck('T-101');
    const { page } = await crew();
    const began = Math.floor(Date.now() / 60_000) * 60_000 - 5 * 3_600_000;
    const hour = (hours: number): number => began + hours * 3_600_000;
    await at(page, began);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-101`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await shot(page, 'timer-fresh-360', '#f-crew');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    await person(page, 1)
      .getByText(/^At work since/)
      .waitFor();
    await shot(page, 'timer-one-360', '#f-crew');

    await touch(page, 'Add a person');
    await person(page, 2).getByLabel('Person’s number').fill('w-102');
    await person(page, 2).getByLabel('Labor class').fill('HELPER');
    await at(page, hour(1));
    await person(page, 2)
      .getByRole('button', { name: /^Start/ })
      .click();
    await touch(page, 'Break for all of us');
    await person(page, 2)
      .getByText(/^On a break since/)
      .waitFor();
    await at(page, hour(1.5));
    await touch(page, 'All back to work');

    // A reload, as when the browser was put away: what runs, runs on.
    await page.reload();
    await page.waitForSelector('h1[tabindex]');
    await at(page, hour(2));
    await page.reload();
    await person(page, 1)
      .getByText(/^At work since/)
      .waitFor();
    await person(page, 1).getByText('1 h 30 min worked').waitFor();
    await page.getByText('Still running: 2').waitFor();
    await shot(page, 'timer-running-360', '#f-crew');
    await expectAccessible(page);
    await expectNoSideScroll(page);

    await touch(page, 'Send');
    expect(await page.getByText('No end yet: stop it, or give the date and time.').count()).toBeGreaterThan(
      1,
    );
    await shot(page, 'timer-problems-360');
    await touch(page, 'Stop all of us');
    await sendAndConfirm(page);
    const [body] = await repairsOf(strikeId);
    const iso = (instant: number): string => new Date(instant).toISOString();
    expect(body?.crew).toEqual([
      {
        workerId: 'w-101',
        laborClass: 'LEAD',
        work: [{ from: iso(began), to: iso(hour(2)) }],
        breaks: [{ from: iso(hour(1)), to: iso(hour(1.5)) }],
      },
      {
        workerId: 'w-102',
        laborClass: 'HELPER',
        work: [{ from: iso(hour(1)), to: iso(hour(2)) }],
        breaks: [{ from: iso(hour(1)), to: iso(hour(1.5)) }],
      },
    ]);
  });

  test('what is done so far is sent, and the same people run on in a new form', async () => {
    const strikeId = await struck('T-102');
    const { page } = await crew();
    const began = Math.floor(Date.now() / 60_000) * 60_000 - 4 * 3_600_000;
    await at(page, began);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-102`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    await at(page, began + 3_600_000);
    await touch(page, 'Send what is done so far');
    await page.getByText('Recorded.', { exact: true }).waitFor();
    const [first] = await repairsOf(strikeId);
    const cut = new Date(began + 3_600_000).toISOString();
    expect(first?.crew[0]?.work).toEqual([{ from: new Date(began).toISOString(), to: cut }]);

    // Among the unfinished forms, with the clock running since the cut.
    await goTo(page, server, '/crew/');
    await at(page, began + 2 * 3_600_000);
    await page.locator('a[href^="#/form/"]').first().click();
    await person(page, 1).getByText('1 h 0 min worked').waitFor();
    await touch(page, /^Stop Odalys/);
    await sendAndConfirm(page);
    const bodies = await repairsOf(strikeId);
    expect(bodies).toHaveLength(2);
    expect(
      bodies
        .flatMap(({ crew: members }) => members.flatMap(({ work }) => work))
        .toSorted((a, b) => (a.from < b.from ? -1 : 1)),
    ).toEqual([
      { from: new Date(began).toISOString(), to: cut },
      { from: cut, to: new Date(began + 2 * 3_600_000).toISOString() },
    ]);

    // The next job starts with the same people in one touch.
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-102`);
    expect(await page.getByRole('button', { name: /^Same people/ }).count()).toBe(0);
    await touch(page, 'Remove Person 1');
    await touch(page, 'Same people as last time: Odalys Brennick');
    expect(await person(page, 1).getByLabel('Labor class').inputValue()).toBe('LEAD');
  });

  test('a clock that was set back changes nothing and says so; the time can be typed', async () => {
    const strikeId = await struck('T-103');
    const { page } = await crew();
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-103`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    const from = await page.locator('#f-crew-0-work-0-from').inputValue();
    await at(page, Date.now() - 7_200_000);
    await person(page, 1).getByRole('button', { name: /^Stop/ }).click();
    await page
      .getByText(/^Nothing was changed: this device’s clock stands before/)
      .first()
      .waitFor();
    expect(await page.locator('#f-crew-0-work-0-from').inputValue()).toBe(from);
    expect(await page.locator('#f-crew-0-work-0-to').inputValue()).toBe('');
  });

  test('a browser that is killed comes back with the clock running', async () => {
    const strikeId = await struck('T-105');
    const phone = await device();
    const { page, kill } = await phone.open();
    await page.goto(`${server.origin}/local/sign-in?role=crew`);
    await page.waitForSelector('h1[tabindex]');
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-105`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    await person(page, 1)
      .getByText(/^At work since/)
      .waitFor();
    await new Promise((resolve) => setTimeout(resolve, KEPT_AFTER_MS));
    const address = page.url();
    await kill();

    const again = await phone.open();
    await again.page.goto(address);
    await person(again.page, 1)
      .getByText(/^At work since/)
      .waitFor();
  }, 60_000);
});
