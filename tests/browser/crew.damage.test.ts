import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { bareStrike } from '../../infra/local/demo/bodies.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendAndConfirm, sendForm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf } from '../support/records.ts';

/** What the rules make of the damage, and a main that is shut, as a crew and the desk meet them. */
const { server, signIn, tolerate } = appTest(ports.damage);
let made = 0;

/** A UUIDv7 of now; each call another. */
const newId = (): string => {
  made += 1;
  const ms = Date.now().toString(16).padStart(12, '0');
  return `${ms.slice(0, 8)}-${ms.slice(8)}-7000-8000-${made.toString(16).padStart(12, '0')}`;
};
const ago = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

async function tell<K extends FactKind>(strikeId: string, kind: K, body: BodyOf<K>): Promise<string> {
  const submissionId = newId();
  await server.ask('crew', '/api/submissions', {
    schemaVersion: 1,
    submissionId,
    subject: { type: 'strike', strikeId },
    occurredAt: ago(30),
    sentAt: ago(0),
    person: { personId: 'w-101' },
    device: { deviceId: 'tablet-3' },
    enteredUnits: 'us',
    kind,
    body,
  });
  return submissionId;
}

type Found = NonNullable<BodyOf<'strike'>['found']>;
const nothingKnown: Found = {
  flow: 'unknown',
  jetHeightIn: null,
  throwDistanceIn: null,
  openingDiameterIn: null,
  breakawayFlangeParted: 'unknown',
  stemCouplingParted: 'unknown',
  nozzleSection: 'unknown',
  lowerBarrel: 'unknown',
  belowGrade: 'unknown',
  isolationValve: 'not-tried',
  mainValve: 'unknown',
};
const cleanBreak: Found = {
  ...nothingKnown,
  flow: 'none',
  breakawayFlangeParted: 'yes',
  stemCouplingParted: 'yes',
  nozzleSection: 'sound',
  lowerBarrel: 'sound',
  belowGrade: 'no-sign',
  main: 'no-sign',
  mainValve: 'holds',
  barrelStands: 'upright',
  ground: 'firm',
};

async function strike(hydrantId: string, found: Partial<Found>): Promise<string> {
  const strikeId = newId();
  await tell(strikeId, 'strike', { ...bareStrike, hydrantId, found: { ...nothingKnown, ...found } });
  return strikeId;
}

const as = (role: 'crew' | 'manager', options: BrowserContextOptions = {}): Promise<Looking> =>
  signIn(role, options);
const bodies = <K extends FactKind>(strikeId: string, kind: K): Promise<BodyOf<K>[]> =>
  bodiesOf(server, strikeId, kind);
