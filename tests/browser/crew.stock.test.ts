import type { BrowserContextOptions } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { v7 } from 'uuid';
import type { Role } from '../../shared/roles.ts';
import type { Stock } from '../../shared/stock/fold.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { expectAccessible, expectNoSideScroll, goTo, sendAndConfirm, sendForm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** What to bring for a hydrant, and the stock of parts, as a crew and a manager meet them on a phone. */
const { server, signIn } = appTest(ports.stock);

const phone = { viewport: { width: 360, height: 740 } };
const as = (role: Role, options: BrowserContextOptions = phone): Promise<Looking> => signIn(role, options);
const minutesBefore = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
const tell = <K extends FactKind>(role: Role, kind: K, minutes: number, body: BodyOf<K>): Promise<unknown> =>
  server.ask(role, '/api/submissions', {
    schemaVersion: 1,
    submissionId: v7(),
    kind,
    subject: { type: 'utility' },
    occurredAt: minutesBefore(minutes),
    sentAt: minutesBefore(0),
    person: { personId: 'w-101' },
    device: { deviceId: 'truck-1-phone' },
    enteredUnits: 'us',
    body,
  });
const shelf = async (partNumber: string, place: string) =>
  (await server.ask<Stock>('crew', '/api/stock')).parts
    .find((part) => part.partNumber === partNumber)
    ?.shelves.find((each) => each.place === place);

describe('what to bring', () => {
  test('for a model on record: kit, wrenches, lubricants; parts that nobody counted are not said to be none', async () => {
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/hydrant/T-101');
    await page.getByRole('heading', { name: /What to bring for Brindlewater D-51/ }).waitFor();

    await page.getByText('never counted: nobody can say', { exact: false }).waitFor();
    const card = page.locator('section.kit');
    await card.getByText('Operating nut: pentagon 1 1/2 in, point to flat').waitFor();
    await card.getByText('Breakaway flange bolts: hexagon 1 1/16 in, flat to flat').waitFor();
    await card.getByText('Bonnet bolts: hexagon 24 mm, flat to flat').waitFor();
    await card.getByText('Stem threads: Food-grade grease, by Brindlewater D-51 field manual').waitFor();
    await card.getByText('Made for a bury of 3 ft to 8 ft.').waitFor();
    expect(await card.textContent()).not.toContain('None left');
    await expectAccessible(page);
    await expectNoSideScroll(page);
  });
});

