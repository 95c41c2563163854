import { Big } from 'big.js';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import type { AnsweredObjection } from '../../shared/audit/objections.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import {
  expectAccessible,
  expectEveryWord,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** The clerk's main job on an open claim of the demo: what is missing, papers, objections, what each line stands on. */
const { server, signIn, signInForAll, tolerate } = appTest(ports.deskClaim, { load: 'town' });
let clerk: Looking;
let page: Page;
let claim: ClaimState;

beforeAll(async () => {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ stage }) => stage === 'open')!;
  clerk = await signInForAll('clerk');
  ({ page } = clerk);
}, 180_000);

const openClaim = async (): Promise<void> => {
  await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
  await page.locator('.sum.total').waitFor();
  await page.locator('#objections .filters').waitFor();
};
const objections = async (): Promise<AnsweredObjection[]> =>
  (await server.ask<{ objections: AnsweredObjection[] }>('clerk', `/api/claims/${claim.claimId}/objections`))
    .objections;
const openCount = async (): Promise<number> =>
  (await objections()).filter(({ answered }) => answered === null).length;

test('the claim says at a glance what it comes to and how many objections are open', async () => {
  await openClaim();
  const statement = await server.ask<Statement>('clerk', `/api/claims/${claim.claimId}/statement`);
  const total = `$${(statement.totalCents / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`;
  const glance = page.locator('.glance');
  expect(await glance.textContent()).toContain(total);
  expect(await glance.textContent()).toContain(`${await openCount()} open`);
  // The order of the work, from top to bottom.
  const headings = await page.locator('.case-main > section > h2').allTextContents();
  expect(headings.slice(0, 3)).toEqual(['What is missing next', 'Statement of costs', 'Likely objections']);
  // Most money first.
  const stakes = (await objections()).map(({ atStakeCents }) => atStakeCents);
  expect(stakes).toEqual([...stakes].sort((a, b) => b - a));
  await expectAccessible(page);
});

test('a paper that an objection asks for is added from the objection, and the objection is answered', async () => {
  await openClaim();
  const asked = page.locator('.objections > li', { hasText: 'has no issue slip' }).first();
  await asked.getByRole('link', { name: /^Add: Papers/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Papers' }).waitFor();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'slip.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<</Encrypt 2 0 R>>\n%%EOF'),
    });
  // A paper is no photo, and one that is protected is said to be.
  await page.getByRole('group', { name: 'Paper 1', exact: true }).waitFor();
  await page.getByText('This PDF is protected.', { exact: false }).waitFor();
  await page.getByText('Issue slip', { exact: true }).click();
  await page.getByLabel('Title (needed)').fill('Issue slip of the stores');
  await page.getByLabel('Number on the paper').fill('S-1188');
  const view = page.getByRole('radiogroup', { name: /shows/ }).getByText('Document', { exact: true });
  if ((await view.count()) > 0) await view.click();
  await sendAndConfirm(page);

  await openClaim();
  const line = page.locator('.objections > li', { hasText: 'has no issue slip' }).first();
  await line.getByRole('button', { name: /^Answer it/ }).click();
  await line.getByText('Answered: there is evidence').click();
  await line.getByLabel('Reason (needed)').fill('Issue slip S-1188, among the papers');
  await line.getByRole('button', { name: 'Send' }).click();
  // It stays in view with the name that it was answered by.
  await line.locator('.objection-answer').waitFor();
  expect(await line.textContent()).toContain('Issue slip S-1188, among the papers');
  await page.getByRole('button', { name: 'Answered (1)' }).waitFor();
  const said = (await objections()).find(({ answered }) => answered !== null)?.answered;
  expect(said).toMatchObject({ answer: 'answered', reason: 'Issue slip S-1188, among the papers' });
});

test('an objection to a repair leads to the correction of that repair, and not to another one', async () => {
  const of = (await objections()).find(({ add }) => add === 'repair');
  expect(of?.corrects).toHaveLength(1);
  // What crews record a clerk does not correct, and is told so; a manager may.
  await openClaim();
  await page.locator('.objections').getByText('Others add this: Repair').first().waitFor();
  const manager = await signIn('manager');
  await goTo(manager.page, server, `/desk/#/claim/${claim.claimId}`);
  const list = manager.page.locator('.objections');
  await list
    .getByRole('link', { name: /^Correct: Repair/ })
    .first()
    .click();
  await manager.page.getByRole('heading', { level: 1, name: 'Correction: Repair' }).waitFor();
  await manager.close();
});

test('an objection is overruled by keyboard; a reload loses nothing, and without reason nothing is sent', async () => {
  await openClaim();
  const first = page.locator('.objections > li').first();
  const before = await openCount();
  await first.getByRole('button', { name: /^Answer it/ }).focus();
  await page.keyboard.press('Enter');
  // The focus is in the form: the last of three answers.
  await page.waitForFunction(() => document.activeElement?.matches('.objections input[type=radio]'));
  await page.keyboard.press('ArrowUp');
  expect(await first.getByLabel('Overruled: it is sent all the same').isChecked()).toBe(true);
  await first.getByRole('button', { name: 'Send' }).focus();
  await page.keyboard.press('Enter');
  await first.locator('.error').waitFor();
  expect(await openCount()).toBe(before);
  await page.waitForFunction(() => document.activeElement?.matches('.objections textarea'));
  await page.keyboard.type('Adopted in public session');
  expect(await first.getByLabel('Reason (needed)').inputValue()).toBe('Adopted in public session');
  await expectAccessible(page);

  await page.reload();
  await page.locator('.objections').waitFor();
  expect(await first.getByLabel('Reason (needed)').inputValue()).toBe('Adopted in public session');
  expect(await first.getByLabel('Overruled: it is sent all the same').isChecked()).toBe(true);
  await first.getByRole('button', { name: 'Send' }).focus();
  await page.keyboard.press('Enter');
  await first.locator('.objection-answer').waitFor();
  expect(await openCount()).toBe(before - 1);
  expect(await first.textContent()).toContain('Overruled');
});

