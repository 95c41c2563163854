import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendAndConfirm, sendForm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

/** Tightening on the repair form, the rate book's codes, and cautions, as a crew meets them. */
const { server, signIn, tolerate } = appTest(ports.tightening);
let strikeId = '';

beforeAll(async () => {
  strikeId = await reportStrike(signIn, server, 'T-101');
}, 180_000);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const repairs = (): Promise<BodyOf<'repair'>[]> => bodiesOf(server, strikeId, 'repair');
const repairOf = (hydrant: string): string => `/crew/#/new/repair?strike=${strikeId}&hydrant=${hydrant}`;
const joint = (page: Page, name: string) => page.getByRole('group', { name, exact: true });
const nobodyWorked = async (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Remove Person 1' }).click();

describe('tightening', () => {
  test('shows the ring, the passes with their torque, and what the manual says; nothing where it says nothing', async () => {
    const { page } = await crew();
    await goTo(page, server, repairOf('T-101'));
    const flange = joint(page, 'Breakaway flange');
    // The demo's invented model: 72 lbf·ft; 72 × 1.355 818 = 97.6 N·m (NIST SP 811, second-hand).
    await flange.getByText('Torque 72 lbf·ft (97.6 N·m), by Brindlewater D-51 field manual').waitFor();
    const ring = flange.getByRole('img', { name: /Order of tightening, 8 bolts/ });
    // Eight bolts: ASME PCC-1, legacy cross pattern (second-hand).
    expect(await ring.locator('desc').textContent()).toContain('1-5-3-7, 2-6-4-8');
    // Shares of a gasket maker's guidance (seen): 30, 60, 100 %, once round. 0.3 × 72 = 21.6; 0.6 × 72 = 43.2.
    const passes = await flange
      .getByRole('group', { name: 'Passes, Breakaway flange' })
      .locator('label')
      .allTextContents();
    expect(passes.map((text) => text.trim())).toEqual([
      'Pass 1: 30%, 21.6 lbf·ft (29.3 N·m)',
      'Pass 2: 60%, 43.2 lbf·ft (58.6 N·m)',
      'Pass 3: 100%, 72 lbf·ft (97.6 N·m)',
      'Pass 4: once round clockwise, 100%, 72 lbf·ft (97.6 N·m), until no nut turns',
    ]);
    await flange.getByText('By places: 1-5-3-7, 2-6-4-8.').waitFor();
    // Both ends of the printed range: 8 and 9 kgf·m are 78.5 and 88.3 N·m (1 kgf = 9.80665 N, NIST SP 811).
    await joint(page, 'Bonnet')
      .getByText('Pass 3: 100%, 57.9 lbf·ft (78.5 N·m) to 65.1 lbf·ft (88.3 N·m)')
      .waitFor();
    // 72 × 0.96 and 72 × 1.04.
    await flange.getByText(/±4% brings between 69\.1 lbf·ft .* and 74\.9 lbf·ft/).waitFor();

    const cover = joint(page, 'Weather cover');
    await cover.getByText('see the maker’s manual', { exact: false }).waitFor();
    expect(await cover.textContent()).not.toMatch(/\d+(\.\d+)? ?(lbf|N·m|kgf)/);
    await joint(page, 'Bonnet').getByText('Printed as 8 to 9 kgf·m.').waitFor();
    await joint(page, 'Thrust nut').getByText('⅛ to ¼ of a turn, until its lock lines up').waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'repair-360');
  });

  test('is recorded joint by joint: torque, wrench, who and when, and shown when the form is opened again', async () => {
    const { page } = await crew();
    await goTo(page, server, repairOf('T-101'));
    const flange = joint(page, 'Breakaway flange');
    for (const name of [/^Pass 1/, /^Pass 2/, /^Pass 3/, /^Pass 4/])
      await flange.getByRole('checkbox', { name }).check();
    expect(await flange.getByLabel('Full torque used').inputValue()).toBe('72');
    await flange.getByLabel('Wrench number').fill('TW-3');
    await flange.getByLabel('Wrench calibrated on').fill('2026-02-19');
    // Of the printed range nothing is chosen for the crew.
    const bonnet = joint(page, 'Bonnet');
    await bonnet.getByRole('checkbox', { name: /^Pass 3/ }).check();
    expect(await bonnet.getByLabel('Full torque used').inputValue()).toBe('');
    expect(await bonnet.getByLabel('Wrench number').inputValue()).toBe('TW-3');
    await bonnet.getByLabel('Full torque used').fill('90');
    await bonnet.getByText('not the torque of the model’s record', { exact: false }).waitFor();
    await bonnet.getByLabel('Full torque used').fill('60');
    await bonnet
      .getByText('not the torque of the model’s record', { exact: false })
      .waitFor({ state: 'hidden' });
    const nut = joint(page, 'Thrust nut');
    await nut.getByRole('button', { name: 'Nut set' }).click();
    await nut.getByLabel('Turns backed off').fill('0.25');
    await nut.getByText('Yes', { exact: true }).click();
    await expectAccessible(page);
    await shot(page, 'repair-ticked-360');
    await nobodyWorked(page);
    await sendAndConfirm(page);

    const [body] = await repairs();
    expect(body?.tightened).toMatchObject([
      {
        kind: 'bolts',
        joint: 'Breakaway flange',
        bolts: 8,
        passes: ['30', '60', '100', 'round'],
        torqueLbfFt: 72,
        wrenchId: 'TW-3',
        wrenchCalibratedOn: '2026-02-19',
        manual: 'Brindlewater D-51 field manual, invented',
        page: '18',
        byWorkerId: 'w-101',
      },
      { joint: 'Bonnet', passes: ['100'], torqueLbfFt: 60, page: '21' },
      { kind: 'back-off', joint: 'Thrust nut', turns: 0.25, lockLinedUp: true, page: '20' },
    ]);
    await goTo(page, server, repairOf('T-101'));
    await joint(page, 'Breakaway flange')
      .getByText(/^Recorded: .*72 lbf·ft \(97\.6 N·m\), 4 passes of 4/)
      .waitFor();
  });

  test('a joint that no record has keeps its order, and takes no torque without manual and page', async () => {
    tolerate(noSignal);
    const { page } = await crew();
    await page.route('**/api/models', (route) => route.abort());
    // Nor did the device keep any: the same person's earlier reading would stand in.
    await page.goto('about:blank');
    await page.goto(`${server.origin}/sign-in/`);
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.open('hsl');
          request.onerror = () => reject(request.error ?? new Error('not opened'));
          request.onsuccess = () => {
            const clearing = request.result.transaction('reads', 'readwrite');
            clearing.objectStore('reads').clear();
            clearing.oncomplete = () => {
              request.result.close();
              resolve();
            };
          };
        }),
    );
    await goTo(page, server, repairOf('T-102'));
    await page.getByText('model could not be read just now', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Add another joint' }).click();
    const own = page.locator('fieldset.joint');
    await own.getByRole('textbox', { name: /^Joint/ }).fill('Shoe');
    await own.getByRole('textbox', { name: /^Bolts/ }).fill('7');
    await own.getByText('There is no cross pattern for 7 bolts', { exact: false }).waitFor();
    await own.getByRole('textbox', { name: /^Bolts/ }).fill('12');
    // Twelve bolts: ASME PCC-1, legacy cross pattern (second-hand).
    await own.getByRole('checkbox', { name: 'Pass 1: 30%' }).check();
    await own.getByText('By places: 1-7-4-10, 2-8-5-11, 3-9-6-12.').waitFor();
    await own.getByLabel('Full torque used').fill('70');
    await nobodyWorked(page);
    await sendForm(page);
    await own.getByText('A torque goes with its manual and page', { exact: false }).first().waitFor();
    await own.getByLabel('Maker’s manual').fill('Invented manual');
    await own.getByLabel('Page').fill('3');
    await sendAndConfirm(page);
    expect((await repairs()).at(-1)?.tightened).toMatchObject([
      { joint: 'Shoe', bolts: 12, passes: ['30'], torqueLbfFt: 70, page: '3' },
    ]);
  });

  test('in Spanish and metric shows both units, the reader’s own first', async () => {
    const { page } = await crew({ viewport: { width: 1280, height: 900 } });
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('button', { name: 'Métrico' }).click();
    await goTo(page, server, repairOf('T-103'));
    await joint(page, 'Breakaway flange')
      .getByText('Par 97.6 N·m (72 lbf·pie), según Brindlewater')
      .waitFor();
    await shot(page, 'repair-es-desktop');
  });
});

