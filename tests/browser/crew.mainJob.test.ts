import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { photoBytes } from '../../infra/local/demo/photos.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import { minutesAgo, pickHydrant, sendAndConfirm } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** The whole line in the browser: strike, notice, repair, flow test, return, party, claim, packet. */
const { server, signInForAll } = appTest(ports.mainJob);
let crew: Looking;
let clerk: Looking;
let page: Page;

beforeAll(async () => {
  crew = await signInForAll('crew');
  clerk = await signInForAll('clerk');
  page = crew.page;
}, 180_000);

const button = (name: string | RegExp) => page.getByRole('button', { name });
const link = (name: string | RegExp) => page.getByRole('link', { name });
const choose = (group: string, choice: string) =>
  page.getByRole('radiogroup', { name: group }).getByText(choice, { exact: true }).click();
const strikes = async (): Promise<StrikeState> => {
  const { strikes: all } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
  expect(all).toHaveLength(1);
  return all[0]!;
};

/** From the strike's own page to one of its forms. */
const report = async (kind: string): Promise<void> => {
  await link('What is missing next').click();
  await link(kind).first().click();
  await page.getByRole('heading', { level: 1, name: kind }).waitFor();
};

describe('a strike from the curb to the packet', () => {
  test('the strike takes the hydrant out of service', async () => {
    await link('Report a strike').click();
    await pickHydrant(page, 'Hydrant', 'T-101');
    await choose('Water flowing', 'Jet');
    await page.getByLabel('Height of an upright jet').fill('5.5');
    await page.getByLabel('Traffic').check();
    // Taken once: the minute may turn between typing it and asking for it.
    const typedAt = Date.now();
    await page.getByLabel('Marked out of service at').fill(minutesAgo(300));
    const typedBy = Date.now();
    await sendAndConfirm(page);

    const wholeMinute = (now: number): string =>
      new Date(Math.floor((now - 300 * 60_000) / 60_000) * 60_000).toISOString();
    const strike = await strikes();
    expect(strike).toMatchObject({ hydrantId: 'T-101', stage: 'reported', dispatchToldAt: null });
    expect([wholeMinute(typedAt), wholeMinute(typedBy)]).toContain(strike.markedOutOfServiceAt);
  });

  test('it says at once that dispatch does not know, and takes the notice', async () => {
    await page.getByText('dispatch has not been told yet').waitFor();
    await link('Record that dispatch was told').click();
    await page.getByLabel('Dispatch told at').fill(minutesAgo(295));
    await page.getByLabel('Who took the message').fill('Dispatcher Vane');
    await sendAndConfirm(page);
    expect((await strikes()).dispatchToldAt).not.toBeNull();
  });

  test('the valve shuts the water off', async () => {
    await report('Valve closed or reopened');
    expect(await page.getByLabel('Valve', { exact: false }).first().inputValue()).toBe('V-101');
    await choose('What was done', 'Closed');
    await choose('Did it stop the water at the hydrant?', 'Yes');
    await page.getByLabel('When').fill(minutesAgo(290));
    await sendAndConfirm(page);
    expect((await strikes()).stage).toBe('shut-off');
  });

  test('the repair offers no take-down before the three holds, and goes with a photo', async () => {
    await report('Repair');
    const takeDown = page.getByRole('listitem').filter({ hasText: 'Parted hardware taken down' });
    expect(await takeDown.getByRole('button').count()).toBe(0);
    await takeDown.getByText(/Not offered until someone confirms by name/).waitFor();
    for (const step of ['Isolation valve closed', 'Pressure proved gone', 'Barrel drained'])
      await button(`Done ${step}`).click();
    await button('Done Parted hardware taken down').click();
    await choose('Class of damage', 'Breakaway kit');

    await page.getByLabel('Labor class').fill('crew-lead');
    await page.getByLabel(/^From/).first().fill(minutesAgo(240));
    await page.getByLabel(/^To/).first().fill(minutesAgo(60));
    await button(/^Add BW-D51-BK/).click();
    // After the steps, which were ticked just now.
    await page.getByLabel('Closed up at').fill(minutesAgo(0));
    await page.getByLabel('Repair finished at').fill(minutesAgo(0));
    await page.getByLabel('Add photos').setInputFiles({
      name: 'repaired.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from(photoBytes('quince-repaired')),
    });
    await page.getByRole('img', { name: 'Photo 1' }).waitFor();
    await choose('What it shows', 'Close-up');
    await page.getByLabel('Caption').fill('Rebuilt');
    await sendAndConfirm(page);

    const strike = await strikes();
    expect(strike.stage).toBe('repaired');
    expect(strike.breaches).toEqual([]);
    const { evidence } = await server.ask<{ evidence: Record<string, string> }>(
      'crew',
      `/api/strikes/${strike.strikeId}`,
    );
    expect(Object.values(evidence)).toEqual(['arrived']);
  });

  test('the flow test answers while it is typed', async () => {
    await report('Flow test');
    await page.getByLabel('Static pressure').fill('86');
    await page.getByLabel('Residual pressure').fill('42');
    await pickHydrant(page, 'Hydrant that flowed', 'T-102');
    await page.getByText('Square and sharp', { exact: false }).click();
    await page.getByLabel('Pitot pressure').fill('28');
    // K. Kolb, course slides on water supply, slides 15 and 16 (seen): 789 gpm, about 980 gpm at 20 psi (read off a graph).
    const figures = page.locator('.figures');
    await figures.getByText('789 gpm').waitFor();
    const available = /([\d,]+) gpm/.exec((await figures.locator('dd').nth(2).textContent()) ?? '');
    expect(Number(available?.[1]?.replace(',', ''))).toBeGreaterThan(970);
    expect(Number(available?.[1]?.replace(',', ''))).toBeLessThan(990);
    expect(await page.locator('.curve svg').count()).toBe(1);
    await sendAndConfirm(page);
  });

  test('the return shows what holds it, and takes effect when nothing does', async () => {
    await report('Return to service');
    await page.getByText('have no effect yet').waitFor();
    for (const proof of [
      'No leaks under pressure',
      'Opens and closes fully',
      'Barrel drains down',
      'Flow test',
    ]) {
      const row = page.getByRole('group', { name: proof, exact: true });
      await row.getByText('Passed').click();
    }
    await page.getByText('Valve V-101 was recorded closed and is not recorded reopened.').waitFor();
    await button('It is reopened V-101').click();
    await page.getByText('This return takes effect').waitFor();
    await sendAndConfirm(page);
    expect((await strikes()).stage).toBe('back');
  });

  test('the crew records the party and does not see it again', async () => {
    await report('Vehicle, driver and insurer');
    await page.getByLabel('Plate').fill('TNS 4471');
    await page.getByLabel('Insurance company').fill('Lanternfish Mutual');
    await page.getByLabel('Report number').fill('TP-26-1');
    await sendAndConfirm(page);
    await link('What is missing next').click();
    await page.getByText('The story in order').waitFor();
    await page.getByRole('heading', { name: 'Return to service' }).waitFor();
    expect(await page.locator('.story').textContent()).not.toContain('Vehicle, driver');
  });

  test('the clerk finds the case, opens a claim and reads why each line is what it is', async () => {
    page = clerk.page;
    await page.reload();
    const pile = page.getByRole('table', { name: 'Back in service, no claim yet' });
    await pile.getByRole('link', { name: 'T-101' }).click();
    await page.getByRole('heading', { name: 'TNS 4471 · Lanternfish Mutual' }).waitFor();
    await page.getByRole('img', { name: 'Rebuilt' }).waitFor();

    await link('Open a claim').first().click();
    await page.getByRole('heading', { level: 1, name: 'Open a claim' }).waitFor();
    expect(await page.getByLabel('Claim number (needed)').inputValue()).toMatch(/^\d{4}-0001$/);
    await choose('Kind of payer', 'The driver’s insurer');
    await page.getByLabel('Name', { exact: true }).fill('Lanternfish Mutual');
    await sendAndConfirm(page);
    await link('To the claim').click();

    // Three hours of a crew lead by the demo's rate book, and its kit: each line opens.
    await page.getByText('Crew lead, worker w-101').click();
    await page
      .getByText(/3 h × \$/)
      .first()
      .waitFor();
    await page.getByText('Not legal advice; have counsel confirm.').waitFor();
  });

  test('the packet is previewed, issued, downloaded and recorded as sent', async () => {
    await button('Preview the packet').click();
    await page.getByText('The preview is ready.').waitFor({ timeout: 30_000 });
    await button('Issue the packet').click();
    await page.getByText('An issued packet never changes.').waitFor();
    await button('Issue it now').click();
    await page.getByText('Revision 1 is issued.').waitFor({ timeout: 30_000 });

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      button(/^Download the PDF/).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^\d{4}-0001-r1\.pdf$/);
    const stream = await download.createReadStream();
    const chunks: Buffer[] = [];
    for await (const chunk of stream as AsyncIterable<Buffer>) chunks.push(chunk);
    expect(Buffer.concat(chunks).subarray(0, 5).toString('latin1')).toBe('%PDF-');

    await link('Record the demand sent').first().click();
    await page.getByLabel('Sent to').fill('Claims, Lanternfish Mutual');
    await choose('How', 'Email');
    await sendAndConfirm(page);
    await link('Back to the claim').click();
    await page.getByText('Demands sent').waitFor();
  });

  test('everything is there once', async () => {
    const { strikeId } = await strikes();
    const { history } = await server.ask<{ history: HistoryEntry[] }>('manager', `/api/strikes/${strikeId}`);
    expect(history.map(({ recorded }) => recorded.submission.kind).sort()).toEqual([
      'flow-test',
      'out-of-service-notice',
      'party',
      'repair',
      'return-to-service',
      'strike',
      'valve-operation',
    ]);
  });
});
