import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import {
  expectAccessible,
  expectEveryWord,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, refusal } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** A new edition of the demo utility's rate book: refusals, doubts, its preview to the cent, a schedule taken into it. */
const { server, signIn, signInForAll, tolerate } = appTest(ports.rates, { load: 'town' });
let manager: Looking;
let page: Page;

beforeAll(async () => {
  manager = await signInForAll('manager');
  ({ page } = manager);
}, 180_000);

const editions = async (): Promise<readonly RateBookEdition[]> =>
  (await server.ask<{ editions: RateBookEdition[] }>('manager', '/api/rate-books')).editions;
const field = (name: string) => page.getByLabel(name, { exact: true });
/** The row of a folded list. */
const row = (text: string) => page.locator('.folded > details', { hasText: text }).first();

test('a new edition starts as a copy; an id on record is refused at its field, and days are doubted', async () => {
  tolerate(refusal);
  await goTo(page, server, '/desk/#/rates/2025');
  await page.getByRole('link', { name: 'New edition from this one' }).click();
  await page.getByRole('heading', { level: 1, name: 'New edition of the rate book' }).waitFor();
  await field('Edition id (needed)').fill('2027');
  await field('In force from (needed)').fill('2025-07-01');
  await page.getByText('The edition 2025 starts on Jul 1, 2025 as well.', { exact: false }).waitFor();
  await page.getByText('in the past: bills not yet issued', { exact: false }).waitFor();
  await field('Edition id (needed)').fill('2025');
  await page.getByText('The edition "2025" is on record already', { exact: false }).first().waitFor();
  await field('In force from (needed)').fill('2027-01-01');
  // A title of its own, and what an older edition did not say, are asked for; nothing else is.
  await sendForm(page);
  const summary = page.locator('.summary:has(#summary-title)');
  await summary.waitFor();
  expect(await summary.getByRole('listitem').allTextContents()).toEqual([
    expect.stringMatching(/^Title: /),
    expect.stringMatching(/^What that price is: /),
  ]);
  await page.getByText('what a tariff says').click();
  await page.getByLabel('Title (needed)').first().fill('Rate book 2027');
  await sendForm(page);
  const id = page.locator('.field', { has: field('Edition id (needed)') });
  await id.locator('.error').waitFor();
  expect(await id.locator('.error').textContent()).toContain('an edition is never changed');
  await expectAccessible(page);
});

test('the preview shows what it makes of a past strike, line by line, to the cent', async () => {
  await field('Edition id (needed)').fill('2027');
  await field('In force from (needed)').fill('2027-07-01');
  await row('crew-lead').locator('summary').click();
  const rate = row('crew-lead').getByLabel('Dollars for an hour (needed)');
  await rate.fill('$40');
  await page.getByText('The preview comes when one thing is put right', { exact: false }).waitFor();
  await rate.fill('48.4150');
  const strike = page.getByLabel('A past strike');
  const option = await strike.locator('option', { hasText: 'TH-0138' }).getAttribute('value');
  await strike.selectOption(option);
  // Ten dollars more for 3 h 30 min at 1.3940: 10 × 3.5 × 1.394 = 48.79.
  await page.getByText(/with this edition: \$48\.79 more/).waitFor();
  const lead = page.locator('.compare tr', { hasText: 'Crew lead' });
  expect(await lead.locator('td').allTextContents()).toEqual(['$187.43', '$236.22', '+$48.79']);
  expect(await page.locator('.compare tr.changed').count()).toBe(1);
  await expectAccessible(page);
});

test('a schedule is loaded from a file: doubts are shown, what is chosen is taken, a reload keeps it', async () => {
  const csv = [
    'Code,Equipment,Capacity,HP,Notes,Unit,Rate',
    '7001,"Saw, Chop",14 In,to 14,Blade included.,hour,12.69',
    '7001.1,"Saw, Chop",18 In,to 30,,Hour,9.10',
    '7002,Crane,"19,000 LBS",to 240,,hour,"1,048.09"',
    '7003,Pump,,,,,8.00',
    '7004,Car,,,,mile,0.70',
  ].join('\r\n');
  await page.getByLabel('Schedule (CSV)').setInputFiles({
    name: 'schedule.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(csv),
  });
  await page.getByText('schedule.csv: 3 clean, 1 doubtful, 1 cannot be taken').waitFor();
  await page.getByText('$9.10 is less than the $12.69 of 7001, which is smaller.').waitFor();
  await page.getByText('The unit is blank.', { exact: false }).waitFor();
  expect(await page.getByRole('checkbox', { name: /^Take 7003/ }).isDisabled()).toBe(true);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Choose all clean ones shown' }).click();
  await page.getByRole('checkbox', { name: /^Take 7004/ }).uncheck();
  await page.getByRole('button', { name: 'Take 2 machines' }).click();
  // Nothing is taken without the paper that it stands on.
  await page.getByText('Choose the authority that these rates stand on.').waitFor();
  await page.getByLabel('The schedule’s authority').selectOption('machines');
  await page.getByRole('button', { name: 'Take 2 machines' }).click();
  await page.getByText('2 machines were taken into the list above.').waitFor();
  await page.reload();
  await row('7002').waitFor();
  expect(await row('7002').textContent()).toContain('Crane, 19,000 LBS, to 240 HP · 1048.09');
  expect(await field('Edition id (needed)').inputValue()).toBe('2027');
});