describe('a hydrant model', () => {
  test('is recorded by a manager as the manual prints it, and read by the next repair', async () => {
    const looking = await signIn('manager');
    const { page } = looking;
    await page.goto(`${server.origin}/desk/`);
    await page.getByRole('link', { name: 'Record a hydrant model' }).click();
    await page.getByLabel('Model code').fill('LM-W3');
    await page.getByLabel('Name').fill('Lowmarsh W-3 (wet barrel)');
    await page.getByText('Wet barrel', { exact: true }).click();
    await page.getByRole('button', { name: 'Add a joint' }).click();
    const row = page.getByRole('group', { name: 'Joint 1', exact: true });
    await row.getByRole('textbox', { name: /^Joint/ }).fill('Valve head');
    await row.getByLabel('Bolts', { exact: true }).last().fill('4');
    await row.getByLabel('Torque as printed').fill('52');
    await sendForm(page);
    await row.getByText('Give the unit as it is printed in the manual.').waitFor();
    expect(await row.getByText('A torque goes with its manual and page').count()).toBe(2);
    await row.getByText('N·m', { exact: true }).click();
    await row.getByLabel('Maker’s manual').fill('Lowmarsh W-3 manual, invented');
    await row.getByLabel('Page').fill('7');
    await expectAccessible(page);
    await shot(page, 'model-desktop');
    await sendAndConfirm(page);

    // The next edition starts from a record of before, kept in lbf·ft alone, as the demo's second model is.
    await page.goto(`${server.origin}/desk/`);
    await page.getByRole('link', { name: 'Record a hydrant model' }).click();
    await page.getByRole('button', { name: /^Brindlewater D-45/ }).click();
    expect(await page.getByLabel('Model code').inputValue()).toBe('BW-D45');
    expect(await row.getByLabel('Torque as printed').inputValue()).toBe('66');
    expect(await row.getByRole('radio', { name: 'lbf·ft' }).isChecked()).toBe(true);
    await sendAndConfirm(page);

    const { page: phone } = await crew();
    await goTo(phone, server, repairOf('T-106'));
    // 52 N·m / 1.355 818 = 38.4 lbf·ft (NIST SP 811, second-hand).
    await joint(phone, 'Valve head')
      .getByText('Torque 38.4 lbf·ft (52 N·m), by Lowmarsh W-3 manual, invented, page 7.')
      .waitFor();
  });
});

