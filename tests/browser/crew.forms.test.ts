import type { BrowserContextOptions } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import {
  expectAccessible,
  expectEveryWord,
  expectNoSideScroll,
  expectTouchable,
  goTo,
  minutesAgo,
  pickHydrant,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf, historyOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

const { server, signIn, tolerate } = appTest(ports.forms);
/** A strike that the forms are about. */
let strikeId = '';

beforeAll(async () => {
  strikeId = await reportStrike(signIn, server, 'T-101');
}, 180_000);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const latest = async <K extends 'flow-test' | 'return-to-service' | 'repair'>(kind: K): Promise<BodyOf<K>> =>
  (await bodiesOf(server, strikeId, kind)).at(-1)!;
const onStrike = (kind: string): string => `/crew/#/new/${kind}?strike=${strikeId}&hydrant=T-101`;

describe('problems', () => {
  test('all come at once, each beside its field, and the summary leads there', async () => {
    const { page } = await crew();
    await goTo(page, server, onStrike('repair'));
    await page.getByLabel('Labor class').waitFor();
    await page.getByRole('button', { name: 'Add a part' }).click();
    await page.getByLabel('How many').fill('two');
    await page.getByLabel('Repair finished at').fill('2026-03-04T10:00');
    await sendForm(page);

    const summary = page.getByRole('group', { name: /things to put right/ });
    await summary.waitFor();
    // The eye and the screen reader are where the problems are.
    expect(await summary.evaluate((element) => element === document.activeElement)).toBe(true);
    const lines = await summary.getByRole('listitem').allTextContents();
    expect(lines).toEqual(
      expect.arrayContaining([
        'Person 1 · Labor class: Fill this in.',
        'Person 1 · Stretch 1 · From: Give the date and time.',
        'Person 1 · Stretch 1 · To: No end yet: stop it, or give the date and time.',
        'Part 1 · Part number: Fill this in.',
        'Part 1 · What it is: Fill this in.',
        'Part 1 · How many: Write a number, like 42 or 2.5. Use a point for decimals.',
      ]),
    );
    await expectAccessible(page);

    await summary.getByRole('button', { name: 'Part 1 · How many' }).click();
    const field = page.getByLabel('How many');
    expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    const described = (await field.getAttribute('aria-describedby')) ?? '';
    expect(await page.locator(`[id="${described}"]`).textContent()).toContain('Write a number');

    // A problem goes as it is put right, and no sooner.
    await field.fill('2');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    expect(await summary.getByRole('listitem').count()).toBe(lines.length - 1);
  });

  test('in a folded section open it', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await page.getByRole('heading', { name: 'Which hydrant' }).waitFor();
    await page.getByText('Not in the list? Say where it stands').click();
    await page.getByLabel('Latitude').fill('north');
    await page.getByLabel('Longitude').fill('-60.4');
    await page.getByText('Not in the list? Say where it stands').click();
    await sendForm(page);
    await page.getByRole('button', { name: /Your position: Write a number/ }).click();
    expect(await page.getByLabel('Latitude').isVisible()).toBe(true);
    expect(await page.getByLabel('Latitude').getAttribute('aria-invalid')).toBe('true');
  });

  test('a time in the hour that comes twice is asked for, and the answer is kept', async () => {
    const { page } = await crew();
    await goTo(page, server, onStrike('out-of-service-notice'));
    // The clocks go back on November 2, 2025 (first Sunday; 15 U.S.C. § 260a, from memory).
    await page.getByLabel('Marked out of service at').fill('2025-11-02T01:30');
    await sendForm(page);
    await page.getByText('The clocks went back: this time came twice.', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: '1:30 AM EST' }).click();
    await sendAndConfirm(page);
    const notice = (await historyOf(server, strikeId)).findLast(
      ({ recorded }) => recorded.submission.kind === 'out-of-service-notice',
    );
    expect(notice?.recorded.submission.body).toMatchObject({
      markedOutOfServiceAt: '2025-11-02T06:30:00.000Z',
    });
  });
});

