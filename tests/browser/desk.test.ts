import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import {
  expectAccessible,
  expectEveryWord,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, refusal, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** The claims desk on the demo utility: cases at every stage, made through the same API. */
const { open, server, signIn, tolerate } = appTest(ports.desk, { load: 'town' });
let strikes: StrikeState[] = [];
let claims: ClaimState[] = [];

beforeAll(async () => {
  const known = await server.ask<{ strikes: StrikeState[]; claims: ClaimState[] }>('clerk', '/api/strikes');
  strikes = known.strikes;
  claims = known.claims;
}, 180_000);

const signed = (role: 'crew' | 'clerk' | 'manager', options: BrowserContextOptions = {}): Promise<Looking> =>
  signIn(role, options);
const clerk = async (): Promise<Page> => (await signed('clerk')).page;
const claimOf = (number: RegExp): ClaimState => claims.find(({ claimNumber }) => number.test(claimNumber))!;
const strikeOf = (claim: ClaimState): StrikeState =>
  strikes.find(({ memberIds }) => memberIds.includes(claim.strikeId))!;

describe('who may see it', () => {
  test('the crew cannot open the desk, and the server gives them no claim', async () => {
    tolerate(refusal);
    const { page } = await signed('crew');
    await goTo(page, server, '/desk/');
    await page.getByRole('heading', { name: 'This page is not for your role' }).waitFor();
    expect(await page.getByRole('table').count()).toBe(0);
    const status = await page.evaluate(async () => {
      const answer = await fetch('/api/claims', {
        headers: { authorization: `Bearer ${localStorage.getItem('hsl.token') ?? ''}` },
      });
      return answer.status;
    });
    expect(status).toBe(403);
    await expectAccessible(page);
  });

  test('who is not signed in is asked to, and nothing is shown', async () => {
    const { page } = await open();
    await page.goto(`${server.origin}/desk/`);
    await page.getByRole('heading', { name: 'Please sign in' }).waitFor();
    expect(await page.getByRole('table').count()).toBe(0);
    await page.getByRole('main').getByRole('link', { name: 'Sign in' }).click();
    await page.getByLabel('Sign-in link').fill('not a link');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('This is not a sign-in link.', { exact: false }).waitFor();
    // The whole link may be pasted.
    await page.getByLabel('Sign-in link').fill(`${server.origin}/desk/#token=${await server.token('clerk')}`);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('Signed in as', { exact: false }).waitFor();
    await page.getByRole('main').getByRole('link', { name: 'Claims desk' }).click();
    await page.getByRole('table').first().waitFor();
  });
});

describe('the list of cases', () => {
  test('has every strike once, by what the desk has to do next', async () => {
    const page = await clerk();
    await page.getByRole('table').first().waitFor();
    expect(await page.locator('.cases tbody tr').count()).toBe(strikes.length);
    const billed = page.getByRole('table', { name: 'Demand sent' });
    await billed.getByRole('link', { name: /^\d{4}-0001/ }).waitFor();
    await page.getByRole('table', { name: 'Claim open' }).getByText('The packet is not issued').waitFor();
  });

  test('shows held returns and breaches without being asked', async () => {
    const page = await clerk();
    await page.getByRole('table').first().waitFor();
    const held = strikes.filter(
      ({ breaches, returnedAt, returns }) =>
        breaches.length > 0 || (returnedAt === null && returns.length > 0),
    );
    expect(held.length).toBeGreaterThan(0);
    expect(await page.getByText('Look at this').count()).toBe(held.length);
    await goTo(page, server, `/desk/#/strike/${held[0]!.strikeId}`);
    await page.locator('main .warning').first().waitFor();
  });
});

describe('a claim', () => {
  test('whose number is taken is told so beside the number, is mended, and opens once', async () => {
    tolerate(refusal);
    const page = await clerk();
    const free = strikes.find(
      ({ returnedAt, memberIds }) =>
        returnedAt !== null && !claims.some(({ strikeId }) => memberIds.includes(strikeId)),
    )!;
    await goTo(page, server, `/desk/#/new/claim-opened?strike=${free.strikeId}`);
    const number = page.getByLabel('Claim number (needed)');
    const proposed = await number.inputValue();
    // One more than the highest of the claims that there are.
    const highest = Math.max(...claims.map(({ claimNumber }) => Number(claimNumber.slice(5))));
    expect(proposed).toBe(`${claimOf(/./).claimNumber.slice(0, 4)}-${String(highest + 1).padStart(4, '0')}`);
    await number.fill(claimOf(/-0001$/).claimNumber);
    await page.getByText('Not known yet', { exact: true }).click();
    await sendForm(page);
    const field = page.locator('.field', { has: number });
    await field.locator('.error').waitFor();
    expect(await field.locator('.error').textContent()).toContain(claimOf(/-0001$/).claimNumber);
    await expectAccessible(page);

    await number.fill(proposed);
    await sendAndConfirm(page);
    const now = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
    expect(now.claims.filter(({ strikeId }) => strikeId === free.strikeId)).toHaveLength(1);
    claims = now.claims;
  });

  test('keeps what was typed through a reload', async () => {
    const page = await clerk();
    await goTo(page, server, `/desk/#/new/claim-opened?strike=${strikes[0]!.strikeId}`);
    await page.getByLabel('Attention of').fill('Property damage');
    await page.reload();
    expect(await page.getByLabel('Attention of').inputValue()).toBe('Property damage');
  });

  test('shows the statement as the server has it, to the cent, and why for each line', async () => {
    const page = await clerk();
    const claim = claimOf(/-0001$/);
    const statement = await server.ask<Statement>('clerk', `/api/claims/${claim.claimId}/statement`);
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    const dollars = (cents: number): string =>
      `$${(cents / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`;
    await page.locator('.sum.total').getByText(dollars(statement.totalCents)).waitFor();
    const lines = page.locator('.statement > li');
    expect(await lines.count()).toBe(statement.lines.length);
    for (const [index, line] of statement.lines.entries()) {
      await lines.nth(index).locator('summary').click();
      const text = (await lines.nth(index).textContent()) ?? '';
      expect(text).toContain(dollars(line.amountCents ?? 0));
      expect(text).toContain(line.arithmetic);
      // By their names and times, and a link to each, instead of bare ids.
      if (line.submissionIds.length > 0) expect(text).toContain('From these submissions');
      if (line.authority) expect(text).toContain(line.authority.title);
    }
    await page.getByText('Not legal advice; have counsel confirm.').waitFor();
    await expectAccessible(page);
  });

  test('that cannot be had says why, and is not shown as empty', async () => {
    tolerate(noSignal);
    const page = await clerk();
    await page.route('**/statement', (route) => route.fulfill({ status: 503, body: '' }));
    await goTo(page, server, `/desk/#/claim/${claimOf(/-0001$/).claimId}`);
    await page.getByText('The server has trouble.', { exact: false }).waitFor();
    expect(await page.locator('.sum.total').count()).toBe(0);
    await page.unroute('**/statement');
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.locator('.sum.total').waitFor();
  });

  test('is issued by keyboard, with progress, and the issued packet stays in the list', async () => {
    const page = await clerk();
    const claim = claimOf(/-0002$/);
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    await page.getByRole('button', { name: 'Issue the packet' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Issue it now' }).waitFor();
    // The second button has taken the focus of the first.
    await page.waitForFunction(() => document.activeElement?.textContent?.includes('Issue it now'));
    await page.keyboard.press('Enter');
    await page.locator('.working').waitFor();
    await page.getByText('Revision 1 is issued.').waitFor({ timeout: 30_000 });
    await page.reload();
    await page.getByText('Issued packets').waitFor();
    await page.getByRole('button', { name: 'Download the PDF Revision 1' }).waitFor();
  });
});

describe('a case file', () => {
  test('says of a picture that is too large to be shown why, and that it is kept', async () => {
    const page = await clerk();
    const strike = strikeOf(claimOf(/-0001$/));
    await page.route('**/api/evidence/*?as=display', (route) =>
      route.fulfill({
        json: { url: '/local/evidence/none', shows: 'original', undisplayable: 'too-large' },
      }),
    );
    await goTo(page, server, `/desk/#/strike/${strike.strikeId}`);
    const first = page.locator('.exhibits figure').first();
    await first
      .getByText(
        'Too large to be shown: over 25 MB, or more than 100 megapixels (HEIC: 52). The original is kept as it came and can be downloaded.',
      )
      .waitFor();
    await first.getByRole('button', { name: /^Download the original/ }).waitFor();
    expect(await page.locator('.exhibits img').count()).toBe(0);
  });

  test('has the story, the parties and the evidence, with what is awaited said', async () => {
    const page = await clerk();
    const strike = strikeOf(claimOf(/-0001$/));
    const asked: Promise<Record<string, string>>[] = [];
    page.on('request', (request) => {
      if (new URL(request.url()).pathname.startsWith('/local/evidence/')) asked.push(request.allHeaders());
    });
    await goTo(page, server, `/desk/#/strike/${strike.strikeId}`);
    await page.locator('.exhibits img').first().waitFor();
    await page.waitForFunction(
      (count) => document.querySelectorAll('.exhibits img').length === count,
      strike.exhibits.length,
    );
    // Each is drawn, and what could be drawn has a size.
    const widths = (): Promise<number[]> =>
      page.locator('.exhibits img').evaluateAll((images) =>
        (images as HTMLImageElement[]).map((image) => {
          // One below the fold is read only when it comes into sight.
          image.loading = 'eager';
          return image.naturalWidth;
        }),
      );
    await expect
      .poll(async () => (await widths()).filter((width) => width > 0).length)
      .toBe(strike.exhibits.length);
    // When it was captured and by whose word; what the file does not say is said to be missing.
    const figure = page.locator('.exhibits figure').first();
    await figure.getByText(/^Captured .*source: /).waitFor();
    await figure.getByText('Place, camera and clocks').click();
    await figure.getByText(/Camera: |The file holds no data of its capture/).waitFor();
    await shot(page, 'desk-evidence', '.exhibits');
    // The store is given the signed address, and never the token of the sign-in.
    const headers = await Promise.all(asked);
    expect(headers).toHaveLength(strike.exhibits.length);
    for (const each of headers) expect(each).not.toHaveProperty('authorization');
    const times = await page
      .locator('.story time')
      .evaluateAll((all) => all.map((time) => time.getAttribute('datetime') ?? ''));
    expect(times.length).toBeGreaterThan(4);
    expect([...times].sort()).toEqual(times);
    await expectAccessible(page);
  });

  test('a party is corrected with a reason, and both stand in the story', async () => {
    const page = await clerk();
    const strike = strikeOf(claimOf(/-0001$/));
    await goTo(page, server, `/desk/#/strike/${strike.strikeId}`);
    await page.locator('.case-side .card').getByRole('link', { name: 'Correct this' }).click();
    await page.getByRole('heading', { level: 1, name: 'Correction: Vehicle, driver and insurer' }).waitFor();
    await page.getByLabel('Policy number').fill('HC-9999');
    await sendForm(page);
    // A correction without its reason is none.
    await page.getByText('Say why.').first().waitFor();
    await page.getByLabel('Reason').fill('Misread at the curb');
    await sendAndConfirm(page);
    await page.getByRole('link', { name: 'What is missing next' }).click();
    await page.locator('.case-side .card').getByText('HC-9999').waitFor();
    const story = page.locator('.story');
    await story.getByText('Misread at the curb').waitFor();
    await story.getByRole('heading', { name: 'Vehicle, driver and insurer Corrected' }).waitFor();
  });

  test('a fact is withdrawn and still stands in the story as such', async () => {
    const { page } = await signed('manager');
    const strike = strikeOf(claimOf(/-0001$/));
    await goTo(page, server, `/crew/#/strike/${strike.strikeId}`);
    await page.getByRole('link', { name: 'Correct this Marked, or dispatch told' }).click();
    await page.getByLabel('Reason').fill('Told twice');
    await page.getByLabel(/^Withdraw it altogether/).check();
    await sendAndConfirm(page);
    await page.getByRole('link', { name: 'What is missing next' }).click();
    await page.getByRole('heading', { name: 'Marked, or dispatch told Withdrawn' }).waitFor();
  });
});

describe('every desk screen', () => {
  test.each([
    ['1280 light, English', { viewport: { width: 1280, height: 900 }, colorScheme: 'light' as const }, 'en'],
    ['320 dark, Spanish', { viewport: { width: 320, height: 640 }, colorScheme: 'dark' as const }, 'es'],
  ])(
    'passes axe and does not scroll sideways: %s',
    async (_name, options, locale) => {
      const { page } = await signed('clerk', options);
      await page.evaluate((chosen) => {
        localStorage.setItem('hsl.locale', JSON.stringify(chosen));
      }, locale);
      const claim = claimOf(/-0001$/);
      const held = strikes.find(({ returnedAt, returns }) => returnedAt === null && returns.length > 0)!;
      for (const path of [
        '/desk/',
        `/desk/#/strike/${claim.strikeId}`,
        `/desk/#/strike/${held.strikeId}`,
        `/desk/#/claim/${claim.claimId}`,
        `/desk/#/new/claim-opened?strike=${held.strikeId}`,
        `/desk/#/new/demand-sent?claim=${claim.claimId}`,
        `/desk/#/new/party?strike=${held.strikeId}`,
        '/desk/#/outbox',
      ]) {
        await goTo(page, server, path);
        await page.waitForFunction(() => !location.hash.startsWith('#/new/'));
        await page.waitForLoadState('networkidle');
        await expectAccessible(page).catch((error: unknown) => {
          throw new Error(`${path}: ${String(error)}`);
        });
        await expectNoSideScroll(page).catch((error: unknown) => {
          throw new Error(`${path}: ${String(error)}`);
        });
        await expectEveryWord(page).catch((error: unknown) => {
          throw new Error(`${path}: ${String(error)}`);
        });
      }
    },
    120_000,
  );
});
