import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { bareStrike, cleanBreak, flowTestOf } from '../../infra/local/demo/bodies.ts';
import { Teller } from '../../infra/local/demo/teller.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import {
  expectAccessible,
  expectNoSideScroll,
  goTo,
  pickHydrant,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** T-105 was tested two years ago, struck, and tested again after its repair, when it passed a good third less. */
const { server, signIn } = appTest(ports.flowTest);

beforeAll(async () => {
  const teller = new Teller(new Date(), 11);
  const strikeId = teller.id(60);
  const readings = (hoursAgo: number, pitotPsi: number, purpose: 'routine' | 'after-repair') =>
    flowTestOf(teller, {
      rated: 'T-105',
      flowed: 'T-104',
      hoursAgo,
      staticPsi: 86,
      residualPsi: 42,
      pitotPsi,
      purpose,
    });
  teller.tell('flow-test', { type: 'hydrant', hydrantId: 'T-105' }, 17_520, readings(17_520, 28, 'routine'));
  teller.tell('strike', { type: 'strike', strikeId }, 60, {
    ...bareStrike,
    hydrantId: 'T-105',
    struckAt: teller.hoursAgo(60),
    struckAtBasis: 'witnessed',
    found: cleanBreak,
  });
  teller.tell('flow-test', { type: 'strike', strikeId }, 20, readings(20, 12, 'after-repair'));
  for (const { submission } of teller.told) await server.ask('crew', '/api/submissions', submission);
}, 180_000);

const look = (width = 360): Promise<Looking> => signIn('crew', { viewport: { width, height: 800 } });
const form = (page: Page, hydrantId: string): Promise<void> =>
  goTo(page, server, `/crew/#/new/flow-test?hydrant=${hydrantId}`);
const pressures = async (page: Page, staticPsi: string, residualPsi: string): Promise<void> => {
  await page.getByLabel('Static pressure (needed)').fill(staticPsi);
  await page.getByLabel('Residual pressure (needed)').fill(residualPsi);
};
const latestOf = async (hydrantId: string): Promise<BodyOf<'flow-test'>> => {
  const { flowTests } = await server.ask<{ flowTests: { submission: { body: BodyOf<'flow-test'> } }[] }>(
    'crew',
    `/api/hydrants/${hydrantId}`,
  );
  return flowTests
    .map(({ submission }) => submission.body)
    .sort((a, b) => Date.parse(a.testedAt) - Date.parse(b.testedAt))
    .at(-1)!;
};

