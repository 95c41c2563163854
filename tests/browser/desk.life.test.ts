import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { Teller } from '../../infra/local/demo/teller.ts';
import { lifeKinds } from '../../shared/claims/nextSteps.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import {
  expectAccessible,
  expectEveryWord,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { dollars } from '../support/records.ts';

/** A claim of the demo from its demand to its end: every event is recorded in the browser, in the order it happens. */
const { server, signIn, signInForAll } = appTest(ports.deskLife, { load: 'town' });
let clerk: Looking;
let page: Page;
let claim: ClaimState;
let statement: Statement;

beforeAll(async () => {
  claim = await claimNumbered('2026-0001');
  statement = await server.ask<Statement>('clerk', `/api/claims/${claim.claimId}/statement`);
  clerk = await signInForAll('clerk');
  ({ page } = clerk);
}, 180_000);

/** A contractor's bill that comes after the demand: $240. */
const lateCents = 24_000;
const claimNumbered = async (claimNumber: string): Promise<ClaimState> =>
  (await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims')).claims.find(
    (each) => each.claimNumber === claimNumber,
  )!;
const now = async (): Promise<ClaimState> =>
  (await server.ask<{ claim: ClaimState }>('clerk', `/api/claims/${claim.claimId}`)).claim;
const openClaim = async (): Promise<void> => {
  await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
  await page.locator('#life .story').waitFor();
};
/** From a receipt back to the claim, which is read anew. */
const backToClaim = async (standing: string): Promise<void> => {
  await page.getByRole('link', { name: 'To the claim' }).click();
  // Exactly: “Part paid” is what a screen says that was not read anew yet.
  await page.locator('.standing strong', { hasText: new RegExp(`^${standing}$`) }).waitFor();
};
const money = (label: string) =>
  page
    .locator('table.money tr')
    .filter({ has: page.getByRole('rowheader', { name: label, exact: true }) })
    .locator('.amount');

test('what is likely next comes first; an acknowledgement survives a reload and brings its letter', async () => {
  await openClaim();
  const next = page.locator('#life .actions').first();
  expect(await next.getByRole('link').allTextContents()).toEqual([
    'Record that they acknowledged',
    'Record the adjuster',
    'Record a payment',
  ]);
  await expectAccessible(page);
  await next.getByRole('link', { name: 'Record that they acknowledged' }).click();
  await page.getByText(/^Claim 2026-0001, .*\$1,374\.39 still owed$/).waitFor();
  await page.getByLabel('From whom').fill('The claims office');
  await page.getByLabel('Their claim number').fill('HC-55871');
  await page.reload();
  expect(await page.getByLabel('From whom').inputValue()).toBe('The claims office');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'letter.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF'),
    });
  await page.locator('.row.photo').waitFor();
  await sendAndConfirm(page);
  await backToClaim('Acknowledged');
  // The paper that came with it is opened from its record.
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page
      .locator('.story-item', { hasText: 'Claim acknowledged' })
      .getByRole('button', { name: /^Download the original/ })
      .click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/\.pdf$/);
});

test('the adjuster is whom the claim says to write to', async () => {
  await page.getByRole('link', { name: 'Record the adjuster' }).click();
  await page.getByLabel('Adjuster', { exact: true }).fill('Ann Example');
  await page.getByLabel('Phone').fill('555-0142');
  await page.getByLabel('Email').fill('ann@example.com');
  await sendAndConfirm(page);
  await backToClaim('Acknowledged');
  const life = page.locator('#life');
  await life.getByRole('link', { name: '555-0142' }).waitFor();
  const told = (await life.textContent()) ?? '';
  // The number of their acknowledgement stays, because the adjuster gave no other.
  for (const part of ['Ann Example', 'HC-55871']) expect(told).toContain(part);
});

