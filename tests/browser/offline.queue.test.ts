import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { goTo, pickHydrant, sendForm } from '../support/app.ts';
import {
  badLineTest,
  expectNothingWaits,
  expireSignIn,
  kept,
  photo,
  waiting,
} from '../support/badLineTest.ts';
import { ports } from '../support/ports.ts';

/** What goes wrong between a phone and the server. Each ends with everything there exactly once. */
const app = badLineTest(ports.offlineQueue, ports.offlineQueueLine);
const { device, down, expectOnce, fillStrike, line, phone, reached, server, stories, up } = app;

/**
 * A full disk, as IndexedDB shows it: the transaction is aborted when it is to be written. (The browser's own override of
 * an address's quota is not held against IndexedDB by this Chromium, and a full file system needs an administrator.)
 */
const fillDisk = (page: Page, full: boolean): Promise<void> =>
  page.evaluate((isFull) => {
    const kept = window as unknown as { put?: typeof IDBObjectStore.prototype.put };
    // eslint-disable-next-line @typescript-eslint/unbound-method -- called with the store it was asked of
    kept.put ??= IDBObjectStore.prototype.put;
    const put = kept.put;
    IDBObjectStore.prototype.put = isFull
      ? function (this: IDBObjectStore, ...args: Parameters<typeof put>) {
          const request = put.apply(this, args);
          this.transaction.abort();
          return request;
        }
      : put;
  }, full);
const recordedLately = (page: Page) => page.getByText('Recorded lately').waitFor({ timeout: 30_000 });
const sending = (method: string, path: string): boolean => method === 'POST' && path === '/api/submissions';