describe('the form', () => {
  test('answers in a line with what it stands on, and takes every way of measuring a flow', async () => {
    const { page } = await look();
    await form(page, 'T-101');
    await pressures(page, '86', '42');
    await pickHydrant(page, 'Hydrant that flowed', 'T-102');
    // No shape is taken for granted: 0.90 for a 0.70 outlet is a quarter too much flow.
    await page.getByLabel('Pitot pressure').first().fill('28');
    await page.getByText('Fill in static, residual, and for each outlet').waitFor();
    await page.getByText('Square and sharp').click();
    // K. Kolb, course slides on water supply, slides 15 and 16 (seen): 789 gpm, about 980 gpm at 20 psi.
    await page.locator('.figures').getByText('789 gpm').waitFor();
    const line = page.locator('.answer-line');
    expect(await line.textContent()).toMatch(
      /^B, 9[78]\d gpm, [\d,]+ to [\d,]+ at 95%, class B (over )?\d\d% sure$/,
    );
    await page.getByText('What it stands on').click();
    await page.getByText(/Taken as: a pressure gauge to 200 psi, good to 2% of it/).waitFor();
    await expectAccessible(page);
    await shot(page, 'form-360');

    // A measured diameter and known gauges make it surer.
    const width = async (): Promise<number> => {
      const [, low = '', high = ''] =
        /, ([\d,]+) to ([\d,]+) at/.exec((await line.textContent()) ?? '') ?? [];
      return Number(high.replace(',', '')) - Number(low.replace(',', ''));
    };
    const before = await width();
    await page.getByText('Measured inside', { exact: true }).click();
    await page.getByRole('heading', { name: 'Gauges' }).click();
    await page.getByRole('button', { name: 'Add a gauge' }).click();
    await page.getByLabel('Gauge number (needed)').fill('G-7');
    for (const read of ['Static pressure', 'Residual pressure', 'Pitot pressure'])
      await page.getByRole('checkbox', { name: read }).check();
    await page.getByLabel('Range up to').fill('100');
    await page.getByLabel('Accuracy, plus or minus, of its range').fill('0.5');
    await page.getByLabel('Read to the nearest').fill('0.5');
    await page.getByLabel('Calibrated on').fill('2020-01-02');
    await page.getByText(/Gauge G-7 was last calibrated on Jan 2, 2020/).waitFor();
    expect(await width()).toBeLessThan(before);

    // Several outlets: a pumper outlet with its factor, a diffuser with its K, a meter.
    const outlet = (number: number) => page.getByRole('group', { name: `Outlet ${number}`, exact: true });
    await page.getByRole('button', { name: 'Add an outlet' }).click();
    await outlet(2).getByText('Pumper nozzle, by pitot').click();
    await outlet(2).getByLabel('Inside width').fill('4');
    await outlet(2).getByText('Smooth and rounded').click();
    await outlet(2).getByLabel('Pitot pressure').fill('10');
    // 29.84 × 0.9 × 16 × √10 × 0.83; the factor 0.83 from NFPA 291 as quoted (second-hand).
    await page.getByText('1,128 gpm, with the pumper outlet factor 0.83 for 10 psi').waitFor();
    await page.getByRole('button', { name: 'Add an outlet' }).click();
    await outlet(3).getByText('Diffuser', { exact: true }).click();
    await outlet(3).getByLabel('K of the diffuser').fill('167.85');
    await outlet(3).getByLabel('Pitot pressure').fill('40');
    await outlet(3).getByLabel('Accuracy').fill('3');
    // 167.85 is a smooth 2½ in outlet, which gives 1,061 gpm at 40 psi (engineer's post, second-hand; there with 29.83).
    await page.getByText('1,062 gpm').waitFor();
    await page.getByRole('button', { name: 'Add a flow hydrant' }).click();
    await pickHydrant(page, 'Hydrant that flowed', 'T-103');
    const second = page.getByRole('group', { name: 'Flow hydrant 2' });
    await second.getByText('Flow meter', { exact: true }).click();
    await second.getByLabel('Flow on the meter').fill('500');
    await page.getByText('Outlet 4 of T-103').waitFor();
    await page.getByText('Routine', { exact: true }).click();
    await expectNoSideScroll(page);
    await expectAccessible(page);
    await shot(page, 'form-many-360');
    await sendAndConfirm(page);

    const { flowHydrants, gauges } = await latestOf('T-101');
    expect(flowHydrants.map(({ outlets }) => outlets)).toEqual([
      [
        {
          kind: 'hose',
          diameterIn: 2.5,
          diameterBasis: 'measured',
          shape: 'square',
          coefficient: 0.8,
          pitotPsi: 28,
        },
        {
          kind: 'pumper',
          diameterIn: 4,
          diameterBasis: 'nominal',
          shape: 'rounded',
          coefficient: 0.9,
          pitotPsi: 10,
        },
        { kind: 'diffuser', kGpmPerSqrtPsi: 167.85, pitotPsi: 40, accuracyFraction: 0.03 },
      ],
      [{ kind: 'meter', flowGpm: 500 }],
    ]);
    expect(gauges).toEqual([
      {
        gaugeId: 'G-7',
        reads: ['static', 'residual', 'pitot'],
        rangePsi: 100,
        accuracyFraction: 0.005,
        resolutionPsi: 0.5,
        calibratedOn: '2020-01-02',
      },
    ]);
  });

  test('gives no class for too small a drop, and says what to do', async () => {
    const { page } = await look();
    await form(page, 'T-102');
    await pressures(page, '90', '85');
    await page.getByText('One meter for all of it').click();
    await page.getByLabel('Metered flow').fill('1140');
    await page.getByText('No class: the pressure fell too little to rate the hydrant').waitFor();
    await page.getByText(/Open another outlet or another hydrant and read everything again/).waitFor();
    // 4,740 gpm is what such a test "projects" to; nobody may see it.
    expect(await page.getByText(/4,7\d\d gpm/).count()).toBe(0);
    expect(await page.locator('.class-mark').count()).toBe(0);
  });

  test('shows what only the last test can show', async () => {
    const { page } = await look();
    await form(page, 'T-105');
    await pressures(page, '62', '40');
    await page.getByText('One meter for all of it').click();
    await page.getByLabel('Metered flow').fill('1600');
    await page.getByText(/The static pressure is 24 psi lower than at the last test/).waitFor();
    await page.getByText(/by the last test .* no more than/).waitFor();
    await page.getByText(/The capacity rose by/).waitFor();
  });

  test('tells everything at once, in the reader’s units', async () => {
    const { page } = await look();
    await page.getByRole('button', { name: 'Metric' }).click();
    await form(page, 'T-103');
    await pressures(page, '500', '500');
    await page.getByLabel('Pitot pressure').fill('1400');
    await sendForm(page);
    const lines = await page
      .getByRole('group', { name: /things to put right/ })
      .getByRole('listitem')
      .allTextContents();
    expect(lines.join('\n')).toContain('Residual pressure: Residual must be below static');
    // 200 psi is 1,378.95 kPa (NIST SP 811, second-hand): whoever types the limit as shown is within it.
    expect(lines.find((line) => line.includes('Pitot pressure'))).toContain('1,378 kPa');
    expect(lines.some((line) => line.includes('Hydrant that flowed'))).toBe(true);
    expect(lines.some((line) => line.includes('psi'))).toBe(false);
    // The K of a diffuser in metric is 14.4 times that in US units (NFPA 13, from memory).
    await page.getByText('Diffuser', { exact: true }).click();
    await page.getByLabel('K of the diffuser').fill('144');
    await page.getByText('L/min/√bar').waitFor();
    await page.getByRole('button', { name: 'US', exact: true }).click();
    expect(Number(await page.getByLabel('K of the diffuser').inputValue())).toBeCloseTo(10, 1);
  });

  test('classes, names and colors are the utility’s', async () => {
    const { page } = await look();
    await page.route('**/api/utility', async (route) => {
      const answer = await route.fetch();
      const known = (await answer.json()) as object;
      const flowTest = {
        classBands: [
          { hydrantClass: 'A', name: 'I', fromGpm: 900, color: 'yellow' },
          { hydrantClass: 'B', name: 'II', fromGpm: 0, color: 'black' },
        ],
        ratingResidualPsi: 25,
      };
      await route.fulfill({ response: answer, json: { ...known, flowTest } });
    });
    await form(page, 'T-104');
    await form(page, 'T-104');
    await pressures(page, '86', '42');
    await page.getByText('One meter for all of it').click();
    await page.getByLabel('Metered flow').fill('789');
    await page.getByText(/^I, 9\d\d gpm, .* class I /).waitFor();
    await page.locator('.class-mark.color-yellow').waitFor();
    await page.getByText('Capacity at 25 psi').waitFor();
    expect(await page.getByLabel('Rate at a residual of').inputValue()).toBe('25');
  });
});