const judgement = (page: Page) => page.locator('.judgement');
const nobodyWorked = async (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Remove Person 1' }).click();

describe('how far the damage goes', () => {
  // First, while no hydrant of the small town is struck.
  test('is not asked of a routine inspection', async () => {
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-104');
    await page.getByText('Sound, with findings').waitFor();
    expect(await page.getByRole('heading', { name: 'Damage by the strike' }).count()).toBe(0);
  });

  test('cannot be told from unknowns: the page says where to look, and nothing is called likely', async () => {
    const strikeId = await strike('T-101', { breakawayFlangeParted: 'yes' });
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await judgement(page).getByText('Cannot tell yet.').waitFor();
    await judgement(page).getByText('Signs so far: Breakaway kit.').waitFor();
    await judgement(page).getByText('whether the barrel stands upright', { exact: false }).waitFor();
    expect(await judgement(page).textContent()).not.toMatch(/Likely|At least/);
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'cannot-tell-360');
  });

  test('is likely a kit once everything below was looked at: reasons, the model’s kit and what makes sure', async () => {
    const strikeId = await strike('T-102', cleanBreak);
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await judgement(page).getByText('Likely: Breakaway kit').waitFor();
    await judgement(page).getByText('It parted where it is made to part', { exact: false }).waitFor();
    await judgement(page).getByText('How the barrel stands: Upright', { exact: false }).first().waitFor();
    // The kit of the demo's invented model.
    await judgement(page).getByText('1 × BW-D51-BK', { exact: false }).waitFor();
    await judgement(page).getByText('The crew decides', { exact: false }).waitFor();
    expect(await judgement(page).textContent()).not.toContain('utility locate');
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'likely-360');
    await page.getByRole('button', { name: 'Español' }).click();
    await judgement(page).getByText('Probable: Kit de rotura').waitFor();
    await expectNoSideScroll(page);
    await shot(page, 'likely-360-es');
  });

  test('in the dark, and at 320 px', async () => {
    const strikeId = await strike('T-103', {
      ...cleanBreak,
      lowerBarrel: 'damaged',
      ground: 'water-rising',
      main: 'suspected',
      isolationValve: 'none-fitted',
    });
    const { page } = await as('crew', { colorScheme: 'dark', viewport: { width: 320, height: 640 } });
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await judgement(page).getByText('At least: Lower barrel').waitFor();
    await judgement(page)
      .getByText('No digging before the utility locate', { exact: false })
      .first()
      .waitFor();
    await judgement(page).getByText('A main must be shut', { exact: false }).first().waitFor();
    // A dark page and folded answers pass too, opened.
    await judgement(page).evaluate((part) => {
      for (const details of part.querySelectorAll('details')) details.open = true;
    });
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'at-least-320-dark');
  });

  test('of a wet barrel says what it has not, and asks for what holds its water', async () => {
    const strikeId = await strike('T-106', { breakawayFlangeParted: 'yes', stemCouplingParted: 'yes' });
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await judgement(page)
      .getByText('A wet barrel has no stem coupling and no main valve', { exact: false })
      .waitFor();
    await judgement(page).getByText('whether the break-off check valve holds', { exact: false }).waitFor();
    await judgement(page).locator('summary').filter({ hasText: 'Breakaway kit' }).click();
    await judgement(page)
      .getByText('A wet barrel has no stem coupling to part: the type on record or this finding is wrong.')
      .waitFor();
    await shot(page, 'wet-360');
  });

  test('stands beside the choice of the repair: taken with a touch, or another one kept as the crew’s own', async () => {
    const strikeId = await strike('T-104', cleanBreak);
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-104`);
    await judgement(page).getByText('Likely: Breakaway kit').waitFor();
    // Why, without opening anything.
    await judgement(page)
      .locator(':scope > ul')
      .getByText('It parted where it is made to part', { exact: false })
      .waitFor();
    await expectAccessible(page);
    await shot(page, 'repair-suggestion-360');
    await page.getByRole('button', { name: 'Take “Breakaway kit”' }).click();
    expect(await page.getByRole('radio', { name: 'Breakaway kit' }).isChecked()).toBe(true);
    await page.getByText('Nozzle section', { exact: true }).first().click();
    await page.getByText('You chose “Nozzle section”. The rules say otherwise', { exact: false }).waitFor();
    await shot(page, 'repair-differs-360');
    await nobodyWorked(page);
    await sendAndConfirm(page);
    expect((await bodies(strikeId, 'repair')).map(({ damage }) => damage)).toEqual(['nozzle-section']);

    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('The crew says: Nozzle section.').waitFor();
    await page.getByText('say otherwise. Both stand here.', { exact: false }).waitFor();
    await judgement(page).getByText('Likely: Breakaway kit').waitFor();
    await judgement(page).getByText('It parted where it is made to part', { exact: false }).waitFor();
    await shot(page, 'crew-differs-360');

    const { page: desk } = await as('manager');
    await goTo(desk, server, `/desk/#/strike/${strikeId}`);
    await desk.getByText('The crew says: Nozzle section.').waitFor();
    await judgement(desk).getByText('Likely: Breakaway kit').waitFor();
    await expectAccessible(desk);
    await shot(desk, 'case-file');
  });

  test('reads what the report’s own form asks', async () => {
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/new/strike?hydrant=T-105');
    await page.getByText('Damage, if you can see it').click();
    const asked = page.getByRole('radiogroup', { name: 'How the barrel stands' });
    await asked.getByText('Leans', { exact: true }).click();
    await page
      .getByRole('radiogroup', { name: 'Ground around it' })
      .getByText('Washed out or sunken')
      .click();
    await expectAccessible(page);
    await shot(page, 'strike-form-360');
    await sendAndConfirm(page);
    await page.getByRole('link', { name: 'What is missing next' }).click();
    await judgement(page).getByText('Signs so far: Below grade; Lower barrel.').waitFor();
  });
});