describe('language and units', () => {
  test('are switched on every screen, remembered, and said to the browser', async () => {
    const { page } = await crew();
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('button', { name: 'Métrico' }).click();
    await page.getByRole('heading', { name: 'Hidrantes' }).waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    await page.reload();
    await page.getByRole('link', { name: 'Informar de un choque' }).waitFor();
    expect(await page.title()).toContain('Hidrantes');
    expect(await page.getByRole('button', { name: 'Métrico' }).getAttribute('aria-pressed')).toBe('true');
  });

  test('a flow test in Spanish and metric stores psi and inches', async () => {
    const { page } = await crew({ viewport: { width: 320, height: 640 } });
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('button', { name: 'Métrico' }).click();
    await goTo(page, server, onStrike('flow-test'));
    await page.getByLabel('Presión estática (necesario)').fill('593');
    await page.getByLabel('Presión residual (necesario)').fill('289.6');
    await pickHydrant(page, 'Hidrante que se abrió', 'T-102');
    await page.getByLabel('Ancho interior').fill('63.5');
    await page.getByText('Lisa y redondeada').click();
    await page.getByLabel('Presión de Pitot').fill('193');
    await page.locator('.figures').getByText('L/min').first().waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);

    // Switching back shows what was typed in the other units and changes none of it.
    await page.getByRole('button', { name: 'EE. UU.' }).click();
    expect(await page.getByLabel('Presión estática (necesario)').inputValue()).toBe('86');
    await page.getByRole('button', { name: 'Métrico' }).click();
    expect(await page.getByLabel('Presión estática (necesario)').inputValue()).toBe('593');
    await sendAndConfirm(page);

    // 1 psi = 6.894757 kPa and 1 in = 25.4 mm (NIST SP 811, second-hand): 593 kPa = 86.0074 psi, 193 kPa = 27.9923 psi.
    const body = await latest('flow-test');
    expect(body.staticPsi).toBeCloseTo(593 / 6.894757, 4);
    expect(body.residualPsi).toBeCloseTo(289.6 / 6.894757, 4);
    const outlet = body.flowHydrants[0]?.outlets[0];
    expect(outlet).toMatchObject({ diameterIn: 2.5, kind: 'hose', shape: 'rounded', coefficient: 0.9 });
    expect(outlet && 'pitotPsi' in outlet && outlet.pitotPsi).toBeCloseTo(193 / 6.894757, 4);
    expect(body.targetResidualPsi).toBe(20);
    const units = (await historyOf(server, strikeId))
      .filter(({ recorded }) => recorded.submission.kind === 'flow-test')
      .map(({ recorded }) => recorded.submission.enteredUnits);
    expect(units).toEqual(['metric']);
  });

  test('times are the utility’s, wherever the browser is', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-106');
    const typed = await page.getByLabel('When').inputValue();
    // The browser stands in Los Angeles, the utility in New York.
    expect([minutesAgo(0), minutesAgo(1)]).toContain(typed);
    await page
      .locator('.field', { has: page.getByLabel('When') })
      .getByText(/E[SD]T/)
      .waitFor();
  });
});

describe('safety', () => {
  test('the take-down is not offered again when a hold is taken back, and would stand as a breach', async () => {
    const { page } = await crew();
    await goTo(page, server, onStrike('repair'));
    const step = (name: string) => page.getByRole('listitem').filter({ hasText: name });
    for (const name of [
      'Isolation valve closed',
      'Pressure proved gone',
      'Barrel drained',
      'Parted hardware taken down',
    ])
      await page.getByRole('button', { name: `Done ${name}` }).click();
    await page.getByRole('button', { name: 'Not done Pressure proved gone' }).click();
    await step('Parted hardware taken down')
      .getByText('This would stand as a breach', { exact: false })
      .waitFor();
    await page.getByRole('button', { name: 'Not done Parted hardware taken down' }).click();
    await step('Parted hardware taken down').getByText('Not offered until', { exact: false }).waitFor();
    // Without a name it is not confirmed by name.
    await page.getByRole('button', { name: 'Done Pressure proved gone' }).click();
    // The focus goes on to the button that takes it back, a frame later.
    await page.waitForFunction(() => document.activeElement?.textContent.startsWith('Not done') === true);
    await step('Pressure proved gone').getByText('Change time or name, add a note').click();
    await step('Pressure proved gone').getByLabel('By').fill('');
    await step('Parted hardware taken down').getByText('Not offered until', { exact: false }).waitFor();
  });

  test('a proof put off needs a reason and a name, and the return says what everyone will see', async () => {
    const { page } = await crew();
    await goTo(page, server, onStrike('return-to-service'));
    await page.getByText('No leaks under pressure', { exact: true }).waitFor();
    for (const proof of ['No leaks under pressure', 'Opens and closes fully', 'Barrel drains down'])
      await page.getByRole('group', { name: proof, exact: true }).getByText('Passed').click();
    const flow = page.getByRole('group', { name: 'Flow test', exact: true });
    await flow.getByText('Put off, by name').click();
    await sendForm(page);
    await flow.getByText('Say why this proof is put off.').waitFor();
    await flow.getByText('Say who allowed this proof to be put off.').waitFor();
    await flow.getByLabel('Why it is put off').fill('Main is shut until noon');
    await flow.getByLabel('Allowed by').fill('m-401');
    await page.getByText('Everyone will see that it was not re-tested: Flow test.').waitFor();
  });

  test('a wet barrel is not asked to drain', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike?hydrant=T-106');
    await sendAndConfirm(page);
    await page.getByRole('link', { name: 'What is missing next' }).click();
    await page.getByRole('link', { name: 'Return to service' }).click();
    await page.getByText('No leaks under pressure', { exact: true }).waitFor();
    expect(await page.getByText('Barrel drains down').count()).toBe(0);
  });
});

