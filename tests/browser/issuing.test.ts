import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import type { AnsweredObjection } from '../../shared/audit/objections.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendAndConfirm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { dollars } from '../support/records.ts';

/** From an accepted objection to the demand that is recorded as sent: what the desk says before a packet is issued. */
const { server, signIn, signInForAll } = appTest(ports.issuing, { load: 'town' });
let clerk: Looking;
let page: Page;
let claim: ClaimState;

beforeAll(async () => {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ claimNumber }) => /-0002$/.test(claimNumber))!;
  clerk = await signInForAll('clerk');
  ({ page } = clerk);
}, 180_000);

/** How a part looks on the desk and on a phone, where nothing may scroll sideways. */
const wideAndNarrow = async (name: string, selector = 'main'): Promise<void> => {
  await shot(page, `${name}-1280`, selector);
  await page.setViewportSize({ width: 360, height: 740 });
  await expectNoSideScroll(page);
  await shot(page, `${name}-360`, selector);
  await page.setViewportSize({ width: 1280, height: 900 });
};
const button = (name: string) => page.getByRole('button', { name });
const openClaim = async (): Promise<void> => {
  await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
  await page.locator('.objections').waitFor();
};
const objections = async (): Promise<AnsweredObjection[]> =>
  (await server.ask<{ objections: AnsweredObjection[] }>('clerk', `/api/claims/${claim.claimId}/objections`))
    .objections;

test('an accepted objection offers its credit, and stands before the packet is issued until there is one', async () => {
  const [granted] = (await objections()).filter(({ atStakeCents }) => atStakeCents > 0).slice(-1);
  const amount = dollars(granted!.atStakeCents);
  await openClaim();
  const all = page.locator('.objections > li');
  const index = (await objections()).findIndex(({ key }) => key === granted!.key);
  const one = all.nth(index);
  await one.getByRole('button', { name: /^Answer it/ }).click();
  await one.getByText('Accepted: the insurer would be right').click();
  await one.getByLabel('Reason (needed)').fill('They would be right');
  await one.getByRole('button', { name: 'Send' }).click();
  await one.getByRole('link', { name: `Add a credit of ${amount}` }).waitFor();

  await button('Issue the packet').click();
  const before = page.locator('.before-issuing');
  await before.getByText('One accepted objection is still billed').waitFor();
  await before.getByText(/(\d+|one) objections? with money (is|are) open/i).waitFor();
  await before.getByText(/of what its payer asks for|that its payer asks for/).waitFor();
  await before.getByText('Files that cannot be included: a preview says').waitFor();
  await expectAccessible(page);
  await wideAndNarrow('before-issuing', '#packet');

  await before.getByRole('link', { name: `Add a credit of ${amount}` }).click();
  await page.getByLabel('Amount (needed)').waitFor();
  expect(await page.getByLabel('Amount (needed)').inputValue()).toBe(
    (granted!.atStakeCents / 100).toFixed(2),
  );
  expect(await page.getByLabel('How the amount was found (needed)').inputValue()).toBe('They would be right');
  expect(await page.getByLabel('What comes off (needed)').inputValue()).not.toBe('');
  await sendAndConfirm(page);
  // Opened from the claim, it leads back there.
  await page.getByRole('link', { name: 'Back to the claim' }).click();
  await page.locator('.objections').waitFor();
  await page.locator('.sum.total').waitFor();
  await button('Issue the packet').click();
  await before.getByText(/of what its payer asks for|that its payer asks for/).waitFor();
  expect(await before.getByText('still billed').count()).toBe(0);
});

test('a preview says what the packet would go out with, files among it', async () => {
  await openClaim();
  await button('Preview the packet').click();
  await page.getByText('The preview is ready.').waitFor({ timeout: 60_000 });
  await page
    .locator('.before-issuing')
    .getByText(/Every file is included|will be listed and not included/)
    .waitFor();
  await wideAndNarrow('preview', '#packet');
});

test('the focus goes to the result; a second revision asks at its button what changed', async () => {
  await openClaim();
  await button('Issue the packet').click();
  await button('Issue it now').click();
  await page.getByText('Revision 1 is issued.').waitFor({ timeout: 60_000 });
  expect(
    await page.evaluate(
      () => document.activeElement?.textContent?.includes('Revision 1 is issued.') ?? false,
    ),
  ).toBe(true);
  await button('Download the PDF Revision 1').waitFor();

  await button('Issue the packet').click();
  await page.getByText('Say what changed since revision 1').waitFor();
  const field = page.getByLabel('What changed since revision 1, and why');
  expect(await field.evaluate((at) => at === document.activeElement)).toBe(true);
  expect(await button('Issue it now').count()).toBe(0);
  await wideAndNarrow('changes-needed', '#packet');
  await field.fill('Nothing, in truth');
  await button('Issue the packet').click();
  await button('Issue it now').click();
  await page.getByText('Nothing has changed since revision 1').waitFor({ timeout: 60_000 });
});

test('a bill that changed since is said, and the demand of the next revision is filled in', async () => {
  await openClaim();
  await page.locator('#missing').getByText('The demand is not recorded as sent').waitFor();
  await page.getByRole('link', { name: 'Add a credit', exact: true }).click();
  await page.getByText('Salvage', { exact: true }).click();
  await page.getByLabel('What comes off (needed)').fill('Old barrel');
  await page.getByLabel('Amount (needed)').fill('25');
  await page.getByLabel('How the amount was found (needed)').fill('Scrap dealer');
  await sendAndConfirm(page);
  await page.getByRole('link', { name: 'Back to the claim' }).click();
  await page.locator('#missing').getByText('The bill has changed since revision 1').waitFor();
  expect(await page.locator('#missing').getByText('The demand is not recorded as sent').count()).toBe(0);

  await page.getByLabel('What changed since revision 1, and why').fill('The barrel was sold');
  await button('Issue the packet').click();
  await button('Issue it now').click();
  await page.getByText('Revision 2 is issued.').waitFor({ timeout: 60_000 });
  await page.locator('#missing').getByRole('link', { name: 'Record the demand sent' }).click();
  const revision = page.getByLabel('Revision (needed)');
  await revision.waitFor();
  expect(await revision.inputValue()).toBe('2');
  const now = (await server.ask<{ claim: ClaimState }>('clerk', `/api/claims/${claim.claimId}`)).claim;
  expect(await page.getByLabel('Amount demanded (needed)').inputValue()).toBe(
    ((now.packets.at(-1)?.demandCents ?? 0) / 100).toFixed(2),
  );
  expect(await page.getByLabel('Sent to (needed)').inputValue()).toBe(now.payerName ?? '');
});

test('on a phone the whole name of who is signed in is read', async () => {
  for (const role of ['clerk', 'manager', 'crew'] as const) {
    const phone = await signIn(role, { viewport: { width: 360, height: 740 } });
    await goTo(phone.page, server, role === 'crew' ? '/crew/#/' : '/desk/#/');
    const cut = await phone.page.locator('.who a').evaluate((name) => name.scrollWidth > name.clientWidth);
    expect(`${role}: ${cut}`).toBe(`${role}: false`);
    await expectNoSideScroll(phone.page);
    await shot(phone.page, `name-${role}-360`);
    await phone.close();
  }
});