test('a line is disputed by keyboard: its amount is filled in, and the dispute waits for an answer', async () => {
  const line = statement.lines.find(({ section }) => section === 'labor')!;
  await page.getByRole('link', { name: 'Record disputed lines' }).focus();
  await page.keyboard.press('Enter');
  const which = page.getByLabel('Line of the statement');
  // Its lines come with the statement, and the form moves the focus to its title when it opens.
  await which.locator('option').nth(1).waitFor({ state: 'attached' });
  await page.waitForFunction(() => document.activeElement?.matches('h1') === true);
  await which.focus();
  // Below “the demand as a whole” stands the first line of the statement.
  await page.keyboard.press('ArrowDown');
  await page.waitForFunction(
    () => document.querySelector<HTMLInputElement>('[id$=disputedCents]')?.value !== '',
  );
  const amount = page.getByLabel(/^Amount disputed/);
  expect(dollars(Math.round(Number(await amount.inputValue()) * 100))).toBe(dollars(line.amountCents!));
  await page.keyboard.press('Tab');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('50');
  await page.keyboard.press('Tab');
  const reason = page.getByLabel(/^Reason/);
  await page.waitForFunction(() => document.activeElement?.matches('[id$=reason]'));
  // A list jumps to what is typed, unless a slow machine leaves a second between two letters: then it starts anew.
  await expect
    .poll(async () => {
      if ((await reason.inputValue()) !== 'hours') await page.keyboard.type('Hours');
      return reason.inputValue();
    })
    .toBe('hours');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Two hours would have done');
  await sendAndConfirm(page);
  await backToClaim('Disputed');
  expect(await page.locator('.life .figure-table').textContent()).toContain('waits for an answer');
  expect((await now()).life.disputes).toMatchObject([
    { lineId: line.lineId, reason: 'hours', disputedCents: 5_000, outcome: null },
  ]);
});

test('the reply starts with the dispute that it answers', async () => {
  await page.locator('#life .actions').getByRole('link', { name: 'Record our answer' }).click();
  const answers = page.getByRole('radiogroup', { name: /^What it answers/ });
  expect(await answers.getByRole('radio').first().isChecked()).toBe(true);
  expect(await answers.textContent()).toContain('disputed');
  await page.getByLabel('The lines stand').check();
  await page.getByLabel(/^Reason/).fill('A third person held the traffic');
  await sendAndConfirm(page);
  await backToClaim('Acknowledged');
  expect((await now()).life.disputes[0]?.outcome).toBe('stands');
  // The record of it is read in words, not in ids.
  const entry = page.locator('.story-item', { hasText: 'A third person held the traffic' });
  await entry.locator('summary').click();
  const said = (await entry.locator('.said').textContent()) ?? '';
  expect(said).toContain('disputed');
  expect(said).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-7/);
});

test('a short payment: a check marked as full is cautioned and asked about; cuts want a reason; sums stand beside', async () => {
  const [first, second] = statement.lines;
  const paidCents = claim.money.askedCents - 5_000 - second!.amountCents!;
  await page.locator('#life .actions').getByRole('link', { name: 'Record a payment' }).click();
  const amount = page.getByLabel(/^Amount \(needed\)/);
  expect(await amount.inputValue()).toBe('1374.39');
  await amount.fill((paidCents / 100).toFixed(2));
  await page.getByLabel('Check', { exact: true }).check();
  await page.getByLabel('Number of the check or transfer').fill('10442');
  await page.getByLabel('As payment in full').check();
  await page.getByLabel('Deposited', { exact: true }).check();
  const caution = page.locator('.cautions', { hasText: 'UCC 3-311' });
  await caution.waitFor();
  expect(await caution.textContent()).toContain('This is not legal advice');

  await page.getByLabel('Line by line, as the payer said').check();
  const row = (index: number) => page.locator('.allocated').nth(index);
  await row(0)
    .getByLabel('Paid on it')
    .fill(((first!.amountCents! - 5_000) / 100).toFixed(2));
  await row(0)
    .getByRole('button', { name: /^The other \$50\.00 was cut/ })
    .click();
  await row(1)
    .getByRole('button', { name: /^Refused/ })
    .click();
  await page.getByRole('button', { name: 'The rest was paid in full' }).click();
  const sums = page.locator('.allocation .figures');
  expect(await sums.textContent()).toContain(dollars(paidCents));
  expect(await sums.textContent()).toContain(dollars(5_000 + second!.amountCents!));
  expect(await sums.textContent()).toContain('$0.00');
  await shot(page, 'payment-1280');
  await expectAccessible(page);

  // Without a reason nothing is sent; the problem leads to its field.
  await sendForm(page);
  await page.locator('.summary li').first().waitFor();
  expect(await page.locator('.summary li').count()).toBe(2);
  await page.locator('.summary li button').first().click();
  await page.waitForFunction(() => document.activeElement?.matches('.allocated select'));
  await row(0).getByLabel('Reason').selectOption({ label: 'Hours' });
  await row(1).getByLabel('Reason').selectOption({ label: 'Crew size' });
  await row(1).getByLabel('In the payer’s words').fill('One worker would do');

  await page.reload();
  expect(await row(1).getByLabel('In the payer’s words').inputValue()).toBe('One worker would do');
  await sendForm(page);
  await page.getByRole('alertdialog').waitFor();
  await expectAccessible(page);
  // The hold has the focus: whoever goes on without reading does the careful thing.
  await page.keyboard.press('Enter');
  expect(await page.getByLabel('Held, not deposited yet').isChecked()).toBe(true);
  await sendAndConfirm(page);
  await backToClaim('Acknowledged');
  expect(await money('In the drawer, not deposited').textContent()).toBe(dollars(paidCents));
  expect(await money('Still owed').textContent()).toBe('$1,374.39');
  await page.locator('.warning', { hasText: 'A payment came marked as full' }).waitFor();
  await shot(page, 'claim-held-1280');
});