describe('a main that is shut', () => {
  test('lists who is without water, asks about a notice, and stays missing until somebody answers by name', async () => {
    const strikeId = await strike('T-101', { isolationValve: 'does-not-hold' });
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/new/valve-operation?strike=${strikeId}&hydrant=T-101`);
    await page.getByText('Closed', { exact: true }).click();
    // A hydrant's own valve shuts no main, and is not asked about it.
    expect(await page.getByText('Does this shut a main?').count()).toBe(0);
    await page.getByRole('textbox', { name: /^Valve/ }).fill('MV-7');
    await page.getByText('Main line valve').click();
    const part = page
      .locator('section')
      .filter({ has: page.getByRole('heading', { name: 'The main that is shut' }) });
    await part.getByLabel('Customers without water').fill('14');
    await part.getByLabel('Their addresses').fill('12 to 40 Test St\nSt Brannoc Clinic (dialysis)');
    await part.getByText('Nobody has said whether pressure fell', { exact: false }).waitFor();
    await part.getByLabel('Lowest pressure seen').fill('30');
    await part.getByRole('radiogroup').getByText('Yes', { exact: true }).click();
    await part.getByText('water from outside may have been drawn in', { exact: false }).waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'valve-360');
    await sendForm(page);
    await part.getByText('do not agree. Correct one of them.', { exact: false }).first().waitFor();
    await part.getByLabel('Lowest pressure seen').fill('8');
    await sendAndConfirm(page);
    expect((await bodies(strikeId, 'valve-operation'))[0]?.mainShut).toEqual({
      customers: 14,
      addresses: '12 to 40 Test St\nSt Brannoc Clinic (dialysis)',
      addressLines: 2,
      lowestPsi: 8,
      under20Psi: 'yes',
    });

    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('Whether a water-quality notice is needed is not answered').waitFor();
    await page.getByText('14 connections').waitFor();
    await page.locator('.as-typed', { hasText: 'St Brannoc Clinic (dialysis)' }).waitFor();
    await page.getByText('Not recorded as reopened.').waitFor();
    await expectAccessible(page);
    await shot(page, 'main-shut-360');

    await page.getByRole('link', { name: 'Record the answer' }).first().click();
    await page.getByText('A notice is given (boil water or another)').click();
    await sendForm(page);
    await page.locator('.summary').getByText('Who answered', { exact: false }).first().waitFor();
    await page.getByLabel('Who answered').fill('Imre Castellane-Voss');
    await page.getByLabel('In what position').fill('Water quality supervisor');
    await page.getByRole('textbox', { name: /^Why/ }).fill('Pressure was lost on a block with a clinic.');
    await expectAccessible(page);
    await shot(page, 'answer-360');
    await sendAndConfirm(page);

    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('Imre Castellane-Voss (Water quality supervisor)', { exact: false }).waitFor();
    expect(await page.getByText('Whether a water-quality notice is needed is not answered').count()).toBe(0);
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByText('Tubería principal cerrada').first().waitFor();
    await expectNoSideScroll(page);
    await shot(page, 'main-shut-360-es');
  });

  test('with nobody listed leads to the closing’s own record, which is put right there', async () => {
    const strikeId = await strike('T-102', {});
    await tell(strikeId, 'valve-operation', {
      valveId: 'MV-7',
      valve: 'main-line',
      action: 'closed',
      at: ago(20),
      byWorkerId: 'w-101',
      waterShut: 'yes',
      turns: null,
      note: null,
    });
    const { page } = await as('crew', { colorScheme: 'dark' });
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('A main is shut, and who is without water is not listed').waitFor();
    await shot(page, 'main-shut-unlisted-360-dark');
    await page.getByRole('link', { name: 'List the customers' }).click();
    // A record of before says nothing of it; a touch opens the questions.
    await page
      .getByRole('radiogroup', { name: 'Does this shut a main?' })
      .getByText('Yes', { exact: true })
      .click();
    await page.getByLabel('Customers without water').fill('0');
    await page.getByRole('textbox', { name: /^Reason/ }).fill('Counted on the map');
    await page
      .getByRole('radiogroup', { name: /Did pressure fall/ })
      .getByText('No', { exact: true })
      .click();
    await sendAndConfirm(page);
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('Main shut').first().waitFor();
    await page.getByText('nobody need be asked for that reason', { exact: false }).waitFor();
    expect(await page.getByText('who is without water is not listed').count()).toBe(0);
  });

  test('with no strike stands on the hydrant’s page, asks there, and is told before it is sent', async () => {
    tolerate(noSignal);
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/new/valve-operation?hydrant=T-106');
    await page.getByText('Closed', { exact: true }).click();
    await page.getByRole('textbox', { name: /^Valve/ }).fill('MV-9');
    await page.getByText('Main line valve').click();
    await page.getByLabel('Customers without water').fill('9');
    // No line: it waits on this device, and the page says so all the same.
    await page.route('**/api/submissions', (route) => route.abort());
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await page.goto(`${server.origin}/crew/#/hydrant/T-106`);
    await page.getByRole('heading', { name: 'Main shut' }).waitFor();
    await page.getByText('9 connections').waitFor();
    await page.unroute('**/api/submissions');

    await expect
      .poll(
        async () => (await server.ask<{ mains?: object }>('crew', '/api/hydrants/T-106')).mains !== undefined,
        { timeout: 30_000 },
      )
      .toBe(true);
    await goTo(page, server, '/crew/#/hydrant/T-106');
    await page.getByText('9 connections').waitFor();
    await page.getByRole('heading', { name: 'Is a water-quality notice needed?' }).waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'hydrant-main-shut-360');
    await page.getByRole('link', { name: 'Record the answer' }).click();
    await page.getByText('No notice', { exact: false }).first().click();
    await page.getByLabel('Who answered').fill('Imre Castellane-Voss');
    await page.getByRole('textbox', { name: /^Why/ }).fill('Pressure held at the pump.');
    await sendAndConfirm(page);
    await goTo(page, server, '/crew/#/hydrant/T-106');
    await page.getByText('Imre Castellane-Voss', { exact: false }).waitFor();
    await goTo(page, server, '/crew/#/new/valve-operation?hydrant=T-106');
    await page.getByText('Reopened', { exact: true }).click();
    await page.locator('#f-valveId').fill('MV-9');
    await page.getByText('Main line valve').click();
    await sendAndConfirm(page);
    // Open again and answered: it is folded.
    await goTo(page, server, '/crew/#/hydrant/T-106');
    await page.locator('summary', { hasText: 'Main shut' }).waitFor();
    expect(await page.getByText('9 connections').isVisible()).toBe(false);
  }, 90_000);
});