describe('finding a hydrant', () => {
  test('by what is near, nearest first', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/find');
    await page.getByRole('button', { name: 'Near me' }).click();
    const found = page.locator('.results li');
    await found.first().waitFor();
    // The phone stands 11 m north of T-103 (0.0001° of latitude).
    expect(await found.first().textContent()).toContain('T-103');
    await found.first().getByRole('button').click();
    await page.getByRole('heading', { level: 1, name: 'T-103' }).waitFor();
  });

  test('takes the number as typed when the list cannot be read', async () => {
    tolerate(noSignal);
    // The server is asked about X-9, and there is none.
    tolerate(/status of 404/);
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await page.route('**/api/hydrants?**', (route) => route.abort());
    await page.getByRole('searchbox', { name: 'Hydrant' }).fill('X-9');
    // Whether the hydrants around are on this device by now or not, the number is taken.
    await page
      .getByText(/Type the number as it stands on the hydrant\.|No answer from the server\. None found/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Use “X-9” as typed' }).click();
    await page.getByRole('button', { name: 'Change X-9' }).waitFor();
  });

  test('is not needed: a place in words is enough', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await page.getByText('Not in the list? Say where it stands').click();
    await page.getByRole('button', { name: 'Use my position' }).click();
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('#f-position-latitude')?.value === '40.603100',
    );
    await page.getByLabel('Where it stands, in words').fill('Green hydrant behind the gate');
    await sendAndConfirm(page);
    await page.getByRole('link', { name: 'What is missing next' }).click();
    await page.getByRole('heading', { level: 1, name: 'Strike at Green hydrant behind the gate' }).waitFor();
  });
});

describe('a hydrant that is out', () => {
  test('is shown with the nearest in service, which are said to be in service', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/hydrant/T-101');
    const nearest = page.locator('section', {
      has: page.getByRole('heading', { name: 'Nearest in service' }),
    });
    await nearest.getByRole('link').first().waitFor();
    // 0.001° of latitude is 364.8 ft on the sphere of 6,371 km; the next hydrant stands due north.
    expect(await nearest.getByRole('link').first().textContent()).toMatch(
      /T-102.*36[45] ft north.*In service/,
    );
    expect(await nearest.getByText('Out of service').count()).toBe(0);
  });
});

describe('a routine flow test', () => {
  test('is corrected from its hydrant, and every other reading stays as it was', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/flow-test?hydrant=T-105');
    await page.getByLabel('Static pressure (needed)').fill('86');
    await page.getByLabel('Residual pressure (needed)').fill('42');
    await page.getByText('One meter for all of it').click();
    await page.getByLabel('Metered flow').fill('789.25');
    await page.getByText('Routine', { exact: true }).click();
    await sendAndConfirm(page);

    await goTo(page, server, '/crew/#/hydrant/T-105');
    await page.getByRole('link', { name: /^Correct this/ }).click();
    await page.getByLabel('Reason').fill('Read 44, wrote 42');
    await page.getByLabel('Residual pressure (needed)').fill('44');
    await sendAndConfirm(page);
    const { flowTests } = await server.ask<{ flowTests: { submission: { body: BodyOf<'flow-test'> } }[] }>(
      'crew',
      '/api/hydrants/T-105',
    );
    expect(flowTests).toHaveLength(1);
    expect(flowTests[0]?.submission.body).toMatchObject({
      staticPsi: 86,
      residualPsi: 44,
      measuredFlowGpm: 789.25,
      flowHydrants: [],
    });
  });
});