test('counsel has looked: the record is corrected, and what is left is the cuts', async () => {
  await page
    .locator('.story-item', { hasText: 'Payment received' })
    .getByRole('link', { name: /^Correct/ })
    .click();
  await page.getByLabel(/^Reason \(needed\)/).fill('Counsel: the letter with it says part payment');
  await page.getByLabel('As a part payment').check();
  await page.getByLabel('Deposited', { exact: true }).check();
  await sendAndConfirm(page);
  await backToClaim('Part paid');
  // A payment that counts already is not measured against the balance that it left.
  await page
    .locator('.story-item', { hasText: 'Correction: Payment received' })
    .getByRole('link', { name: /^Correct/ })
    .click();
  await page.locator('.send-bar').waitFor();
  expect(await page.locator('.cautions').count()).toBe(0);
  await page.goBack();
  await page.locator('.standing strong', { hasText: 'Part paid' }).waitFor();
  const second = statement.lines[1]!.amountCents!;
  expect(await money('Still owed').textContent()).toBe(dollars(5_000 + second));
  expect(await money('Cut by the payer so far').textContent()).toBe(dollars(5_000 + second));
  const cuts = (await page.locator('.life .figure-table').textContent()) ?? '';
  for (const part of ['One worker would do', 'Crew size', 'Hours']) expect(cuts).toContain(part);
  await expectAccessible(page);
  await shot(page, 'claim-short-1280');
});

test('the cuts are answered; then a bill comes late: a second revision, its letter, and its demand', async () => {
  await page.locator('#life .actions').getByRole('link', { name: 'Record our answer' }).click();
  await page.getByRole('radiogroup', { name: /^What it answers/ }).waitFor();
  await page.getByLabel('The lines stand').check();
  await page.getByLabel(/^Reason/).fill('Both were at the kerb all morning');
  await sendAndConfirm(page);
  await backToClaim('Part paid');
  // Answered, it is not offered first any more. (The screen shows what it had until it has read anew.)
  const next = page.locator('#life .actions').getByRole('link').first();
  await expect.poll(() => next.textContent()).toBe('Record a payment');

  const teller = new Teller(new Date(), 23);
  teller.tell('repair', { type: 'strike', strikeId: claim.strikeId }, 0.01, {
    hydrantId: null,
    damage: null,
    crew: [],
    machines: [],
    parts: [],
    contractors: [
      {
        contractor: 'Lockmere Paving',
        work: 'Sidewalk square put back',
        invoiceNumber: 'LP-3107',
        invoicedOn: teller.dayAgo(0),
        amountCents: lateCents,
        invoiceSha256: null,
      },
    ],
    steps: [],
    reassembledAt: null,
    completedAt: null,
    photos: [],
    note: null,
  });
  await server.ask('crew', '/api/submissions', teller.told[0]!.submission);
  await expect
    .poll(
      async () => (await server.ask<Statement>('clerk', `/api/claims/${claim.claimId}/statement`)).totalCents,
      { timeout: 20_000 },
    )
    .toBe(statement.totalCents + lateCents);
  await openClaim();
  await page.getByRole('button', { name: 'Issue the packet' }).click();
  await page
    .getByLabel('What changed since revision 1, and why')
    .fill('The paving company billed after the demand');
  await page.getByRole('button', { name: 'Issue the packet' }).click();
  await page.getByRole('button', { name: 'Issue it now' }).click();
  await page.getByText('Revision 2 is issued.').waitFor({ timeout: 60_000 });

  // Its letter is drafted before the demand is recorded, and speaks of the revision that goes with it.
  await openClaim();
  await page.getByLabel('Kind of letter').selectOption({ label: 'Supplement' });
  const preview = page.locator('#letters .letter-preview');
  const askedCents = claim.money.askedCents + lateCents;
  await expect.poll(() => preview.textContent()).toContain(`Our demand is now ${dollars(askedCents)}`);
  expect(await preview.textContent()).toContain(`They are ${dollars(lateCents)} more than we asked before.`);

  await expect.poll(() => next.textContent()).toBe('Record a demand sent');
  await next.click();
  await page.getByRole('heading', { level: 1, name: 'Record a demand sent' }).waitFor();
  expect(await page.getByLabel(/revision/i).inputValue()).toBe('2');
  expect(await page.getByLabel(/^Amount/).inputValue()).toBe((askedCents / 100).toFixed(2));
  expect(await page.getByLabel('A supplement').isChecked()).toBe(true);
  await page.getByLabel('Email', { exact: true }).check();
  await sendAndConfirm(page);
  await backToClaim('Part paid');
  await expect
    .poll(() => money('Still owed').textContent())
    .toBe(dollars(5_000 + statement.lines[1]!.amountCents! + lateCents));
  expect((await now()).life).toMatchObject({
    firstDemand: { amountCents: claim.money.askedCents },
    supplements: [{ revision: 2, amountCents: askedCents }],
  });
  await shot(page, 'claim-supplement-1280');
});

