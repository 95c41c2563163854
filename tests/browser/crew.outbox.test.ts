import type { Page, Route } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { photoBytes } from '../../infra/local/demo/photos.ts';
import {
  expectAccessible,
  expectNoSideScroll,
  goTo,
  minutesAgo,
  pickHydrant,
  sendAndConfirm,
  sendForm,
} from '../support/app.ts';
import { appTest, noSignal, refusal, shot } from '../support/browserTest.ts';
import { exifBlock } from '../support/exifBlock.ts';
import { heicFile } from '../support/heicFile.ts';
import { ports } from '../support/ports.ts';
import { historyOf, strikesAt } from '../support/records.ts';

/** Nothing typed is lost, nothing is sent twice, and nobody believes that dispatch knows before the server has said so. */
const { server, signIn } = appTest(ports.outbox, { tolerated: [noSignal, refusal] });

const crew = async (): Promise<Page> => (await signIn('crew')).page;
const newStrike = async (page: Page, hydrantId: string): Promise<void> => {
  await goTo(page, server, '/crew/#/new/strike');
  await page.getByRole('heading', { name: 'Which hydrant' }).waitFor();
  await pickHydrant(page, 'Hydrant', hydrantId);
  await page.getByRole('button', { name: `Change ${hydrantId}` }).waitFor();
};
const notSent = (page: Page) => page.getByText('Tell dispatch by radio or phone now.');

describe('what is typed', () => {
  test('is there after a reload at the last keystroke, and in the list of unfinished forms', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    await page.getByText('Full bore').click();
    await page.getByLabel('Marked out of service at').fill('2026-03-04T02:10');
    await page.getByLabel('Who took the message').fill('Dispatcher Van');
    await page.getByLabel('Who took the message').press('e');
    await page.reload();

    expect(await page.getByLabel('Full bore').isChecked()).toBe(true);
    expect(await page.getByLabel('Marked out of service at').inputValue()).toBe('2026-03-04T02:10');
    expect(await page.getByLabel('Who took the message').inputValue()).toBe('Dispatcher Vane');

    await goTo(page, server, '/crew/');
    await page.getByText('Unfinished forms').waitFor();
    await page.getByRole('link', { name: 'Strike report' }).click();
    expect(await page.getByLabel('Who took the message').inputValue()).toBe('Dispatcher Vane');

    await page.getByRole('button', { name: 'Discard this form' }).click();
    await page.getByRole('button', { name: 'Discard it for good' }).click();
    await page.getByRole('heading', { name: 'Hydrants' }).waitFor();
    expect(await page.getByText('Unfinished forms').count()).toBe(0);
  });

  test('keeps half a date apart from no date at all', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    // Only the month is typed; the browser's control then has no value to give.
    await page.getByLabel('Water shut off at').pressSequentially('03');
    await sendForm(page);
    await page.getByText('Give both the date and the time.').first().waitFor();
  });
});

