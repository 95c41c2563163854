import type { BrowserContextOptions } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { AnsweredObjection } from '../../shared/audit/objections.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendForm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { dollars } from '../support/records.ts';

/** The desk for money: what an insurer would say, what a line stands on, and the rate book. */
const { server, signIn } = appTest(ports.deskMoney, { load: 'town' });
let claim: ClaimState;

beforeAll(async () => {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ claimNumber }) => /-0001$/.test(claimNumber))!;
}, 180_000);

const signed = (role: 'clerk' | 'manager', options: BrowserContextOptions = {}): Promise<Looking> =>
  signIn(role, options);

const objectionsNow = async (): Promise<AnsweredObjection[]> =>
  (await server.ask<{ objections: AnsweredObjection[] }>('clerk', `/api/claims/${claim.claimId}/objections`))
    .objections;

describe('the objections of a claim', () => {
  test('stand ranked by money; one is answered by name, and the answer stands', async () => {
    const { page } = await signed('clerk');
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    const panel = page.locator('#objections');
    await panel.locator('.objections > li').first().waitFor();
    const known = await objectionsNow();
    const stakes = known.map(({ atStakeCents }) => atStakeCents);
    expect(stakes).toEqual([...stakes].sort((a, b) => b - a));
    const shown = await panel.locator('.at-stake').allTextContents();
    expect(shown).toEqual(
      known
        .filter(({ answered }) => answered === null)
        .map(({ atStakeCents }) =>
          atStakeCents === 0 ? 'no amount of its own' : `${dollars(atStakeCents)} at stake`,
        ),
    );
    await shot(page, 'claim-1280');
    await expectAccessible(page);

    const first = panel.locator('.objections > li').first();
    const openBefore = shown.length;
    await first.getByRole('button', { name: 'Answer it' }).click();
    await first.getByText('It stands in your name', { exact: false }).waitFor();
    // An answer without a choice and a reason is none.
    await sendForm(page);
    await first.locator('.error').first().waitFor();
    await first.getByText('Overruled: it is sent all the same', { exact: true }).click();
    await first.getByLabel(/^Reason/).fill('Counsel looked at it');
    await page.reload();
    // Kept as typed.
    expect(await first.getByLabel(/^Reason/).inputValue()).toBe('Counsel looked at it');
    await sendForm(page);
    await first.locator('.objection-answer').getByText('Counsel looked at it').waitFor();
    const answered = (await objectionsNow()).find((each) => each.answered !== null)?.answered;
    expect(answered).toMatchObject({ answer: 'overruled', reason: 'Counsel looked at it' });
    await panel.getByRole('button', { name: `Open (${openBefore - 1})` }).waitFor();
    await panel.getByRole('button', { name: 'Answered (1)' }).click();
    expect(await panel.locator('.objections > li').count()).toBe(1);
  });

  test('lead to the line that they are about, and the line says why', async () => {
    const { page } = await signed('clerk');
    const statement = await server.ask<Statement>('clerk', `/api/claims/${claim.claimId}/statement`);
    const labor = statement.lines.find(({ section }) => section === 'labor')!;
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    const about = (await objectionsNow()).find(
      ({ lineId, answered }) => lineId !== null && answered === null,
    )!;
    await page
      .locator('#objections')
      .getByRole('button', { name: /^See the line/ })
      .first()
      .click();
    await page.locator(`#line-${about.lineId} .why`).waitFor();
    await page.waitForFunction(
      (id) => document.activeElement?.parentElement?.id === id,
      `line-${about.lineId}`,
    );

    const line = page.locator(`#line-${labor.lineId}`);
    await line.locator('summary').click();
    const why = line.locator('.why');
    const said = (await why.textContent()) ?? '';
    for (const part of [labor.arithmetic, labor.authority!.title, labor.editionId!, `$${labor.rateUsd}`])
      expect(said).toContain(part);
    // From the submission itself, one click away.
    expect(await why.getByRole('link').count()).toBeGreaterThan(1);
    await why.getByRole('link', { name: labor.editionId!, exact: true }).click();
    await page.getByText('An edition on record never changes', { exact: false }).waitFor();
  });
});

describe('the rate book', () => {
  test('is read by clerks, who are offered no editing', async () => {
    const { page } = await signed('clerk');
    await goTo(page, server, '/desk/');
    await page.getByRole('link', { name: 'Rate book', exact: true }).click();
    await page.getByText('In force today').waitFor();
    expect(await page.getByRole('link', { name: /^New edition/ }).count()).toBe(0);
    await goTo(page, server, '/desk/#/rates/2025');
    await page.getByRole('cell', { name: '$38.4150' }).waitFor();
    expect(await page.getByRole('link', { name: /^New edition/ }).count()).toBe(0);
    await expectAccessible(page);
  });
});

test('finance takes the ledger over as a file', async () => {
  const { page } = await signed('clerk');
  await goTo(page, server, '/desk/#/figures');
  await page.getByLabel('From', { exact: true }).fill('2026-06-30');
  await page.getByLabel('To', { exact: true }).fill('2026-06-01');
  await page.getByRole('button', { name: 'Download the ledger (CSV)' }).click();
  await page.getByText('The last day must not be before the first', { exact: false }).waitFor();
  await page.getByLabel('From', { exact: true }).fill('');
  await page.getByLabel('To', { exact: true }).fill('');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download the ledger (CSV)' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('ledger.csv');
  const chunks: Buffer[] = [];
  for await (const chunk of (await file.createReadStream()) as AsyncIterable<Buffer>) chunks.push(chunk);
  const [head, ...lines] = Buffer.concat(chunks).toString('utf8').trim().split(/\r?\n/);
  expect(head).toContain('debit');
  expect(lines.length).toBeGreaterThan(10);
  await expectAccessible(page);
});

test('claim and rate book fit a phone', async () => {
  const { page } = await signed('clerk', {
    viewport: { width: 360, height: 740 },
  });
  for (const [path, name] of [
    [`/desk/#/claim/${claim.claimId}`, 'claim-360'],
    ['/desk/#/rates', 'rates-360'],
  ] as const) {
    await goTo(page, server, path);
    await page.waitForLoadState('networkidle');
    await expectNoSideScroll(page);
    await shot(page, name);
  }
});