test('without a connection an answer waits on the device, says so, and is sent when there is one', async () => {
  tolerate(noSignal);
  await openClaim();
  const one = page.locator('.objections > li').first();
  await one.getByRole('button', { name: /^Answer it/ }).click();
  await one.getByText('Accepted: the insurer would be right').click();
  await one.getByLabel('Reason (needed)').fill('Not worth the dispute');
  const before = await openCount();
  await page.context().setOffline(true);
  await one.getByRole('button', { name: 'Send' }).click();
  await one.getByText('Your answer is on this device and waits to be sent.').waitFor();
  await page.context().setOffline(false);
  // The outbox goes on by itself.
  await expect.poll(openCount, { timeout: 20_000 }).toBe(before - 1);
  await one.locator('.objection-answer').getByText('Not worth the dispute').waitFor();
});

test('each line says what it stands on and leads to the record it comes from', async () => {
  await openClaim();
  const line = page.locator('.statement > li').first();
  // Closed: the factors that are printed multiply to the amount, the fringe among them, and the multiplier of an hour
  // that the pay rules pay higher (which hours those are hangs on the time of day at which the demo is told).
  const factors = ((await line.locator('.line-quantity').textContent()) ?? '').split(' × ');
  const [, hours, minutes] = /^(\d+) h(?: (\d+) min)?$/.exec(factors[0] ?? '') ?? [];
  expect(factors.length).toBeGreaterThanOrEqual(3);
  const minuteDollars = factors.slice(1).reduce(
    (product, factor) => {
      const [, rate, fringe, times] = /^(?:\$([\d.]+)\/h|\(1 \+ ([\d.]+)\)|([\d.]+))$/.exec(factor) ?? [];
      return product.times(fringe === undefined ? (rate ?? times ?? '') : new Big(1).plus(fringe));
    },
    new Big(hours ?? '').times(60).plus(minutes ?? 0),
  );
  const amount = minuteDollars.div(60).toFixed(2);
  expect(await line.locator('.line-amount').textContent()).toBe(`$${amount}`);
  await line.locator('summary').click();
  for (const label of ['Arithmetic', 'Hours', 'Days', 'Rate', 'Authority', 'Rate book edition'])
    await line.getByText(label, { exact: true }).waitFor();
  expect(await line.textContent()).toMatch(/page \d+/);
  await line.getByRole('link', { name: /^Repair, / }).click();
  // The case file opens at that entry, opened, with the focus on it.
  await page.getByRole('heading', { level: 1, name: /^Strike/ }).waitFor();
  await page.waitForFunction(
    () => document.activeElement?.closest('.story-item')?.querySelector('details')?.open === true,
  );
  await page.goBack();
  const again = page.locator('.statement > li').first();
  await again.locator('summary').click();
  await again.locator('dd a[href*="rates/"]').click();
  await page.getByRole('heading', { level: 2, name: 'Authorities' }).waitFor();
  await expectAccessible(page);
});

test('a counter-calculation shows its figure while it is typed, and stands by the statement as not taken off', async () => {
  await openClaim();
  await page.getByRole('link', { name: 'Work out a counter-calculation' }).click();
  await page.getByLabel('Destroyed component (needed)').fill('Upper barrel');
  await page.getByLabel('Expected life, years (needed)').fill('50');
  await page.getByLabel('Who says so (needed)').fill('Asset plan 2024');
  await page.getByLabel('What it cost (needed)').fill('1000');
  // 23 CFR 645.117(h)(2): (age ÷ life) × original cost. Installed ten years to the day before the strike: 10 ÷ 50.
  const { strike } = await server.ask<{ strike: { struckAt: string | null; since: string } }>(
    'clerk',
    `/api/strikes/${claim.strikeId}`,
  );
  const struckOn = new Intl.DateTimeFormat('en-CA', { timeZone: 'America/New_York' }).format(
    new Date(strike.struckAt ?? strike.since),
  );
  await page
    .getByLabel('Installed on (needed)')
    .fill(`${Number(struckOn.slice(0, 4)) - 10}${struckOn.slice(4)}`);
  await page.getByText('$200.00 would come off').waitFor();
  await expectAccessible(page);
  await sendAndConfirm(page);
  await openClaim();
  const kept = page.locator('li', { hasText: 'Upper barrel' });
  await kept.getByText('kept ready, not taken off').waitFor();
  expect(await kept.textContent()).toContain('$200.00');
});

test('the claim fits a phone in Spanish, with an answer open', async () => {
  const phone = await signIn('clerk', { viewport: { width: 360, height: 740 } });
  await phone.page.evaluate(() => localStorage.setItem('hsl.locale', '"es"'));
  await goTo(phone.page, server, `/desk/#/claim/${claim.claimId}`);
  await phone.page.locator('#objections .filters').waitFor();
  await phone.page.locator('.statement summary').first().click();
  await phone.page.getByRole('button', { name: /^Todas/ }).click();
  await phone.page
    .getByRole('button', { name: /^Responder/ })
    .first()
    .click();
  await expectAccessible(phone.page);
  await expectNoSideScroll(phone.page);
  await expectEveryWord(phone.page);
  await phone.close();
});
