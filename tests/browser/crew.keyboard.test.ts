import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { goTo, minutesAgo } from '../support/app.ts';
import { appTest, noSignal } from '../support/browserTest.ts';
import { expectFocusKept, pressOn, tabTo, typeInto } from '../support/keyboard.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf, strikesAt } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

/**
 * With the keyboard alone: a breakaway repair, a flow test and a return to service from the strike's page to "sent", the
 * way to finding a hydrant and back, and what waits for signal.
 */
const { server, signIn, tolerate } = appTest(ports.keyboard);
let strikeId = '';

beforeAll(async () => {
  strikeId = await reportStrike(signIn, server, 'T-101');
}, 180_000);

const strikePage = async (): Promise<Page> => {
  const { page } = await signIn('crew', { viewport: { width: 1280, height: 800 } });
  await goTo(page, server, `/crew/#/strike/${strikeId}`);
  // What comes later would move what has the focus.
  await page.waitForLoadState('networkidle');
  return page;
};
/** `later`: stands in a part that is read after the form; it would push what has the focus out of sight. */
const openForm = async (page: Page, kind: string, later: string): Promise<void> => {
  await pressOn(page, kind);
  await page.getByRole('heading', { level: 1, name: kind }).waitFor();
  await page.getByText(later).first().waitFor();
  await page.waitForLoadState('networkidle');
  await expectFocusKept(page);
};
const send = async (page: Page): Promise<void> => {
  await pressOn(page, /^Send$/);
  await page.getByText('Recorded.', { exact: true }).waitFor();
  await expectFocusKept(page);
};
/** A date and time is typed part by part, and each part leads on to the next. */
const typeMinute = async (page: Page, label: string, at: string): Promise<void> => {
  const [, year = '', month = '', day = '', hour = '', minute = ''] =
    /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(at) ?? [];
  const twelve = Number(hour) % 12 || 12;
  await tabTo(page, label);
  await page.keyboard.type(`${month}${day}${year}`);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type(`${String(twelve).padStart(2, '0')}${minute}${Number(hour) < 12 ? 'AM' : 'PM'}`);
  expect(await page.getByLabel(label).inputValue()).toBe(at.slice(0, 16));
};

describe('with the keyboard alone', { timeout: 120_000 }, () => {
  test('a breakaway repair is recorded, its hold point opening as its steps are ticked', async () => {
    const page = await strikePage();
    await openForm(page, 'Repair', 'Isolation valve closed');
    for (const step of ['Isolation valve closed', 'Pressure proved gone', 'Barrel drained']) {
      await pressOn(page, `Done ${step}`, 'Space');
      // On to the button that takes it back, a frame later.
      await page.waitForFunction(() => document.activeElement?.textContent.startsWith('Not done') === true);
    }
    await pressOn(page, 'Done Parted hardware taken down', 'Space');
    await tabTo(page, 'Remove Person 1', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await expectFocusKept(page);
    await typeMinute(page, 'Closed up at', minutesAgo(0));
    await send(page);
    const [repair] = await bodiesOf(server, strikeId, 'repair');
    expect(repair?.steps.map(({ step }) => step)).toEqual([
      'isolated',
      'pressure-gone',
      'drained',
      'taken-down',
    ]);
    expect((await strikesAt(server, 'T-101'))[0]).toMatchObject({ breaches: [] });
  });

  test('a flow test is recorded with its answer', async () => {
    const page = await strikePage();
    await openForm(page, 'Flow test', 'Smooth and rounded');
    await typeInto(page, 'Static pressure', '86');
    await typeInto(page, 'Residual pressure', '42');
    await typeInto(page, /flowHydrants.*-search/, 'T-102');
    await page.getByRole('button', { name: /T-102.*Test St/ }).waitFor();
    await pressOn(page, /T-102.*Test St/);
    await expectFocusKept(page);
    await tabTo(page, 'Smooth and rounded');
    await page.keyboard.press('Space');
    await typeInto(page, 'Pitot pressure', '28');
    await page.locator('.figures').getByText('gpm').first().waitFor();
    await send(page);
    const [tested] = await bodiesOf(server, strikeId, 'flow-test');
    expect(tested).toMatchObject({ staticPsi: 86, residualPsi: 42 });
  });

  test('a return to service is recorded and takes effect', async () => {
    const page = await strikePage();
    await openForm(page, 'Return to service', 'No leaks under pressure');
    for (const proof of [
      'No leaks under pressure',
      'Opens and closes fully',
      'Barrel drains down',
      'Flow test',
    ])
      await pressOn(page, new RegExp(`${proof} .*Passed$`), 'Space');
    await page.getByText('This return takes effect').waitFor();
    await send(page);
    await expect.poll(async () => (await strikesAt(server, 'T-101'))[0]?.stage).toBe('back');
  });

  test('from the start page to finding a hydrant and back', async () => {
    const { page } = await signIn('crew', { viewport: { width: 1280, height: 800 } });
    await page.waitForLoadState('networkidle');
    await pressOn(page, 'Find a hydrant');
    await page.getByRole('searchbox').waitFor();
    await expectFocusKept(page);
    await page.goBack();
    await page.getByRole('link', { name: 'Find a hydrant' }).waitFor();
    await expectFocusKept(page);
  });

  test('what waits is found, opened and sent, and the focus is not lost as it leaves the list', async () => {
    tolerate(noSignal);
    const { page } = await signIn('crew', { viewport: { width: 1280, height: 800 } });
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-105');
    await page.waitForLoadState('networkidle');
    await page.route('**/api/submissions', (route) => route.abort());
    await tabTo(page, /Sound$/);
    await page.keyboard.press('Space');
    await pressOn(page, /^Send$/);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await expectFocusKept(page);
    await pressOn(page, /^Crew$/);
    await page.getByRole('heading', { level: 1, name: 'Hydrants' }).waitFor();
    await expectFocusKept(page);
    await pressOn(page, 'on this device is not finished');
    await page.getByRole('heading', { level: 1, name: 'Not sent, and sent' }).waitFor();
    await expectFocusKept(page);
    await pressOn(page, 'Inspection');
    await page.getByRole('heading', { level: 1, name: 'Inspection' }).waitFor();
    await expectFocusKept(page);
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'Not sent, and sent' }).waitFor();
    await expectFocusKept(page);
    await tabTo(page, 'Send now');
    await page.unroute('**/api/submissions');
    await page.keyboard.press('Enter');
    await page.getByText('Recorded lately').waitFor();
    // The button is gone with the last entry.
    await page.getByText('Nothing is waiting.').waitFor();
    await expectFocusKept(page);
  });
});
