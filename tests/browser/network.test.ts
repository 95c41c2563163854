import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { NetworkForHydrant } from '../../shared/network/forHydrant.ts';
import { formatQuantity } from '../../shared/units/format.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { expectAccessible, expectNoSideScroll, goTo } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** What the network model says, as a crew and a desk look at it: the demo town with its invented model. */
const { server, signIn } = appTest(ports.network, { load: 'town' });
let strike: StrikeState;

beforeAll(async () => {
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

const look = (role: 'crew' | 'clerk', options: BrowserContextOptions = {}): Promise<Looking> =>
  signIn(role, options);
const phone: BrowserContextOptions = { viewport: { width: 360, height: 740 } };
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