describe('codes of the rate book', () => {
  test('are picked or typed, bring their title, and never a rate', async () => {
    const { page } = await crew();
    await goTo(page, server, repairOf('T-101'));
    const person = page.getByRole('group', { name: 'Person 1', exact: true });
    await person.getByRole('combobox', { name: 'Pick a code' }).selectOption('crew-lead');
    expect(await person.getByLabel('Labor class').inputValue()).toBe('crew-lead');
    await page.getByRole('button', { name: 'Add a machine' }).click();
    const machine = page.getByRole('group', { name: 'Machine 1', exact: true });
    await machine.getByRole('combobox', { name: 'Pick a code' }).selectOption('TRK-1');
    expect(await machine.getByLabel('What it is').inputValue()).toBe('Service truck, 1 ton');
    await machine.getByLabel('Machine code').fill('LOADER-9');
    await machine.getByText('Not in the rate book of today', { exact: false }).waitFor();
    // The list's title goes with its code; words of one's own stay.
    expect(await machine.getByLabel('What it is').inputValue()).toBe('');
    await machine.getByLabel('What it is').fill('Hired loader');
    await machine.getByLabel('Machine code').fill('TRK-1');
    expect(await machine.getByLabel('What it is').inputValue()).toBe('Hired loader');
    await page.getByRole('button', { name: 'Add a part' }).click();
    const part = page.getByRole('group', { name: 'Part 1', exact: true });
    await part.getByLabel('Part number').fill('CONC-60');
    expect(await part.getByLabel('What it is').inputValue()).toBe('Concrete, 60 lb bag');
    await expectAccessible(page);
    await shot(page, 'codes-360');

    const codes = await server.ask<Record<string, unknown>>('crew', '/api/job-codes');
    expect(JSON.stringify(codes)).not.toMatch(/usd|rate"|price|authority/i);
  });
});

describe('cautions', () => {
  test.each([
    ['strike', '/crew/#/new/strike', ['Traffic', 'Locate utilities', 'bonnet or cap']],
    [
      'repair',
      '',
      ['Traffic', 'Locate utilities', 'bonnet or cap', 'Open and close slowly', 'Dechlorinate', 'disinfect'],
    ],
    [
      'return-to-service',
      '',
      ['Traffic', 'Open and close slowly', 'where the water will go', 'frost', 'disinfect'],
    ],
    ['flow-test', '', ['Traffic', 'where the water will go', 'frost', 'bonnet or cap', 'Dechlorinate']],
    ['the strike’s screen', '/crew/#/strike/', ['Traffic', 'Locate utilities']],
  ])('of %s are read before the first field, and one touch says more', async (kind, at, expected) => {
    const { page } = await crew();
    const path = at === '' ? `/crew/#/new/${kind}?strike=${strikeId}&hydrant=T-101` : at;
    await goTo(page, server, path.endsWith('/strike/') ? path + strikeId : path);
    const cautions = page.getByRole('complementary', { name: 'Before you start' });
    for (const words of expected) await cautions.getByText(words, { exact: false }).first().waitFor();
    await cautions.getByText('Local rules and the maker’s manual decide.').waitFor();
    await cautions.getByText('Read more').click();
    await cautions
      .getByText('Where the maker’s manual or a local rule says otherwise, it decides.')
      .waitFor();
    await shot(page, `cautions-${kind.replaceAll(/\W/g, '')}`);
  });
});
