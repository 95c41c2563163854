import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import type { ClaimState } from '../../shared/claims/state.ts';
import { expectAccessible, expectNoSideScroll, goTo } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** The demo's claim that was paid short: a reply is drafted, edited, made and recorded. */
const { server, signIn, signInForAll } = appTest(ports.letters, { load: 'town' });
let clerk: Looking;
let page: Page;
let claim: ClaimState;

beforeAll(async () => {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ life }) => life.standing === 'part-paid')!;
  clerk = await signInForAll('clerk');
  ({ page } = clerk);
}, 180_000);

const openLetters = async (): Promise<void> => {
  await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
  await page.locator('#letters').waitFor();
};

test('a reply is drafted from the record, and what is typed outlives a reload', async () => {
  await openLetters();
  await page.getByLabel('Kind of letter').selectOption({ label: 'Reply to a dispute' });
  const preview = page.locator('#letters .letter-preview');
  await preview.waitFor();
  // The payment's cut, its words, and the balance, as the claim has them.
  await expect.poll(() => preview.textContent()).toContain('two and a half hours');
  const dollars = (cents: number): string => `$${(cents / 100).toFixed(2)}`;
  expect(await preview.textContent()).toContain(dollars(claim.money.balanceCents));
  expect(await preview.textContent()).toContain('645.117(b)');
  const text = page.locator('#letter-text');
  await text.fill(`${await text.inputValue()}\n\nWith thanks for your time.`);
  await page.reload();
  await page.locator('#letters .letter-preview').waitFor();
  expect(await page.locator('#letters .letter-preview').textContent()).toContain(
    'With thanks for your time.',
  );
  await expectAccessible(page);
});

test('it is made, recorded and kept; a field that says nothing holds it back', async () => {
  const text = page.locator('#letter-text');
  const good = await text.inputValue();
  await text.fill(`${good}\n\n{offer}`);
  await expect
    .poll(() => page.getByRole('button', { name: 'Make the PDF and record it as sent' }).isDisabled())
    .toBe(true);
  await text.fill(good);
  await page.getByLabel('How it goes').selectOption({ label: 'Post' });
  await page.getByRole('button', { name: 'Make the PDF and record it as sent' }).click();
  await page.getByText('nothing is sent from here', { exact: false }).waitFor();
  // It stands among what happened, and its PDF can be had.
  await page.locator('#life .story').getByRole('heading', { name: 'Letter sent' }).waitFor();
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  const { life } = claims.find(({ claimId }) => claimId === claim.claimId)!;
  expect(life.events.filter(({ kind }) => kind === 'letter-sent')).toHaveLength(1);
});

test('it fits a phone, in Spanish', async () => {
  const phone = await signIn('clerk', { viewport: { width: 360, height: 740 } });
  await phone.page.evaluate(() => localStorage.setItem('hsl.locale', '"es"'));
  await goTo(phone.page, server, `/desk/#/claim/${claim.claimId}`);
  await phone.page.getByLabel('Clase de carta').selectOption({ label: 'Seguimiento' });
  await phone.page.locator('#letters .letter-preview').waitFor();
  await expectAccessible(phone.page);
  await expectNoSideScroll(phone.page);
  await phone.close();
});