test('saved it is an edition of its own, to come, and the past ones are as they were', async () => {
  const before = await editions();
  await sendAndConfirm(page);
  const after = await editions();
  expect(after).toHaveLength(before.length + 1);
  expect(after.filter(({ editionId }) => editionId !== '2027')).toEqual(before);
  const saved = after.find(({ editionId }) => editionId === '2027');
  expect(saved?.labor.find(({ laborClass }) => laborClass === 'crew-lead')?.hourlyUsd).toBe('48.4150');
  expect(saved?.machines.find(({ machineCode }) => machineCode === '7002')).toEqual({
    machineCode: '7002',
    title: 'Crane, 19,000 LBS, to 240 HP',
    unit: 'hour',
    rateUsd: '1048.09',
    standbyUsd: null,
    schedule: { code: '7002', size: '19,000 LBS, to 240 HP' },
    includes: ['fuel', 'overhead'],
    authorityId: 'machines',
  });
  await goTo(page, server, '/desk/#/rates');
  await page.locator('.card', { hasText: '2027' }).getByText('To come').waitFor();
});

test('the editor fits a phone in Spanish, and has a word for everything', async () => {
  const phone = await signIn('manager', { viewport: { width: 360, height: 740 } });
  await phone.page.evaluate(() => localStorage.setItem('hsl.locale', '"es"'));
  for (const path of ['/desk/#/rates', '/desk/#/rates/2025', '/desk/#/rates/2025/new']) {
    await goTo(phone.page, server, path);
    await phone.page.waitForLoadState('networkidle');
    if (path.endsWith('/new'))
      for (const add of [
        'Añadir reglas de pago',
        'Añadir una parte',
        'Añadir un precio fijo',
        'Añadir una máquina',
      ])
        await phone.page.getByRole('button', { name: add }).click();
    await expectAccessible(phone.page);
    await expectNoSideScroll(phone.page);
    await expectEveryWord(phone.page);
  }
  await phone.close();
});

test('an edition is withdrawn by name with a reason, after saying whom it touches; it stays to be read', async () => {
  await goTo(page, server, '/desk/#/rates/2025');
  await page.getByRole('button', { name: 'Withdraw this edition' }).click();
  const form = page.getByRole('form', { name: 'Withdraw this edition' });
  await form.getByText('take rates from it and change', { exact: false }).waitFor();
  // Every claim that the demo has open is of a strike in its days, and 2027 is no help to them.
  const said = await form.getByRole('listitem').allTextContents();
  const { claims } = await server.ask<{ claims: ClaimState[] }>('manager', '/api/claims');
  for (const { claimNumber, life } of claims)
    expect(said.some((line) => line.includes(claimNumber))).toBe(!life.closed);
  await expectAccessible(page);
  await expectNoSideScroll(page);

  await form.getByRole('button', { name: 'Withdraw it' }).click();
  await form.getByText('Say why', { exact: false }).waitFor();
  await form.getByLabel('Why it is withdrawn (needed)').fill('Typed from the draft of the resolution');
  // What is typed is there after a reload.
  await page.reload();
  await form.waitFor();
  expect(await form.getByLabel('Why it is withdrawn (needed)').inputValue()).toBe(
    'Typed from the draft of the resolution',
  );
  await form.getByRole('button', { name: 'Withdraw it' }).click();
  await page.getByText('Typed from the draft of the resolution', { exact: false }).waitFor();
  await page.getByText('Packets that were issued by it keep its figures.', { exact: false }).waitFor();
  expect(await page.getByRole('button', { name: 'Withdraw this edition' }).count()).toBe(0);
  expect(await page.getByRole('link', { name: 'New edition from this one' }).count()).toBe(0);
  expect((await editions()).map(({ editionId }) => editionId)).not.toContain('2025');
  await goTo(page, server, '/desk/#/rates');
  await page.getByRole('heading', { name: 'Withdrawn editions' }).waitFor();
  await expectAccessible(page);
});