describe('the stock', () => {
  test('a shelf is counted on the phone, and the strike says where its kit is', async () => {
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/stock');
    await page.getByText('Nothing was ever counted', { exact: false }).waitFor();
    await page.getByRole('link', { name: 'Count a shelf or truck' }).click();
    await page.getByLabel('Shelf or truck').fill('Truck 1');
    const parts = [
      ['BW-D51-BK', '2'],
      ['BW-GSK', '3'],
    ] as const;
    for (const [index, [number, amount]] of parts.entries()) {
      await page.getByRole('button', { name: 'Add a part' }).click();
      const row = page.getByRole('group', { name: `Part ${index + 1}` });
      await row.getByLabel(/^Part number/).fill(number);
      await row.getByLabel(/How many are there/).fill(amount);
    }
    // Twice the same part is told beside the field, before anything is sent.
    await page.getByRole('button', { name: 'Add a part' }).click();
    const third = page.getByRole('group', { name: 'Part 3' });
    await third.getByLabel(/^Part number/).fill('bw-gsk');
    await third.getByLabel(/How many are there/).fill('9');
    await sendForm(page);
    await page.getByText('is in the list twice. Keep one.', { exact: false }).first().waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'count-360');
    await third.getByLabel(/^Part number/).fill('GRS-FG');
    await sendAndConfirm(page);
    expect(await shelf('BW-D51-BK', 'Truck 1')).toMatchObject({ quantity: 2, standing: 'enough' });

    await goTo(page, server, '/crew/#/new/strike?hydrant=T-101');
    await sendAndConfirm(page);
    const { strikes } = await server.ask<{ strikes: StrikeState[] }>('crew', '/api/strikes');
    await goTo(page, server, `/crew/#/strike/${strikes[0]!.strikeId}`);
    await page.getByText('The whole kit is at Truck 1.').waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'strike-360');
  });

  test('a repair takes the part from the shelf it names, and the shelf has one fewer', async () => {
    const { page } = await as('crew');
    const { strikes } = await server.ask<{ strikes: StrikeState[] }>('crew', '/api/strikes');
    await goTo(page, server, `/crew/#/new/repair?strike=${strikes[0]!.strikeId}&hydrant=T-101`);
    await page.getByRole('button', { name: /Add BW-D51-BK from Truck 1 \(2 there\)/ }).click();
    expect(await page.getByLabel('Taken from shelf or truck').inputValue()).toBe('Truck 1');
    await page.getByRole('button', { name: 'Remove Person 1' }).click();
    await sendAndConfirm(page);
    await expect.poll(async () => (await shelf('BW-D51-BK', 'Truck 1'))?.quantity).toBe(1);
  });

  test('a shelf below its least level is shown on the start page, and at the top of the stock', async () => {
    const least = (place: string, minimum: number, partNumber = 'BW-D51-BK') =>
      tell('manager', 'stock-minimum', 5, {
        place,
        parts: [{ partNumber, description: null, minimum }],
        note: null,
      });
    await least('Truck 1', 2);
    await least('Yard', 1, 'BW-D45-BK');
    await tell('crew', 'stock-count', 4, {
      place: 'Yard',
      countedAt: minutesBefore(4),
      byWorkerId: 'w-102',
      parts: [{ partNumber: 'LM-W3-BO', description: 'Break-off bolts', counted: 0 }],
      note: null,
    });
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/');
    await page.getByText('2 parts are low or out. One was never counted.').waitFor();
    await page.getByRole('link', { name: 'Stock of parts' }).click();
    const first = page.locator('li.shelf').first();
    await first.getByText('None left').waitFor();
    await page.getByText('Never counted, so what is there is not known.').first().waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'stock-360');
    await goTo(page, server, '/crew/#/hydrant/T-106');
    await page.getByText('The kit is not complete. Too few or none left: LM-W3-BO.').waitFor();
    await shot(page, 'kit-out-360');
  });

  test('a count is put right from the list of records', async () => {
    const { page } = await as('crew');
    await goTo(page, server, '/crew/#/stock');
    await page.getByRole('link', { name: 'Correct this Stock counted' }).last().click();
    await page.getByLabel('Reason', { exact: false }).first().fill('Two lay behind the crate');
    await page
      .getByRole('group', { name: 'Part 1' })
      .getByLabel(/How many are there/)
      .fill('4');
    await sendAndConfirm(page);
    await expect
      .poll(async () => await shelf('BW-D51-BK', 'Truck 1'))
      .toMatchObject({ counted: { quantity: 4 }, usedSince: 1, quantity: 3 });
  });

  test('a clerk reads and is offered no count; the manager’s form of a model has all its parts, in Spanish as well', async () => {
    const clerk = await as('clerk', { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' });
    await goTo(clerk.page, server, '/desk/#/stock');
    await clerk.page.getByText('Truck 1').first().waitFor();
    expect(await clerk.page.getByRole('link', { name: /Count/ }).count()).toBe(0);
    await expectAccessible(clerk.page);
    await shot(clerk.page, 'stock-1280-dark');

    const manager = await as('manager', phone);
    await goTo(manager.page, server, '/desk/#/new/hydrant-model');
    await manager.page.getByRole('button', { name: /Brindlewater D-51/ }).click();
    const wrench = manager.page.getByRole('group', { name: 'Wrench 1', exact: true });
    expect(await wrench.getByLabel('What it turns').inputValue()).toBe('Operating nut');
    expect(await wrench.getByLabel('Size').inputValue()).toBe('1.5');
    await manager.page.getByLabel('To', { exact: true }).first().fill('2');
    await sendForm(manager.page);
    await expectAccessible(manager.page);
    await expectNoSideScroll(manager.page);
    await shot(manager.page, 'model-360');
    await manager.page.getByLabel('To', { exact: true }).first().fill('9');
    await sendAndConfirm(manager.page);
    const { models } = await server.ask<{ models: BodyOf<'hydrant-model'>[] }>('crew', '/api/models');
    const saved = models.find(({ modelId }) => modelId === 'BW-D51');
    expect(saved?.buryDepth).toEqual({ fromFt: 3, toFt: 9 });
    expect(saved?.wrenches).toHaveLength(3);
    expect(saved?.kitContents[0]?.replaces).toBe('The parted flange, stem coupling and bolts');
  });
});
