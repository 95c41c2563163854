import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { goTo } from '../support/app.ts';
import { appTest } from '../support/browserTest.ts';
import { expectFocusKept, pressOn, tabTo, typeInto } from '../support/keyboard.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

/** A flow test with the keyboard alone, from the strike's page to "sent", and the way to finding a hydrant and back. */
const { server, signIn } = appTest(ports.keyboard);
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
const openForm = async (page: Page, kind: string): Promise<void> => {
  await pressOn(page, kind);
  await page.getByRole('heading', { level: 1, name: kind }).waitFor();
  await page.waitForLoadState('networkidle');
  await expectFocusKept(page);
};
const send = async (page: Page): Promise<void> => {
  await pressOn(page, /^Send$/);
  await page.getByText('Recorded.', { exact: true }).waitFor();
  await expectFocusKept(page);
};
describe('with the keyboard alone', { timeout: 120_000 }, () => {
  test('a flow test is recorded with its answer', async () => {
    const page = await strikePage();
    await openForm(page, 'Flow test');
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
});