describe('with no server', () => {
  test('an outage says “not sent”, waits, and is sent once when the server is back', async () => {
    const page = await crew();
    await newStrike(page, 'T-102');
    await server.kill();
    await sendForm(page);
    await notSent(page).first().waitFor();
    await page.getByRole('link', { name: '555-0111' }).first().waitFor();
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await expectAccessible(page);

    // On every other screen too.
    await page.evaluate(() => {
      location.hash = '#/find';
    });
    await page.getByRole('heading', { name: 'Find a hydrant' }).waitFor();
    await notSent(page).waitFor();

    await server.start();
    await notSent(page).waitFor({ state: 'detached', timeout: 30_000 });
    const strikes = await strikesAt(server, 'T-102');
    expect(strikes).toHaveLength(1);
    expect(await historyOf(server, strikes[0]!.strikeId)).toHaveLength(1);
  });

  test('the entry outlives the browser’s page', async () => {
    const page = await crew();
    await newStrike(page, 'T-103');
    await page.route('**/api/submissions', (route) => route.abort());
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await page.unroute('**/api/submissions');
    // The page is opened anew, as after a killed browser: the entry is there and goes.
    await goTo(page, server, '/crew/#/outbox');
    await page.getByText('Recorded lately').waitFor();
    expect(await strikesAt(server, 'T-103')).toHaveLength(1);
  });

  test('a browser that is killed while it sends has lost nothing', async () => {
    const page = await crew();
    await newStrike(page, 'T-104');
    const asked = new Promise<void>((resolve) => {
      // The request leaves and is never answered.
      void page.route('**/api/submissions', () => resolve());
    });
    await sendForm(page);
    await asked;
    const next = await page.context().newPage();
    await page.close({ runBeforeUnload: false });
    await next.goto(`${server.origin}/crew/#/outbox`);
    await next.getByText('Recorded lately').waitFor({ timeout: 10_000 });
    expect(await strikesAt(server, 'T-104')).toHaveLength(1);
  });

  test('an answer that was lost on the way is asked for again, and the report stands once', async () => {
    const page = await crew();
    await newStrike(page, 'T-106');
    let lost = 0;
    await page.route('**/api/submissions', async (route: Route) => {
      await route.fetch();
      lost += 1;
      await route.abort();
    });
    await sendForm(page);
    await page.getByText('No connection.', { exact: false }).waitFor();
    expect(lost).toBe(1);
    await expect.poll(async () => (await strikesAt(server, 'T-106')).length, { timeout: 10_000 }).toBe(1);

    await page.unroute('**/api/submissions');
    await page.getByRole('button', { name: 'Send now' }).click();
    await page.getByText('Recorded.', { exact: true }).waitFor();
    const [strike] = await strikesAt(server, 'T-106');
    expect(await historyOf(server, strike!.strikeId)).toHaveLength(1);
  });

  test('a store that is down is no refusal', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    await page.route('**/api/submissions', (route) =>
      route.fulfill({ status: 503, contentType: 'application/problem+json', body: '{"problems":[]}' }),
    );
    await sendForm(page);
    await notSent(page).first().waitFor();
    await page.getByText('The server has trouble.', { exact: false }).first().waitFor();
    await page.unroute('**/api/submissions');
    await page.getByRole('button', { name: 'Send now' }).click();
    await page.getByText('Recorded.', { exact: true }).waitFor();
  });
});