test('a date is answered by name; letting it go is cautioned', async () => {
  const row = page.locator('.deadlines > li', { hasText: 'Last day to sue' });
  await row.getByRole('link', { name: 'Answer a deadline' }).click();
  const which = page.getByRole('radiogroup', { name: /^Deadline/ });
  await which.getByText('Last day to sue').waitFor();
  expect(await which.getByRole('radio', { checked: true }).count()).toBe(1);
  expect(await page.getByLabel('Put off or tolled until').count()).toBe(0);
  await page.getByLabel('Let go', { exact: true }).check();
  await page.locator('.cautions', { hasText: 'nobody may sue' }).waitFor();
  await page.getByLabel('Tolled by agreement').check();
  await page.locator('.cautions', { hasText: 'only to a later day' }).waitFor();
  await page.getByLabel('Put off or tolled until').fill('2032-06-30');
  await page.locator('.cautions').waitFor({ state: 'detached' });
  await page.getByLabel(/^Reason/).fill('Tolling agreement signed by both');
  await sendAndConfirm(page);
  await backToClaim('Part paid');
  await page
    .locator('.deadlines > li', { hasText: 'Last day to sue' })
    .getByText('Jun 30, 2032')
    .first()
    .waitFor();
});

test('the rest is paid, and the claim is closed; what is left is to open it again', async () => {
  const rest = 5_000 + statement.lines[1]!.amountCents! + lateCents;
  await page.locator('#life .actions').getByRole('link', { name: 'Record a payment' }).click();
  expect(await page.getByLabel(/^Amount \(needed\)/).inputValue()).toBe((rest / 100).toFixed(2));
  await page.getByLabel('Transfer', { exact: true }).check();
  await page.getByLabel('Not marked').check();
  await page.getByLabel('Deposited', { exact: true }).check();
  expect(await page.getByLabel('The whole amount, not said for which lines').isChecked()).toBe(true);
  await sendAndConfirm(page);
  await backToClaim('Paid');
  expect(await money('Still owed').textContent()).toBe('$0.00');

  await page.locator('#life .actions').getByRole('link', { name: 'Close the claim' }).click();
  expect(await page.getByLabel('Paid', { exact: true }).isChecked()).toBe(true);
  await page.getByLabel(/^In a sentence/).fill('Paid in two parts');
  await sendAndConfirm(page);
  await backToClaim('Closed');
  expect(await page.locator('#life .actions').getByRole('link').allTextContents()).toEqual([
    'Reopen the claim',
  ]);
  expect(await now()).toMatchObject({
    life: { standing: 'closed', closed: true },
    money: {
      askedCents: 137_439 + lateCents,
      paidCents: 137_439 + lateCents,
      balanceCents: 0,
      overpaidCents: 0,
    },
  });
  await shot(page, 'claim-closed-1280');
});

test('every form of a claim’s life reads in Spanish, dark, on a phone', { timeout: 120_000 }, async () => {
  const { claimId } = await claimNumbered('2026-0014');
  const phone = await signIn('clerk', {
    viewport: { width: 360, height: 740 },
    colorScheme: 'dark',
  });
  await phone.page.evaluate(() => localStorage.setItem('hsl.locale', '"es"'));
  await goTo(phone.page, server, `/desk/#/claim/${claimId}`);
  await phone.page.locator('#life .story').waitFor();
  await expectNoSideScroll(phone.page);
  await expectAccessible(phone.page);
  await shot(phone.page, 'claim-360-es');
  for (const kind of [...lifeKinds, 'deadline-answered']) {
    await goTo(
      phone.page,
      server,
      `/desk/#/new/${kind}?claim=${claimId}&deadline=limitation&dueOn=2029-11-08`,
    );
    await phone.page.locator('.send-bar').waitFor();
    if (kind === 'payment-received') await phone.page.getByLabel(/^Renglón por renglón/).check();
    await expectNoSideScroll(phone.page);
    await expectAccessible(phone.page);
    await expectEveryWord(phone.page);
    await shot(phone.page, `${kind}-360-es`);
  }
  await phone.close();
});