describe('the hydrant’s screen', () => {
  test('shows the history with its intervals, flags the loss, and compares before and after', async () => {
    const { page } = await look();
    await goTo(page, server, '/crew/#/hydrant/T-105');
    await page.getByText('Loss of capacity').first().waitFor();
    await page
      .getByText(/The capacity fell by 3\d% since/)
      .first()
      .waitFor();
    const sides = page.locator('.side-by-side .card');
    expect(await sides.count()).toBe(2);
    expect(await sides.nth(0).textContent()).toMatch(/Before the repair.*gpm, [\d,]+ to [\d,]+ at 95%/);
    expect(await sides.nth(1).textContent()).toMatch(/After the repair.*gpm, [\d,]+ to [\d,]+ at 95%/);
    await page.getByRole('img', { name: 'Rated capacity of T-105 over time' }).waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'hydrant-360');

    const wide = await look(1280);
    await goTo(wide.page, server, '/crew/#/hydrant/T-105');
    await wide.page.locator('.side-by-side').waitFor();
    await shot(wide.page, 'hydrant-1280');
    await form(wide.page, 'T-105');
    await pressures(wide.page, '86', '42');
    await pickHydrant(wide.page, 'Hydrant that flowed', 'T-104');
    await wide.page.getByText('Square and sharp').click();
    await wide.page.getByLabel('Pitot pressure').fill('28');
    await wide.page.getByText('Against the last test').waitFor();
    await shot(wide.page, 'form-1280');
  });
});