describe('with the keyboard alone', () => {
  test('a strike is reported', async () => {
    const { page } = await crew();
    await page.getByRole('link', { name: 'Report a strike' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Report a strike' }).waitFor();

    // Tab until something has the focus; a trap or a lost focus ends the test.
    const tabTo = async (wanted: (text: string) => boolean): Promise<void> => {
      for (let step = 0; step < 80; step += 1) {
        await page.keyboard.press('Tab');
        const text = await page.evaluate(() => {
          const at = document.activeElement as HTMLInputElement | null;
          if (!at) return '';
          return [at.id, at.textContent, at.labels?.[0]?.textContent].filter(Boolean).join(' | ');
        });
        if (wanted(text)) return;
      }
      throw new Error('the keyboard never got there');
    };
    await tabTo((text) => text.includes('hydrantId-search'));
    await page.keyboard.type('T-104');
    await page.getByRole('button', { name: /T-104.*Test St/ }).waitFor();
    await tabTo((text) => text.includes('T-104') && text.includes('Test St'));
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change T-104' }).waitFor();
    await tabTo((text) => text.includes('No water'));
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await page.getByLabel('Jet', { exact: true }).isChecked()).toBe(true);
    await tabTo((text) => text.includes('Traffic'));
    await page.keyboard.press('Space');
    await tabTo((text) => text === 'Send');
    // Where the focus is, is seen: the outline is drawn and nothing covers it.
    const seen = await page.evaluate(() => {
      const at = document.activeElement!;
      const box = at.getBoundingClientRect();
      const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
      return { outline: getComputedStyle(at).outlineStyle, onTop: at.contains(top) };
    });
    expect(seen).toEqual({ outline: 'solid', onTop: true });
    await page.keyboard.press('Enter');
    await page.getByText('Recorded.', { exact: true }).waitFor();
    const { strikes } = await server.ask<{ strikes: StrikeState[] }>('crew', '/api/strikes');
    expect(strikes.find(({ hydrantId }) => hydrantId === 'T-104')).toMatchObject({ reported: true });
  });
});

const screens = (): readonly (readonly [string, string])[] => [
  ['home', '/crew/'],
  ['find', '/crew/#/find'],
  ['hydrant', '/crew/#/hydrant/T-101'],
  ['strike', `/crew/#/strike/${strikeId}`],
  ['sheet', '/crew/#/sheet'],
  ['stock', '/crew/#/stock'],
  ['outbox', '/crew/#/outbox'],
  ['not found', '/crew/#/nowhere'],
  ['sign-in', '/sign-in/'],
  ...(
    [
      'strike',
      'out-of-service-notice',
      'valve-operation',
      'water-quality-answer',
      'expected-return',
      'party',
      'repair',
      'flow-test',
      'water-lost',
      'return-to-service',
      'planned-work',
      'link',
      'inspection',
      'outage',
    ] as const
  ).map((kind) => [kind, onStrike(kind)] as const),
];

describe('every screen', () => {
  test.each([
    ['light, English', { colorScheme: 'light' as const }, 'en', 'auto'],
    ['dark, Spanish', { colorScheme: 'dark' as const }, 'es', 'auto'],
    ['in the sun, English', { colorScheme: 'light' as const }, 'en', 'sunlight'],
  ])(
    'passes axe, fits 320 px and a wet glove: %s',
    async (_name, options, locale, look) => {
      const { page } = await crew({ viewport: { width: 320, height: 640 }, ...options });
      await page.evaluate(
        ([language, screen]) => {
          localStorage.setItem('hsl.locale', JSON.stringify(language));
          localStorage.setItem('hsl.look', JSON.stringify(screen));
        },
        [locale, look] as const,
      );
      for (const [name, path] of screens()) {
        await goTo(page, server, path);
        // Forms fill in what is known first.
        await page.waitForFunction(() => !location.hash.startsWith('#/new/'));
        await page.waitForLoadState('networkidle');
        const folded = page.locator('details.form-section:not([open]) > summary');
        while ((await folded.count()) > 0) await folded.first().click();
        await expectAccessible(page).catch((error: unknown) => {
          throw new Error(`${name}: ${String(error)}`);
        });
        await expectNoSideScroll(page).catch((error: unknown) => {
          throw new Error(`${name}: ${String(error)}`);
        });
        await expectTouchable(page).catch((error: unknown) => {
          throw new Error(`${name}: ${String(error)}`);
        });
        await expectEveryWord(page).catch((error: unknown) => {
          throw new Error(`${name}: ${String(error)}`);
        });
      }
    },
    180_000,
  );
});
