import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { NetworkForHydrant } from '../../shared/network/forHydrant.ts';
import { formatQuantity } from '../../shared/units/format.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import {
  appServer,
  expectAccessible,
  expectNoSideScroll,
  goTo,
  signedIn,
  type AppServer,
  type Looking,
} from '../support/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { ports } from '../support/ports.ts';

/** What the network model says, as a crew and a desk look at it: the demo town with its invented model. */
let browser: Browser;
let server: AppServer;
let strike: StrikeState;
let open: Looking[] = [];

beforeAll(async () => {
  [server, browser] = await Promise.all([appServer(ports.network, 'town'), launchBrowser()]);
  const { strikes } = await server.ask<{ strikes: StrikeState[] }>('crew', '/api/strikes');
  // One whose hydrant was tested and whose water was shut: everything there is to show.
  for (const one of strikes.filter(
    ({ hydrantId, waterShutAt }) => hydrantId !== null && waterShutAt !== null,
  )) {
    const { flowTests } = await server.ask<{ flowTests: unknown[] }>(
      'crew',
      `/api/hydrants/${one.hydrantId!}`,
    );
    if (flowTests.length > 0) strike = one;
  }
}, 240_000);
afterEach(async () => {
  for (const each of open) await each.close();
  open = [];
});
afterAll(async () => {
  await browser?.close();
  await server?.end();
});

const look = async (role: 'crew' | 'clerk', options: BrowserContextOptions = {}): Promise<Looking> => {
  const looking = await signedIn(browser, server, role, options);
  open.push(looking);
  return looking;
};
const phone: BrowserContextOptions = { viewport: { width: 360, height: 740 } };
/** Looked at by a person: `SHOTS=folder`. */
const shot = async (page: Page, name: string): Promise<void> => {
  const folder = process.env['SHOTS'];
  if (folder !== undefined) await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
};
const link = (page: Page) => page.getByRole('link', { name: 'What the network model says' });

describe('what the network model says', () => {
  test('a crew goes there from a hydrant, and sees the model beside the field test', async () => {
    const { page } = await look('crew', phone);
    const id = strike.hydrantId!;
    await goTo(page, server, `/crew/#/hydrant/${id}`);
    await link(page).click();
    await page.getByRole('heading', { name: `Network model: ${id}` }).waitFor();
    const table = page.getByRole('table', { name: 'The model beside the latest field test' });
    await table.waitFor({ timeout: 20_000 });
    const said = await server.ask<NetworkForHydrant>('crew', `/api/network/${id}`);
    const rows = await table.getByRole('row').allInnerTexts();
    expect(rows.join('\n')).toContain(
      formatQuantity(said.available.flowGpm, 'gpm', { system: 'us', locale: 'en' }),
    );
    expect(said.field).not.toBeNull();
    expect(await page.getByText('It is not a measurement').count()).toBe(1);
    expect(await page.getByText('Nov 1, 2025', { exact: false }).count()).toBe(1);
    await shot(page, 'network-phone');
    await expectNoSideScroll(page);
    await expectAccessible(page);
  }, 60_000);

  test('closing pipes shows the pressures before and after, and a hydrant that gets no water', async () => {
    const { page } = await look('crew', phone);
    const id = strike.hydrantId!;
    const { links, available } = await server.ask<NetworkForHydrant>('crew', `/api/network/${id}`);
    await goTo(page, server, `/crew/#/network/${id}`);
    await page.getByRole('button', { name: 'Show the pressures' }).click();
    await page.getByText('Choose at least one pipe or valve to close.').waitFor();
    // Every pipe that ends at this hydrant's node: it is cut off then, whatever a solver says.
    const own = links.filter(({ from, to }) => [from, to].includes(available.at.nodeId));
    for (const { linkId } of own) await page.getByLabel(`Pipe ${linkId}:`, { exact: false }).check();
    await page.getByRole('button', { name: 'Show the pressures' }).click();
    const table = page.getByRole('table', { name: /^With .* closed$/ });
    await table.waitFor({ timeout: 20_000 });
    const [, first = ''] = await table.getByRole('row').allInnerTexts();
    expect(first).toContain(id);
    expect(first).toContain('no water: cut off from every source');
    expect(await table.getByRole('row').count()).toBe(10);
    await shot(page, 'network-closing-phone');
    await expectNoSideScroll(page);
    await expectAccessible(page);
  }, 60_000);

  test('a desk goes there from the case file, in Spanish and metric, and sees the bound of the water lost', async () => {
    const { page } = await look('clerk', { locale: 'es-US' });
    await goTo(page, server, `/desk/#/strike/${strike.strikeId}`);
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('button', { name: 'Métrico' }).click();
    await page.getByRole('link', { name: 'Lo que dice el modelo de la red' }).click();
    await page
      .getByRole('heading', { name: 'Límite superior del agua perdida' })
      .waitFor({ timeout: 20_000 });
    await shot(page, 'network-desk-es');
    const text = await page.locator('main').innerText();
    expect(text).toMatch(/kPa/);
    expect(text).toMatch(/L\/min/);
    expect(text).not.toMatch(/\b(psi|gpm)\b/);
    await expectAccessible(page);
  }, 60_000);
});
