import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { expectAccessible, expectNoSideScroll, goTo, minutesAgo, sendAndConfirm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot, shotsFolder } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { bodiesOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';

/** The procedure on the repair form, its hold points, the way out to a dig, and the printed sheet, as a crew meets them. */
const { server, signIn } = appTest(ports.procedure);

const crew = (options: BrowserContextOptions = {}): Promise<Looking> => signIn('crew', options);
const struck = (hydrantId: string): Promise<string> => reportStrike(signIn, server, hydrantId);
const strikeOf = async (id: string): Promise<StrikeState> =>
  (await server.ask<{ strike: StrikeState }>('manager', `/api/strikes/${id}`)).strike;
const repairsOf = (id: string): Promise<BodyOf<'repair'>[]> => bodiesOf(server, id, 'repair');
const formAt = (kind: string, strikeId: string, hydrantId: string): string =>
  `/crew/#/new/${kind}?strike=${strikeId}&hydrant=${hydrantId}`;
const nobodyWorked = async (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Remove Person 1' }).click();
const step = (page: Page, title: string) => page.getByRole('listitem').filter({ hasText: title });
const done = (page: Page, title: string) =>
  page.getByRole('button', { name: `Done ${title}`, exact: true }).click();

describe('the procedure of a dry barrel', () => {
  test('holds the take-down until three steps are confirmed by name, and ticks with one touch a step', async () => {
    const strikeId = await struck('T-101');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-101'));
    await page.getByText('Breakaway repair, from above ground, dry barrel').waitFor();
    for (const held of ['Parted hardware taken down', 'Top opened']) {
      expect(await step(page, held).getByRole('button').count()).toBe(0);
      await step(page, held)
        .getByText(
          'Not offered until someone confirms by name: Isolation valve closed; Pressure proved gone; Barrel drained.',
        )
        .waitFor();
    }
    await shot(page, 'procedure-360');
    await expectAccessible(page);
    await expectNoSideScroll(page);

    // What the model says stands at the step that needs it (the demo's invented model).
    await step(page, 'Bolts tightened crosswise to torque')
      .getByText('Breakaway flange: 72 lbf·ft (97.6 N·m). 8 bolts, in the order 1-5-3-7, 2-6-4-8.')
      .waitFor();
    await step(page, 'Thrust nut set').getByText('⅛ to ¼ of a turn', { exact: false }).waitFor();
    await step(page, 'Opened and closed fully').getByText('Opens to the left', { exact: false }).waitFor();

    // A target for a wet glove: as wide as the card and at least 48 px high (WCAG 2.2 asks for 24).
    const target = await page
      .getByRole('button', { name: 'Done Traffic controlled, protective gear on' })
      .boundingBox();
    expect(target?.height).toBeGreaterThanOrEqual(48);
    expect(target?.width).toBeGreaterThan(200);

    await done(page, 'Traffic controlled, protective gear on');
    await done(page, 'Lines and water under control, vehicle moved only then');
    await done(page, 'Isolation valve closed');
    await done(page, 'Pressure proved gone');
    expect(await step(page, 'Parted hardware taken down').getByRole('button').count()).toBe(0);
    // The drain is blocked: pumped out counts in its place.
    await done(page, 'Drain blocked: barrel pumped out instead');
    await done(page, 'Parted hardware taken down');
    await step(page, 'Parted hardware taken down')
      .getByText(/^Done .*w-101/)
      .waitFor();
    await expectAccessible(page);
    await nobodyWorked(page);
    await sendAndConfirm(page);
    expect((await strikeOf(strikeId)).breaches).toEqual([]);
    expect((await repairsOf(strikeId))[0]?.steps.map((each) => each.step)).toEqual([
      'traffic-and-protection',
      'vehicle-and-lines-safe',
      'isolated',
      'pressure-gone',
      'pumped-out',
      'taken-down',
    ]);

    // A colleague opens the next record and sees what stands already.
    await goTo(page, server, formAt('repair', strikeId, 'T-101'));
    await step(page, 'Isolation valve closed')
      .getByText(/^Recorded: .*w-101/)
      .waitFor();
    await page.getByRole('button', { name: 'Done again Parted hardware taken down' }).waitFor();
    await step(page, 'Stem freed').getByText('Next').waitFor();
    await shot(page, 'procedure-recorded-360');
  });

  test('hidden damage leads out to a dig, which waits for its ticket and for the sides of the trench', async () => {
    const strikeId = await struck('T-102');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-102'));
    for (const each of ['Isolation valve closed', 'Pressure proved gone', 'Barrel drained'])
      await done(page, each);
    await done(page, 'Parted hardware taken down');
    await done(page, 'Top opened');
    expect(await step(page, 'Ground opened').count()).toBe(0);
    await page.getByRole('group', { name: 'What was found' }).getByText('Cracked barrel').click();
    await page.getByRole('button', { name: 'Go on as a dig' }).click();
    await page.getByText('Dig: the barrel or what lies below it, dry barrel').waitFor();

    await step(page, 'Ground opened')
      .getByText(/Not offered until someone confirms by name/)
      .waitFor();
    await done(page, 'Utilities located, ticket number written down');
    // The step alone is no ticket: its number is.
    expect(await step(page, 'Ground opened').getByRole('button').count()).toBe(0);
    await page.getByLabel('Locate ticket number').fill('LT-26-0417');
    await done(page, 'Ground opened');
    expect(await step(page, 'Work in the trench begun').getByRole('button').count()).toBe(0);
    await page.getByLabel('Depth of the trench').fill('6');
    await page.getByText('Under 5 ft, no sign of a cave-in').click();
    // 5 ft: 29 CFR 1926.652(a)(1), from memory.
    await page.getByText('5 ft and deeper is sloped', { exact: false }).waitFor();
    await page.getByText('Trench box', { exact: true }).click();
    await done(page, 'Sides of the trench protected');
    await done(page, 'Work in the trench begun');
    await shot(page, 'procedure-dig-360');
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await nobodyWorked(page);
    await sendAndConfirm(page);
    expect((await strikeOf(strikeId)).breaches).toEqual([]);
    expect((await repairsOf(strikeId))[0]).toMatchObject({
      hiddenDamage: ['cracked-barrel'],
      needsDig: true,
      dig: { locateTicket: 'LT-26-0417', trenchDepthFt: 6, trenchProtection: 'shield' },
    });
  });

  test('a time put before its conditions is said to stand as a breach, is kept, and stays told after its correction', async () => {
    const strikeId = await struck('T-103');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-103'));
    for (const each of ['Isolation valve closed', 'Pressure proved gone', 'Barrel drained'])
      await done(page, each);
    await done(page, 'Parted hardware taken down');
    const takeDown = step(page, 'Parted hardware taken down');
    await takeDown.getByText('Change time or name, add a note').click();
    await takeDown.getByLabel('Done at').fill(minutesAgo(30));
    await takeDown.getByText(/This would stand as a breach/).waitFor();
    await nobodyWorked(page);
    await sendAndConfirm(page);
    const [breach] = (await strikeOf(strikeId)).breaches;
    expect(breach).toMatchObject({
      code: 'take-down-before-safe',
      missing: ['isolated', 'pressure-gone', 'drained'],
    });
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('Safety hold passed without its condition').waitFor();

    await goTo(page, server, `/crew/#/correct/strike/${strikeId}/${breach?.submissionId}`);
    await page.getByLabel(/^Reason/).fill('Typed the wrong hour');
    const corrected = step(page, 'Parted hardware taken down');
    await corrected.getByText('Change time or name, add a note').click();
    await corrected.getByLabel('Done at').fill(minutesAgo(0));
    await sendAndConfirm(page);
    expect((await strikeOf(strikeId)).breaches).toMatchObject([
      { code: 'take-down-before-safe', corrected: { reason: 'Typed the wrong hour' } },
    ]);
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('the record was corrected', { exact: false }).waitFor();
    await page.getByText('Typed the wrong hour', { exact: false }).first().waitFor();
    await shot(page, 'breach-corrected-360');
  });
});

describe('a wet barrel', () => {
  test('has its own steps: no drain, water let down, each outlet valve', async () => {
    const strikeId = await struck('T-106');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-106'));
    await page.getByText('Breakaway repair, from above ground, wet barrel').waitFor();
    expect(await step(page, 'Barrel drained').count()).toBe(0);
    expect(await step(page, 'Thrust nut set').count()).toBe(0);
    await step(page, 'Every outlet valve turns freely').waitFor();
    await done(page, 'Isolation valve closed');
    await done(page, 'Pressure proved gone');
    await done(page, 'Parted hardware taken down');
    await shot(page, 'procedure-wet-360');
  });
});

describe('the return', () => {
  test('takes a plugged drain as pumped out, puts off the flow test alone, and says so', async () => {
    const strikeId = await struck('T-104');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-104'));
    await page.getByLabel('Closed up at').fill(minutesAgo(0));
    await done(page, 'Looked for leaks under pressure');
    await nobodyWorked(page);
    await sendAndConfirm(page);

    await goTo(page, server, formAt('return-to-service', strikeId, 'T-104'));
    const card = (name: string) => page.getByRole('group', { name, exact: true });
    await card('No leaks under pressure')
      .getByText(/^The repair says: done .*w-101/)
      .waitFor();
    expect(await card('No leaks under pressure').getByText('Put off').count()).toBe(0);
    await card('No leaks under pressure').getByText('Passed').click();
    await card('Opens and closes fully').getByText('Passed').click();
    await card('Drain plugged: barrel pumped dry').getByText('Passed').click();
    await page.getByText('Not recorded yet: Flow test.').waitFor();
    await card('Flow test').getByText('Put off').click();
    await card('Flow test').getByLabel('Why it is put off').fill('Frozen curb');
    await card('Flow test').getByLabel('Allowed by').fill('m-401');
    // The list of colleagues closes first: the click that closes it presses no button.
    await page.keyboard.press('Tab');
    await page.getByText('This return takes effect').waitFor();
    await expectAccessible(page);
    await shot(page, 'return-pumped-360');
    await sendAndConfirm(page);
    const strike = await strikeOf(strikeId);
    expect(strike.stage).toBe('back');
    expect(strike.deferred).toMatchObject([{ proof: 'flow-test', byWorkerId: 'm-401' }]);
    expect(strike.pumped).toMatchObject({ byWorkerId: 'w-101' });
    await goTo(page, server, `/crew/#/strike/${strikeId}`);
    await page.getByText('Drain plugged: pump the barrel dry after every use').waitFor();
  });
});

describe('the printed sheet', () => {
  test('is one touch away from the start and from a hydrant, for either barrel', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/');
    await page.getByRole('link', { name: 'Repair steps on paper' }).click();
    await page.getByRole('heading', { level: 1, name: /^Repair sheet: .*dry barrel/ }).waitFor();
    await page.getByRole('link', { name: 'Wet barrel' }).click();
    await page.getByRole('heading', { level: 1, name: /^Repair sheet: .*wet barrel/ }).waitFor();
    await goTo(page, server, '/crew/#/hydrant/T-106');
    await page.getByRole('link', { name: 'Repair steps on paper' }).click();
    // What is known of that hydrant stands on it.
    await page.getByRole('heading', { level: 1, name: /^Repair sheet: .*wet barrel/ }).waitFor();
    await page.locator('.sheet-head').getByText('T-106').waitFor();
  });

  test('has every step with boxes, the lines that stop, and the model’s torques', async () => {
    const strikeId = await struck('T-105');
    const { page } = await crew();
    await goTo(page, server, formAt('repair', strikeId, 'T-105'));
    await page.getByRole('link', { name: 'Print this procedure as a sheet' }).click();
    await page.getByRole('heading', { level: 1, name: /^Repair sheet: Breakaway repair/ }).waitFor();
    await page.getByText('STOP. Not before a time and a name stand at: 3, 4, 5/6.').first().waitFor();
    const flange = page.getByRole('row').filter({ hasText: 'Brindlewater D-51 field manual, invented, 18' });
    expect(await flange.textContent()).toContain('72 lbf·ft (97.6 N·m)');
    expect(await flange.textContent()).toContain('1-5-3-7, 2-6-4-8');
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'sheet-360');
    // Letter paper: two pages are one sheet, four are two.
    const pages = async (): Promise<number> => {
      const pdf = await page.pdf({ format: 'Letter', preferCSSPageSize: true });
      const folder = await shotsFolder();
      const name = `sheet-${await page.title()}.pdf`.replaceAll(' ', '-');
      if (folder !== null) await writeFile(join(folder, name), pdf);
      return pdf.toString('latin1').split(/\/Type\s*\/Page\b(?!s)/).length - 1;
    };
    expect(await pages()).toBeLessThanOrEqual(2);
    await page.getByRole('link', { name: 'Dig: the barrel or what lies below it' }).click();
    await page.getByText('Locate ticket no., clear from').waitFor();
    expect(await pages()).toBeLessThanOrEqual(4);
  });
});

describe('in Spanish, in the dark', () => {
  test('reads the same', async () => {
    const strikeId = await struck('T-101');
    const { page } = await crew({ colorScheme: 'dark' });
    await page.getByRole('button', { name: 'Español' }).click();
    await goTo(page, server, formAt('repair', strikeId, 'T-101'));
    await page.getByText('Reparación de rotura, desde arriba, cuerpo seco').waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'procedure-es-dark-360');
  });
});