describe('a refused entry', () => {
  test('stays, says why beside its field, is mended and sent', async () => {
    const page = await crew();
    await goTo(page, server, '/crew/#/new/outage?hydrant=T-105');
    await page.getByText('Frozen').click();
    await page.getByLabel('Note').fill('ice');
    // A check that only the server has, as far as this page knows.
    await page.route('**/api/submissions', (route) =>
      route.fulfill({
        status: 422,
        contentType: 'application/problem+json',
        body: JSON.stringify({
          title: 'Not valid',
          problems: [{ path: 'body.note', code: 'too-short', params: { minimum: 10 }, message: '' }],
        }),
      }),
    );
    await sendForm(page);
    const field = page.locator('.field', { has: page.getByLabel('Note') });
    await field.getByText('Use at least 10 characters.').waitFor();
    expect(await page.getByLabel('Note').getAttribute('aria-invalid')).toBe('true');
    await expectAccessible(page);

    // It is in the outbox as well, and opens from there as it was.
    await goTo(page, server, '/crew/#/outbox');
    await page.getByText('Refused', { exact: true }).waitFor();
    await page
      .getByRole('link', { name: /Out of service for another cause/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Mend it' }).click();
    await field.getByText('Use at least 10 characters.').waitFor();
    await page.getByLabel('Note').fill('ice in the barrel, thawing');
    await page.unroute('**/api/submissions');
    await sendAndConfirm(page);
    const { status } = await server.ask<{ status: { open: { cause: string }[] } }>(
      'crew',
      '/api/hydrants/T-105',
    );
    expect(status.open.map(({ cause }) => cause)).toEqual(['frozen']);
  });

  test('a second correction of the same report is refused by the server and can be thrown away', async () => {
    const page = await crew();
    const [strike] = await strikesAt(server, 'T-102');
    const at = `/crew/#/correct/strike/${strike!.strikeId}/${strike!.submissionIds[0]!}`;
    await goTo(page, server, at);
    await page.getByLabel('Reason').fill('wrong time');
    await page.getByLabel('Water shut off at').fill(minutesAgo(30));

    const other = await crew();
    await goTo(other, server, at);
    await other.getByLabel('Reason').fill('mine first');
    await sendAndConfirm(other);

    await sendForm(page);
    await page.getByRole('heading', { name: 'One thing to put right' }).waitFor();
    await goTo(page, server, '/crew/#/outbox');
    await page
      .getByRole('link', { name: /Strike report/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Throw this entry away' }).click();
    await page.getByRole('button', { name: 'Discard it for good' }).click();
    await page.getByRole('heading', { name: 'Hydrants' }).waitFor();
    const kinds = (await historyOf(server, strike!.strikeId)).map(({ recorded }) => recorded.submission.kind);
    expect(kinds).toEqual(['strike', 'correction']);
  });
});

describe('whose entry it is', () => {
  test('a colleague can deliver it and not change it; both are named', async () => {
    const page = await crew();
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-108');
    await page.getByText('Sound', { exact: true }).click();
    await page.route('**/api/submissions', (route) => route.abort());
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await page.unroute('**/api/submissions');

    // The same tablet, the next shift: signed in anew before anything is sent.
    await page.evaluate(
      (token) => {
        localStorage.setItem('hsl.token', token);
      },
      await server.token('manager'),
    );
    await goTo(page, server, '/crew/#/outbox');
    await page.getByText('Written by others on this device').waitFor();
    await page.getByRole('link', { name: /Inspection/ }).click();
    expect(await page.getByRole('button', { name: 'Mend it' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Deliver it for Odalys Brennick' }).click();
    await page.getByText('Recorded.', { exact: true }).waitFor();
    const { status } = await server.ask<{ status: { lastInspectedAt: string } }>(
      'crew',
      '/api/hydrants/T-108',
    );
    expect(status.lastInspectedAt).not.toBeNull();
  });

  test('an ended sign-in opens, keeps and queues; signing in again sends', async () => {
    const page = await crew();
    await newStrike(page, 'T-104');
    // The same person, ten minutes after the end of the shift's token.
    await page.evaluate(() => {
      const token = localStorage.getItem('hsl.token') ?? '';
      const [head = '', claims = '', signature = ''] = token.split('.');
      const read = JSON.parse(atob(claims.replace(/-/g, '+').replace(/_/g, '/'))) as { exp: number };
      read.exp = Math.floor(Date.now() / 1000) - 600;
      localStorage.setItem(
        'hsl.token',
        [head, btoa(JSON.stringify(read)).replace(/=+$/, ''), signature].join('.'),
      );
    });
    await page.reload();
    await page.getByText('Sign in again to send.', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Change T-104' }).waitFor();
    await expectAccessible(page);
    await sendForm(page);
    await notSent(page).first().waitFor();

    await page.goto(`${server.origin}/local/sign-in?role=crew`);
    // Sent in the background, once the app has opened and found what waits.
    await expect.poll(async () => (await strikesAt(server, 'T-104')).length, { timeout: 10_000 }).toBe(2);
    await notSent(page).waitFor({ state: 'detached' });
  });

  test('the token leaves the address at once', async () => {
    const page = await crew();
    expect(page.url()).not.toContain('token');
    expect(await page.evaluate(() => localStorage.getItem('hsl.token')?.split('.').length)).toBe(3);
  });
});

describe('photos', () => {
  const photo = {
    name: 'scene.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from(photoBytes('quince-overall')),
  };

  test('a cut upload leaves the entry recorded with its photo on the way, and goes on', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    await page.getByLabel('Add photos').setInputFiles(photo);
    await page.getByRole('img', { name: 'Photo 1' }).waitFor();
    // What it shows is for the crew to say.
    await sendForm(page);
    await page.getByRole('button', { name: /^Photo 1 · What it shows/ }).waitFor();
    await page.getByRole('radiogroup', { name: /shows/ }).getByText('Whole scene', { exact: true }).click();
    await page.route('**/local/evidence/**', (route) => route.abort());
    await sendForm(page);
    await page.getByText('1 photo is still on its way.').waitFor();
    await expectAccessible(page);
    await page.unroute('**/local/evidence/**');
    await page.getByRole('button', { name: 'Send now' }).click();
    await page.getByText(/^Recorded [A-Z]/).waitFor();
    expect(await page.getByText('still on its way').count()).toBe(0);
  });

  test('the time is the camera’s, not the file’s; where there is none it is left open; HEIC, what is broken and clocks that differ are said', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    // EXIF 2.32: DateTimeOriginal and OffsetTimeOriginal, written by another library.
    const dated = await sharp(photo.buffer)
      .withExif({ IFD2: { DateTimeOriginal: '2026:03:04 02:10:33', OffsetTimeOriginal: '-05:00' } })
      .jpeg()
      .toBuffer();
    const bare = await sharp(photo.buffer).jpeg().toBuffer();
    const bareAgain = await sharp(photo.buffer).jpeg({ quality: 70 }).toBuffer();
    await page.getByLabel('Add photos').setInputFiles([
      { ...photo, name: 'dated.jpg', buffer: dated },
      { ...photo, name: 'bare.jpg', buffer: bare },
      {
        name: 'new.heic',
        mimeType: 'image/heic',
        buffer: heicFile({
          // Two years ahead of any phone that runs this.
          exif: exifBlock({ model: 'Pocket 5', taken: '2099:11:08 07:03:12', offset: '-05:00' }),
        }),
      },
      { name: 'broken.heic', mimeType: 'image/heic', buffer: Buffer.from('ftypheic') },
      { name: 'bill.pdf', mimeType: 'application/pdf', buffer: Buffer.from('<html>not found</html>') },
      // A phone that converts a photo and leaves its name.
      { name: 'renamed.heic', mimeType: 'image/heic', buffer: bareAgain },
    ]);
    // Who told dispatch is known by number and read by name.
    const me = await server.ask<{ personId: string; name: string }>('crew', '/api/me');
    expect(await page.getByLabel('Told by').inputValue()).toBe(me.personId);
    await page
      .locator('.field', { has: page.getByLabel('Told by') })
      .getByText(me.name)
      .waitFor();
    const row = (number: number) => page.getByRole('group', { name: `Photo ${number}`, exact: true });
    // 02:10:33 at −05:00 is the same in New York that night.
    await row(3).waitFor();
    expect(await row(1).getByLabel('Taken at').inputValue()).toBe('2026-03-04T02:10:33');
    expect(await row(2).getByLabel('Taken at').inputValue()).toBe('');
    await row(2).getByText('When it was taken is not known').waitFor();
    await row(3).getByText('the desk and the packet show a JPEG made of it').waitFor();
    await row(3)
      .getByText(/^The camera’s clock is [\d,]+ days ahead of the phone’s\.$/)
      .waitFor();
    // A time that has not come yet is nobody's to send by oversight.
    expect(await row(3).getByLabel('Taken at').inputValue()).toBe('');
    await row(3).getByText('Camera: Pocket 5.', { exact: false }).waitFor();
    await row(1).getByText('The file does not name its camera.', { exact: false }).waitFor();
    await row(2).getByText('The file holds no data of its capture').waitFor();
    expect(await row(4).getByText('A HEIC photo').count()).toBe(0);
    await row(4).getByText('This file is damaged, or is not what its name says.').waitFor();
    await row(5).getByText('This is called a PDF and is none').waitFor();
    expect(await row(6).getByText('A HEIC photo').count()).toBe(0);
    expect(await row(1).getByRole('radio', { checked: true }).count()).toBe(0);
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await shot(page, 'photos-360', 'form');
  });

  test('what is no photo is named and not taken; the same one is taken once; a reload keeps it', async () => {
    const page = await crew();
    await newStrike(page, 'T-101');
    await page
      .getByLabel('Add photos')
      .setInputFiles([
        photo,
        { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('x') },
        { name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) },
        photo,
      ]);
    await page.getByText('notes.txt: only photos', { exact: false }).waitFor();
    await page.getByText('empty.jpg: the file is empty', { exact: false }).waitFor();
    await page.getByText('scene.jpg is already in the list.').waitFor();
    await page.reload();
    await page.getByRole('img', { name: 'Photo 1' }).waitFor();
    expect(await page.getByRole('img').count()).toBe(1);
  });
});

describe('a device that keeps nothing', () => {
  test('sends all the same and says that no copy is here', async () => {
    const page = await crew();
    await page.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException('closed', 'SecurityError');
      };
    });
    await newStrike(page, 'T-105');
    await sendForm(page);
    await page.getByText('This device could not keep a copy.', { exact: false }).waitFor();
    expect(await strikesAt(server, 'T-105')).toHaveLength(1);
  });

  test('says so and to tell dispatch when it cannot send either', async () => {
    const page = await crew();
    await page.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException('closed', 'SecurityError');
      };
    });
    await newStrike(page, 'T-106');
    await page.route('**/api/submissions', (route) => route.abort());
    await sendForm(page);
    await page.getByText('This device cannot keep what you type', { exact: false }).waitFor();
    await notSent(page).waitFor();
  });
});
