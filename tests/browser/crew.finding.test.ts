import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { expectAccessible, expectNoSideScroll, goTo } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, refusal, shot } from '../support/browserTest.ts';
import { hold, seenBy, withCamera } from '../support/fakeCamera.ts';
import { ports } from '../support/ports.ts';
import { reportStrike } from '../support/reportStrike.ts';

/** A hydrant is found, and a part taken, by code, map, number or position: with signal and without. */
const { server, signIn, tolerate } = appTest(ports.finding);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const struck = (hydrantId: string): Promise<string> => reportStrike(signIn, server, hydrantId);
const person = (page: Page, number: number) => page.locator(`#f-crew-${number - 1}`);
const touch = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();

describe('codes', () => {
  test('a tag’s code finds its hydrant; the camera is asked for at the touch and stopped after it; no address is opened', async () => {
    const { page } = await crew();
    await withCamera(page);
    const requested: string[] = [];
    page.on('request', (request) => requested.push(request.url()));
    await goTo(page, server, '/crew/#/new/strike');
    const scan = page.getByRole('button', { name: 'Scan tag' });
    await scan.waitFor();
    expect((await seenBy(page)).asked).toBe(0);
    await scan.click();
    await page.getByText('Hold the code in the frame.').waitFor();
    await shot(page, 'scan-360');
    await expectAccessible(page);
    await hold(page, 'https://elsewhere.invalid/');
    await page.getByText('That code holds no number that can be used: https://elsewhere.invalid/').waitFor();
    await hold(page, 'https://elsewhere.invalid/tags/t-104');
    await page.getByRole('button', { name: 'Change T-104' }).waitFor();
    const after = await seenBy(page);
    expect([after.asked, after.stopped]).toEqual([1, 1]);
    expect(requested.filter((url) => url.includes('elsewhere'))).toEqual([]);
    expect(page.url()).toContain('/crew/#/form/');
  });

  test('a tag that no list has is offered as typed; a closed camera is stopped; a forbidden one says so', async () => {
    tolerate(refusal);
    const { page } = await crew();
    await withCamera(page);
    await goTo(page, server, '/crew/#/find');
    await touch(page, 'Scan tag');
    await page.getByText('Hold the code in the frame.').waitFor();
    await touch(page, 'Close the camera');
    await expect.poll(async () => (await seenBy(page)).stopped).toBe(1);
    await touch(page, 'Scan tag');
    await hold(page, 'Z-900');
    await touch(page, 'Use “Z-900” as typed');
    await page.getByRole('heading', { name: /Z-900/ }).first().waitFor();

    const { page: forbidden } = await crew();
    await withCamera(forbidden, { deny: true });
    await goTo(forbidden, server, '/crew/#/find');
    await touch(forbidden, 'Scan tag');
    await forbidden.getByText(/^The camera is not allowed here/).waitFor();
  });

  test('a browser that reads no codes says to type', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/find');
    await page.getByText('This browser cannot read codes.', { exact: false }).waitFor();
    expect(await page.getByRole('button', { name: 'Scan tag' }).count()).toBe(0);
  });

  test('a part’s code puts it into the list, a second time as one more', async () => {
    const strikeId = await struck('T-104');
    const { page } = await crew();
    await withCamera(page);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-104`);
    await touch(page, 'Scan a part');
    await hold(page, 'bw-gsk');
    await page.getByText('BW-GSK added: Nozzle section gasket set').waitFor();
    await touch(page, 'Scan another part');
    await hold(page, 'BW-GSK');
    await page.getByText('BW-GSK is in the list: now 2.').waitFor();
    expect(await page.getByLabel('How many').inputValue()).toBe('2');
    await shot(page, 'scan-part-360', '#f-parts');
  });
});

describe('the map', () => {
  test('shows what is near; a touch or an arrow key chooses, a button takes', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await touch(page, 'Map');
    const map = page.locator('svg.drawing');
    await map.waitFor();
    await shot(page, 'map-360');
    await expectAccessible(page);
    await expectNoSideScroll(page);
    // T-103 is 36 ft away and chosen to begin with; the next one to the north stands above it.
    await page.getByRole('button', { name: 'Take T-103' }).waitFor();
    const mark = page.locator('svg.drawing [data-id="T-103"]');
    await mark.focus();
    await page.keyboard.press('ArrowUp');
    await page.getByRole('button', { name: 'Take T-104' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-id'))).toBe('T-104');
    // A thumb that comes down 15 px beside a mark means that mark.
    const box = (await page.locator('svg.drawing [data-id="T-102"] .dot').boundingBox())!;
    await page.mouse.click(box.x + box.width / 2 + 15, box.y + box.height / 2);
    await page.getByRole('button', { name: 'Take T-102' }).waitFor();
    // From far off, several stand under one thumb and are told apart by name.
    for (let times = 0; times < 4; times += 1)
      if (await page.getByRole('button', { name: 'Wider' }).isEnabled()) await touch(page, 'Wider');
    const middle = (await page.locator('svg.drawing [data-id="T-103"] .dot').boundingBox())!;
    await page.mouse.click(middle.x + middle.width / 2, middle.y + middle.height / 2);
    await page.getByText('Several stand there:').waitFor();
    await shot(page, 'map-several-360');
    await touch(page, 'Take T-102');
    await page.getByRole('button', { name: 'Change T-102' }).waitFor();
  });
});

describe('with no signal', () => {
  test('number, position, tag and map find the hydrant, and the clock runs', async () => {
    tolerate(noSignal);
    const { page } = await crew({ serviceWorkers: 'allow' });
    await withCamera(page);
    await goTo(page, server, '/crew/');
    await page.getByText('Ready with no signal: 6 hydrants on this device.').waitFor();
    await server.kill();
    try {
      await goTo(page, server, '/crew/#/new/strike');
      await touch(page, 'Map');
      await page.getByText(/^From the list on this device, as of/).waitFor();
      await shot(page, 'map-offline-360');
      await touch(page, 'Take T-103');
      await touch(page, 'Change T-103');
      await touch(page, 'Scan tag');
      await hold(page, 'T-106');
      await touch(page, 'Change T-106');
      await page.getByRole('searchbox', { name: 'Hydrant' }).fill('T-105');
      await page.locator('.results button').first().click();
      await touch(page, 'Change T-105');
      await touch(page, 'Near me');
      await page.locator('.results button').first().click();
      await page.getByRole('button', { name: 'Change T-103' }).waitFor();

      await goTo(page, server, '/crew/#/new/repair?hydrant=T-103');
      await person(page, 1)
        .getByRole('button', { name: /^Start/ })
        .click();
      await person(page, 1)
        .getByText(/^At work since/)
        .waitFor();
    } finally {
      await server.start();
    }
  }, 90_000);
});
