import { beforeAll, describe, expect, test } from 'vitest';
import type { ClaimState } from '../../shared/claims/state.ts';
import type { ClaimLetter } from '../../shared/letters/answer.ts';
import { expectAccessible, expectNoSideScroll, goTo } from '../support/app.ts';
import { appTest, shot } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';

/** A claim's letter on the desk: read, edited, previewed, kept, recorded. */
const { server, signIn } = appTest(ports.letter, { load: 'town' });
let claim: ClaimState;
beforeAll(async () => {
  const { claims } = await server.ask<{ claims: ClaimState[] }>('clerk', '/api/claims');
  claim = claims.find(({ claimNumber }) => /-0002$/.test(claimNumber))!;
}, 240_000);

describe('the letter of a claim', () => {
  test('is written with fields put in by button, survives a reload, is previewed and recorded', async () => {
    const { page } = await signIn('clerk');
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    await page.getByText('Demand to a driver’s insurer').waitFor();
    await page.getByText('Read and edit the letter').click();
    const area = page.getByLabel('Text of the letter');
    expect(await area.inputValue()).toContain('{demand}');
    // As it will read: no field is left.
    expect(await page.locator('.letter-preview').textContent()).not.toMatch(/[{}[\]]/);
    await shot(page, 'letter-desk', '#letter');

    await area.fill('Dear people,\n\nplease pay ');
    await page.getByText('Put a field into the text').click();
    await page.getByRole('button', { name: 'What this claim demands' }).click();
    expect(await area.inputValue()).toBe('Dear people,\n\nplease pay {demand}');
    await page.reload();
    await page.locator('.letter-preview').waitFor();
    expect(await area.inputValue()).toBe('Dear people,\n\nplease pay {demand}');
    expect(await page.locator('.letter-preview').textContent()).toMatch(/please pay \$[\d,]+\.\d\d$/);

    await area.fill('Pay {demnd}, <b>now</b>.');
    await page.getByText('merge field “demnd” that does not exist', { exact: false }).first().waitFor();
    expect(await page.locator('.letter-preview b').count()).toBe(0);
    await expectAccessible(page);

    // A slip in the text is put right before it is recorded, not afterwards.
    await area.fill('Pay {demand to us.');
    await page.getByRole('button', { name: 'Record this text' }).click();
    await page.getByText('Not recorded. Put right what is said above first.').waitFor();
    expect(await area.evaluate((at) => at === document.activeElement)).toBe(true);
    const before = await server.ask<ClaimLetter>('clerk', `/api/claims/${claim.claimId}/letter`);
    expect(before.text).not.toContain('{demand to us');

    await page.getByRole('button', { name: 'Back to the template' }).click();
    expect(await area.inputValue()).toContain('To whom it may concern');
    await area.fill('Please pay {demand} to:\n\n{remitTo}');
    await page.getByRole('button', { name: 'Record this text' }).click();
    await page.getByText('Recorded. The next packet opens with it.').waitFor();
    const now = await server.ask<ClaimLetter>('clerk', `/api/claims/${claim.claimId}/letter`);
    expect(now.text).toBe('Please pay {demand} to:\n\n{remitTo}');
    expect(now.submissionId).not.toBeNull();
    await page.getByText('This is the text on record.').waitFor();
  });

  test('fits a phone, in Spanish and in the dark, with nothing to scroll sideways', async () => {
    const looking = await signIn('clerk', {
      viewport: { width: 360, height: 740 },
      colorScheme: 'dark',
    });
    const { page } = looking;
    await page.evaluate(() => {
      localStorage.setItem('hsl.locale', JSON.stringify('es'));
    });
    await goTo(page, server, `/desk/#/claim/${claim.claimId}`);
    await page.getByText('Leer y editar la carta').click();
    await page.getByText('Poner un campo en el texto').click();
    await expectNoSideScroll(page);
    await expectAccessible(page);
    await shot(page, 'letter-phone', '#letter');
    await looking.close();
  });
});
