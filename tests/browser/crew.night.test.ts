import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { photoBytes } from '../../infra/local/demo/photos.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import {
  expectAccessible,
  expectNoSideScroll,
  goTo,
  minutesAgo,
  pickHydrant,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, preloadPassedBy, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { historyOf, strikesAt } from '../support/records.ts';

/**
 * A night strike, from the first report to the return, with no signal from the moment the truck leaves the yard until it
 * is back: every form is filled in on what the device holds, and in the morning everything is there once. On a phone,
 * and on the laptop of a truck.
 */
const { server, signInForAll } = appTest(ports.night, { tolerated: [noSignal, preloadPassedBy] });
let crew: Looking;
let page: Page;

const button = (name: string | RegExp) => page.getByRole('button', { name });
const choose = (group: string, choice: string) =>
  page.getByRole('radiogroup', { name: group }).getByText(choice, { exact: true }).click();
/** Kept on the device, and said to be no more than that. */
const keep = async (): Promise<void> => {
  await sendForm(page);
  await page.getByText('It is kept on this device', { exact: false }).waitFor();
};
/** On with the strike that only this phone knows. */
const report = async (kind: string): Promise<void> => {
  await page.getByRole('link', { name: 'Go on with this strike' }).click();
  await page.getByRole('link', { name: kind, exact: true }).first().click();
  await page.getByRole('heading', { level: 1, name: kind }).waitFor();
};

describe.each([
  {
    on: 'a phone in the dark',
    screen: { viewport: { width: 360, height: 740 }, colorScheme: 'dark' as const },
    struck: 'T-102',
    flowed: 'T-103',
  },
  {
    on: 'a laptop',
    screen: { viewport: { width: 1280, height: 800 } },
    struck: 'T-104',
    flowed: 'T-105',
  },
])('a night with no signal on $on', ({ screen, struck, flowed }) => {
  const valve = struck.replace('T', 'V');
  const width = screen.viewport.width;

  beforeAll(async () => {
    crew = await signInForAll('crew', { serviceWorkers: 'allow', ...screen });
    ({ page } = crew);
    await goTo(page, server, '/crew/');
    await page.getByText('Ready with no signal: 6 hydrants on this device.').waitFor();
    // The truck leaves the yard.
    await server.kill();
  }, 180_000);
  // The app of the other night would go on asking.
  afterAll(() => crew.close());

  test('the strike is kept, and the screen says to tell dispatch', async () => {
    await goTo(page, server, '/crew/#/new/strike');
    await pickHydrant(page, 'Hydrant', struck);
    await choose('Water flowing', 'Jet');
    await keep();
    await page.getByText('Tell dispatch by radio or phone now.').first().waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, `night-kept-${width}`);
  });

  test('dispatch is told by radio, and the valve is shut', async () => {
    await report('Marked, or dispatch told');
    await page.getByLabel('Dispatch told at').fill(minutesAgo(115));
    await page.getByLabel('Who took the message').fill('Dispatcher Vane');
    await page.getByLabel('Marked out of service at').fill(minutesAgo(118));
    await keep();
    await report('Valve closed or reopened');
    await page.getByLabel('Valve', { exact: false }).first().fill(valve);
    await choose('What was done', 'Closed');
    await choose('Did it stop the water at the hydrant?', 'Yes');
    await page.getByLabel('When').fill(minutesAgo(110));
    await keep();
  });

  test('the repair holds its take-down, takes its model from the device, and keeps its photo', async () => {
    await report('Repair');
    const takeDown = page.getByRole('listitem').filter({ hasText: 'Parted hardware taken down' });
    expect(await takeDown.getByRole('button').count()).toBe(0);
    for (const step of ['Isolation valve closed', 'Pressure proved gone', 'Barrel drained'])
      await button(`Done ${step}`).click();
    await button('Done Parted hardware taken down').click();
    await choose('Class of damage', 'Breakaway kit');
    await page.getByLabel('Labor class').fill('crew-lead');
    await page.getByLabel(/^From/).first().fill(minutesAgo(100));
    await page.getByLabel(/^To/).first().fill(minutesAgo(5));
    await button(/^Add BW-D51-BK/).click();
    await page.getByLabel('Closed up at').fill(minutesAgo(0));
    await page.getByLabel('Repair finished at').fill(minutesAgo(0));
    await page.getByLabel('Add photos').setInputFiles({
      name: 'repaired.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from(photoBytes('quince-repaired')),
    });
    await page.getByRole('img', { name: 'Photo 1' }).waitFor();
    await choose('What it shows', 'Close-up');
    await shot(page, `night-repair-${width}`);
    await keep();
  });

  test('the flow test answers with no signal', async () => {
    await report('Flow test');
    await page.getByLabel('Static pressure').fill('86');
    await page.getByLabel('Residual pressure').fill('42');
    await pickHydrant(page, 'Hydrant that flowed', flowed);
    await page.getByText('Square and sharp', { exact: false }).click();
    await page.getByLabel('Pitot pressure').fill('28');
    // K. Kolb, course slides on water supply, slide 15 (seen): 789 gpm.
    await page.locator('.figures').getByText('789 gpm').waitFor();
    await keep();
  });

  test('the return takes effect by what this phone knows; then the phone is put away and taken out', async () => {
    await report('Return to service');
    for (const proof of [
      'No leaks under pressure',
      'Opens and closes fully',
      'Barrel drains down',
      'Flow test',
    ])
      await page.getByRole('group', { name: proof, exact: true }).getByText('Passed').click();
    await button(`It is reopened ${valve}`).click();
    await page.getByText('This return takes effect').waitFor();
    await keep();
    await goTo(page, server, '/crew/#/outbox');
    await page.getByRole('listitem').filter({ hasText: 'Return to service' }).first().waitFor();
    await expectAccessible(page);
    await shot(page, `night-outbox-${width}`);
  });

  test('signal comes back: everything is there once, in the order in which it was done', async () => {
    await server.start();
    const here = (): Promise<readonly StrikeState[]> => strikesAt(server, struck);
    await expect.poll(async () => (await here())[0]?.stage, { timeout: 60_000 }).toBe('back');
    const [strike, ...others] = await here();
    expect(others).toEqual([]);
    expect(strike).toMatchObject({ breaches: [] });
    const history = await historyOf(server, strike!.strikeId);
    const arrived = history
      .map(({ recorded: { recordedAt, submission } }) => ({
        at: Date.parse(recordedAt),
        kind: submission.kind,
      }))
      .sort((a, b) => a.at - b.at);
    expect(arrived.map(({ kind }) => kind)).toEqual([
      'strike',
      'out-of-service-notice',
      'valve-operation',
      'repair',
      'flow-test',
      'return-to-service',
    ]);
    const evidence = async (): Promise<string[]> =>
      Object.values(
        (
          await server.ask<{ evidence: Record<string, string> }>(
            'manager',
            `/api/strikes/${strike!.strikeId}`,
          )
        ).evidence,
      );
    await expect.poll(evidence, { timeout: 30_000 }).toEqual(['arrived']);
    // Nothing is left on the device.
    await page.getByText('Nothing is waiting.').waitFor({ timeout: 20_000 });
  }, 120_000);
});