describe('everything exactly once', { timeout: 90_000 }, () => {
  test('a server that answered, and the answer was lost: twice', async () => {
    const page = await phone();
    await fillStrike(page, 'T-101', true);
    line.fate = (method, path, number) =>
      (sending(method, path) && number <= 2) || (path === '/api/evidence/uploads' && number <= 1)
        ? 'lose-answer'
        : 'pass';
    await sendForm(page);
    await expectOnce('T-101', 1);
    await expectNothingWaits(page);
    expect(line.seen.filter((request) => request === 'POST /api/submissions').length).toBeGreaterThan(2);
  });

  test('an upload that is cut in the middle again and again, and whose answer is lost when it gets through', async () => {
    const page = await phone();
    await fillStrike(page, 'T-102', true);
    const upload = { state: 'cut', cuts: 0 };
    line.fate = (method) => {
      if (method !== 'PUT') return 'pass';
      if (upload.state === 'cut') {
        upload.cuts += 1;
        return 'cut';
      }
      if (upload.state === 'open') return 'pass';
      upload.state = 'open';
      return 'lose-answer';
    };
    await sendForm(page);
    // The report is recorded, and the screen says what is not there yet and why.
    await page.getByText('1 photo is still on its way.').waitFor({ timeout: 25_000 });
    await page.getByText('A photo could not be sent.', { exact: false }).waitFor();
    const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
    expect(strikes.filter(({ hydrantId }) => hydrantId === 'T-102')).toHaveLength(1);
    upload.state = 'lose once';
    await expectOnce('T-102', 1);
    await expectNothingWaits(page);
    expect(upload.cuts).toBeGreaterThan(0);
  });

  test('a gateway that lets no more through for now: the report waits, is not refused, and leaves by itself', async () => {
    const page = await phone();
    await fillStrike(page, 'T-111', true);
    let turnedAway = 0;
    await page.route('**/api/submissions', async (route) => {
      turnedAway += 1;
      // As the gateway says it, which is none of our documents.
      if (turnedAway <= 2) await route.fulfill({ status: 429, json: { message: 'Too Many Requests' } });
      else await route.continue();
    });
    await sendForm(page);
    await expectOnce('T-111', 1);
    await expectNothingWaits(page);
    expect(turnedAway).toBeGreaterThan(2);
  });

  test('one person’s photos of a day are used up: they wait and say so, reports go on, and a later day takes them', async () => {
    const page = await phone();
    await fillStrike(page, 'T-112', true);
    let asked = 0;
    await page.route('**/api/evidence/uploads', (route) => {
      asked += 1;
      return route.fulfill({
        status: 429,
        headers: { 'content-type': 'application/problem+json', 'retry-after': '7200' },
        body: JSON.stringify({
          type: '/problems/too-many',
          title: 'This is more than one person may send today',
          status: 429,
          problems: [{ path: 'sha256', code: 'upload-budget', params: {}, message: '' }],
        }),
      });
    });
    await sendForm(page);
    await page.getByText('Reports go on.', { exact: false }).waitFor({ timeout: 25_000 });
    // Each of these would try again; what may not be sent today is not asked for again meanwhile.
    for (let time = 0; time < 3; time += 1) {
      await page.evaluate(() => window.dispatchEvent(new Event('online')));
      await page.waitForTimeout(300);
    }
    expect(asked).toBe(1);
    const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
    expect(strikes.filter(({ hydrantId }) => hydrantId === 'T-112')).toHaveLength(1);
    await page.unroute('**/api/evidence/uploads');
    await page.reload();
    await expectOnce('T-112', 1);
    await expectNothingWaits(page);
  });

  test('a second device that holds the same entry, as after a restored backup, and sends it at the same time', async () => {
    const [first, second] = [await phone(), await phone()];
    await fillStrike(first, 'T-103', true);
    down();
    await sendForm(first);
    await kept(first);
    // Everything on the first, on the second too: what waits, with its photo, and the id of the device.
    const copied = await first.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open('hsl');
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error ?? new Error('not opened'));
      });
      const all = (store: string): Promise<Record<string, unknown>[]> =>
        new Promise((resolve) => {
          const request = db.transaction(store).objectStore(store).getAll();
          request.onsuccess = () => resolve(request.result as Record<string, unknown>[]);
        });
      const files = await Promise.all(
        (await all('files')).map(async ({ bytes, ...rest }) => ({
          ...rest,
          bytes: [...new Uint8Array(await (bytes as Blob).arrayBuffer())],
          type: (bytes as Blob).type,
        })),
      );
      return { outbox: await all('outbox'), files };
    });
    await second.evaluate(async ({ outbox, files }) => {
      const db = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('hsl');
        request.onsuccess = () => resolve(request.result);
      });
      const transaction = db.transaction(['outbox', 'files'], 'readwrite');
      for (const entry of outbox) transaction.objectStore('outbox').put(entry);
      for (const { bytes, type, ...rest } of files)
        transaction.objectStore('files').put({ ...rest, bytes: new Blob([new Uint8Array(bytes)], { type }) });
      await new Promise<void>((resolve) => {
        transaction.oncomplete = () => resolve();
      });
      db.close();
    }, copied);
    expect(await waiting(second)).toBe(1);
    up();
    await Promise.all([goTo(first, reached, '/crew/#/outbox'), goTo(second, reached, '/crew/#/outbox')]);
    await Promise.all([recordedLately(first), recordedLately(second)]);
    await expectOnce('T-103', 1);
    expect([await waiting(first), await waiting(second)]).toEqual([0, 0]);
  });

  test('a sign-in that expired while nothing could be sent: opens, queues, and goes when the person is back', async () => {
    const page = await phone();
    down();
    await expireSignIn(page);
    await goTo(page, reached, '/crew/#/new/strike');
    await page.getByText('Sign in again to send.', { exact: false }).waitFor();
    await page.getByRole('searchbox', { name: 'Hydrant' }).fill('T-104');
    await page.getByRole('button', { name: 'T-104' }).first().click();
    await sendForm(page);
    await kept(page);
    await page.getByText('Tell dispatch by radio or phone now.').first().waitFor();
    up();
    // The line is back, and the sign-in is not: it waits, and nothing is refused.
    await goTo(page, reached, '/crew/#/outbox');
    expect(await waiting(page)).toBe(1);
    await page.goto(`${reached.origin}/local/sign-in?role=crew`);
    const { recorded } = await expectOnce('T-104');
    expect(recorded.submission.person.personId).toBe('w-101');
    await expectNothingWaits(page);
  });

  test('a browser that is killed while it sends, with its photo half uploaded', async () => {
    const mine = await device();
    const first = await mine.open();
    await first.page.goto(`${reached.origin}/local/sign-in?role=crew`);
    await first.page.waitForSelector('h1[tabindex]');
    await fillStrike(first.page, 'T-105', true);
    let held = 0;
    const reachedServer = new Promise<void>((resolve) => {
      line.fate = (method, path) => {
        // The report takes effect and its answer is never had; then the phone dies.
        if (!sending(method, path)) return 'pass';
        held += 1;
        resolve();
        return held === 1 ? 'lose-answer' : 'hold';
      };
    });
    await sendForm(first.page);
    await reachedServer;
    await first.kill();

    let cut = 0;
    const uploading = new Promise<void>((resolve) => {
      line.fate = (method) => {
        if (method !== 'PUT') return 'pass';
        cut += 1;
        resolve();
        return cut === 1 ? 'hold' : 'pass';
      };
    });
    const second = await mine.open();
    // The queue was on the disk at once; the sign-in may not have been, and is made again by the same person.
    await second.page.goto(`${reached.origin}/local/sign-in?role=crew`);
    await uploading;
    await second.kill();

    const third = await mine.open();
    await third.page.goto(`${reached.origin}/local/sign-in?role=crew`);
    await goTo(third.page, reached, '/crew/#/outbox');
    await recordedLately(third.page);
    await expectOnce('T-105', 1);
    await expectNothingWaits(third.page);
  });

  test('a full disk: a photo that does not fit is refused at once, and the report goes all the same', async () => {
    const page = await phone();
    await fillStrike(page, 'T-106');
    await fillDisk(page, true);
    await page.getByLabel('Add photos').setInputFiles(photo('full'));
    await page.getByText('could not keep it', { exact: false }).first().waitFor();
    // With no line either, the form says that nothing is safe, and whom to tell.
    down();
    await sendForm(page);
    await page.getByText('This device cannot keep what you type', { exact: false }).waitFor();
    await page.getByText('Tell dispatch by radio or phone now.').first().waitFor();
    expect(await waiting(page)).toBe(0);
    // With a line it goes all the same: better told once than kept and not told.
    up();
    await sendForm(page);
    await page.getByText('could not keep a copy', { exact: false }).first().waitFor();
    await expectOnce('T-106');
    // Room again: another report keeps and sends as ever.
    await fillDisk(page, false);
    await goTo(page, reached, '/crew/#/new/inspection?hydrant=T-108');
    await page.getByText('Sound', { exact: true }).click();
    await sendForm(page);
    await page.getByText('Recorded.', { exact: true }).waitFor();
    expect(await waiting(page)).toBe(0);
  });

  test('a disk that fills up between the answer and its being noted', async () => {
    const page = await phone();
    await goTo(page, reached, '/crew/#/new/outage?hydrant=T-106');
    await page.getByText('Frozen').click();
    down();
    await sendForm(page);
    await kept(page);
    await fillDisk(page, true);
    up();
    await page.getByRole('button', { name: 'Send now' }).click();
    const causes = async () =>
      (
        await server.ask<{ status: { open: { cause: string }[] } }>('crew', '/api/hydrants/T-106')
      ).status.open.map(({ cause }) => cause);
    await expect.poll(causes, { timeout: 20_000 }).toContain('frozen');
    await fillDisk(page, false);
    await goTo(page, reached, '/crew/#/outbox');
    await expectNothingWaits(page);
    expect((await causes()).filter((cause) => cause === 'frozen')).toHaveLength(1);
  });

  test('a colleague who delivers: sent once, and both are named on the screen and in the record', async () => {
    const page = await phone();
    await goTo(page, reached, '/crew/#/new/strike');
    await pickHydrant(page, 'Hydrant', 'T-106');
    down();
    await sendForm(page);
    await kept(page);
    await page.evaluate((token) => localStorage.setItem('hsl.token', token), await server.token('manager'));
    up();
    await goTo(page, reached, '/crew/#/outbox');
    await page.getByText('Written by others on this device').waitFor();
    // It goes when its author's colleague says so, and not before.
    expect(await waiting(page)).toBe(1);
    await page.getByRole('link', { name: /Strike report/ }).click();
    await page.getByRole('button', { name: 'Deliver it for Odalys Brennick' }).click();
    await page.getByText(/Written by Odalys Brennick, delivered by /).waitFor();
    const strikes = (await stories('T-106')).filter((story) => story[0]?.recorded.deliveredBy !== null);
    expect(strikes).toHaveLength(1);
    expect(strikes[0]![0]!.recorded.submission.person.personId).toBe('w-101');
  });
});
