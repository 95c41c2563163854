import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { AnsweredObjection } from '../../shared/audit/objections.ts';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import {
  appServer,
  expectAccessible,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
  sendForm,
  signedIn,
  type AppServer,
  type Looking,
} from '../support/app.ts';
import { launchBrowser } from '../support/browser.ts';

/** The desk for money: what an insurer would say, what a line stands on, and the rate book. */
let browser: Browser;
let server: AppServer;
let claim: ClaimState;
let open: Looking[] = [];

beforeAll(async () => {
  [server, browser] = await Promise.all([appServer(47401, 'town'), launchBrowser()]);
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ claimNumber }) => /-0001$/.test(claimNumber))!;
}, 180_000);
afterEach(async () => {
  for (const each of open) await each.close();
  open = [];
});
afterAll(async () => {
  await browser.close();
  await server.end();
});

const signed = async (role: 'clerk' | 'manager', options: BrowserContextOptions = {}): Promise<Looking> => {
  const looking = await signedIn(browser, server, role, options);
  open.push(looking);
  return looking;
};

/** Where pictures of the screens are kept, when somebody wants to look. */
const shots = process.env['SHOTS'];
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots !== undefined) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const dollars = (cents: number): string =>
  `$${(cents / 100).toFixed(2).replaceAll(/\B(?=(\d{3})+\.)/g, ',')}`;
const objectionsNow = async (): Promise<AnsweredObjection[]> =>
  (await server.ask<{ objections: AnsweredObjection[] }>('clerk', `/api/claims/${claim.claimId}/objections`))
    .objections;
const editionsNow = async (): Promise<RateBookEdition[]> =>
  (await server.ask<{ editions: RateBookEdition[] }>('clerk', '/api/rate-books')).editions;

describe('the objections of a claim', () => {
  test('stand ranked by money; one is answered by name, and the answer stands', async () => {
    const { page, faults } = await signed('clerk');
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
    expect(faults).toEqual([]);
  });

  test('lead to the line that they are about, and the line says why', async () => {
    const { page, faults } = await signed('clerk');
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
    expect(faults).toEqual([]);
  });
});

describe('the rate book', () => {
  test('is read by clerks and edited by managers', async () => {
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

  test('gets a new edition from an old one: previewed on a past strike, with machines of a schedule, saved', async () => {
    const { page, faults } = await signed('manager');
    const before = await editionsNow();
    await goTo(page, server, '/desk/#/rates');
    await shot(page, 'rates-1280');
    await page.getByRole('link', { name: 'New edition from the newest' }).click();
    await page.getByLabel(/^Edition id/).fill('2025');
    await page.getByText('The edition "2025" is on record already', { exact: false }).waitFor();
    await page.getByLabel(/^Edition id/).fill('next');
    await page.getByLabel('Title (needed)').first().fill('Rates of next year');

    // A dollar more for the truck's hour is seen in the bill of a strike of the past, by so many dollars as it ran hours.
    await page.getByText('TRK-1 · Service truck, 1 ton', { exact: false }).click();
    await page
      .getByRole('group', { name: 'Machine 1' })
      .getByLabel(/^Dollars \(needed\)/)
      .fill('30.25');
    // Older editions do not say what their price of water is: the preview says that something is lacking, and what.
    await page.getByText('The preview comes when one thing is put right:').waitFor();
    await page.getByRole('button', { name: /^What that price is: / }).waitFor();
    await page.getByText('what a tariff says', { exact: true }).click();
    const compared = page.locator('table.compare');

    await compared.locator('tr.changed').first().waitFor();
    expect(await page.getByLabel('A past strike').locator('option').count()).toBeGreaterThan(0);
    const [truck] = await compared.locator('tr.changed', { hasText: 'Service truck' }).allTextContents();
    const hours = Number(/([\d.]+) h/.exec(truck ?? '')?.[1]);
    expect(hours).toBeGreaterThan(0);
    expect(truck).toContain(`+$${hours.toFixed(2)}`);

    await page.getByLabel('Schedule (CSV)').setInputFiles({
      name: 'schedule.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(
        [
          'code,equipment,size,hp,unit,rate',
          '8701.1,"Truck, dump",12 CY,to 300,Hour,"1,063.25"',
          '8010,Compressor,130 CFM,to 50,hour,27.71',
          '8011,Compressor,175 CFM,to 90,hour,26.29',
          '8012,Pump,,,,5.00',
        ].join('\n'),
      ),
    });
    await page.getByText('schedule.csv: 2 clean, 1 doubtful, 1 cannot be taken').waitFor();
    await page.getByRole('button', { name: 'Choose all clean ones shown' }).click();
    await page.getByLabel('The schedule’s authority').selectOption('machines');
    await page.getByRole('button', { name: 'Take 2 machines' }).click();
    await page.getByText('2 machines were taken', { exact: false }).waitFor();
    await expectAccessible(page);
    await shot(page, 'new-edition-1280');
    await page.setViewportSize({ width: 360, height: 740 });
    await expectNoSideScroll(page);
    await shot(page, 'new-edition-360');
    await sendAndConfirm(page);

    const after = await editionsNow();
    expect(after).toHaveLength(before.length + 1);
    // The old editions are as they were.
    for (const old of before) expect(after).toContainEqual(old);
    const made = after.find(({ editionId }) => editionId === 'next')!;
    expect(made.machines.find(({ machineCode }) => machineCode === 'TRK-1')?.rateUsd).toBe('30.25');
    expect(made.machines.find(({ machineCode }) => machineCode === '8701.1')).toMatchObject({
      title: 'Truck, dump, 12 CY, to 300 HP',
      rateUsd: '1063.25',
      includes: ['fuel', 'overhead'],
    });
    await goTo(page, server, '/desk/#/rates/next');
    await page.getByRole('cell', { name: '$1063.25', exact: false }).waitFor();
    await expectNoSideScroll(page);
    await shot(page, 'edition-360');
    expect(faults).toEqual([]);
  });
});

test('claim and rate book fit a phone', async () => {
  const { page, faults } = await signed('clerk', {
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
  expect(faults).toEqual([]);
});