describe('a later look at a struck hydrant', () => {
  test('says more of the damage on the strike’s page, with its source, also before it is sent', async () => {
    const strikeId = await strike('T-103', { breakawayFlangeParted: 'yes' });
    tolerate(noSignal);
    const { page } = await as('crew');
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await judgement(page).getByText('Cannot tell yet.').waitFor();
    await page.getByRole('link', { name: 'Record a later look (inspection)' }).click();
    await page.getByText('Not usable', { exact: true }).click();
    await page
      .getByRole('radiogroup', { name: /^Lower barrel/ })
      .getByText('Damaged', { exact: true })
      .click();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'inspection-of-a-strike-360');
    await page.route('**/api/submissions', (route) => route.abort());
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    const told = async (): Promise<void> => {
      await judgement(page).getByText('At least: Lower barrel', { exact: false }).waitFor();
      await judgement(page)
        .getByText(/Lower barrel: Damaged.*\(Inspection/)
        .first()
        .waitFor();
    };
    await page.goto(`${server.origin}/crew/#/strike/${strikeId}`);
    await told();
    await page.unroute('**/api/submissions');
    await expect
      .poll(
        async () =>
          (await server.ask<{ ofHydrant: unknown[] }>('crew', `/api/strikes/${strikeId}`)).ofHydrant.length,
        { timeout: 30_000 },
      )
      .toBe(1);
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await told();
    await shot(page, 'judged-by-inspection-360');
  }, 90_000);
});
