import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { photoBytes } from '../../infra/local/demo/photos.ts';
import type { Role } from '../../shared/roles.ts';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import { goTo, pickHydrant, sendForm, type AppServer } from './app.ts';
import { badLine, type BadLine } from './badLine.ts';
import { appTest, noSignal, preloadPassedBy, refusal, type AppTest } from './browserTest.ts';
import { historyOf, strikesAt } from './records.ts';

export interface BadLineTest extends AppTest {
  readonly line: BadLine;
  /** The server as a phone reaches it: through the line. */
  readonly reached: AppServer;
  /** A phone with somebody signed in, on which the app is ready for no signal. */
  readonly phone: (role?: Role, options?: BrowserContextOptions) => Promise<Page>;
  /** A strike at this hydrant, filled in and not sent yet. */
  readonly fillStrike: (page: Page, hydrantId: string, withPhoto?: boolean) => Promise<void>;
  readonly down: () => void;
  readonly up: () => void;
  /** What the server holds of a hydrant's strikes: one story each. */
  readonly stories: (hydrantId: string) => Promise<HistoryEntry[][]>;
  /** One strike at the hydrant, one report of it, and each of so many photos has arrived. */
  readonly expectOnce: (hydrantId: string, photos?: number) => Promise<HistoryEntry>;
}

/** The app behind a line that fails where a test says; whole again after each. */
export function badLineTest(port: number, linePort: number): BadLineTest {
  const app = appTest(port, { tolerated: [noSignal, refusal, preloadPassedBy] });
  const { server, signIn } = app;
  const line = badLine(server.origin, linePort);
  const reached = { ...server, origin: line.origin };
  const up = (): void => {
    line.fate = () => 'pass';
  };
  beforeAll(() => line.open());
  afterEach(up);
  afterAll(() => line.close());

  const stories = async (hydrantId: string): Promise<HistoryEntry[][]> => {
    const strikes = await strikesAt(server, hydrantId);
    return Promise.all(strikes.map(({ strikeId }) => historyOf(server, strikeId)));
  };
  return {
    ...app,
    line,
    reached,
    up,
    down: () => {
      line.fate = () => 'down';
    },
    stories,
    async phone(role = 'crew', options = {}) {
      const viewport = { width: 360, height: 740 };
      const { page } = await signIn(role, { serviceWorkers: 'allow', viewport, ...options }, reached);
      // The worker is there, so that the app opens without the line.
      await goTo(page, reached, '/crew/');
      await page.getByText('Ready with no signal', { exact: false }).waitFor();
      return page;
    },
    async fillStrike(page, hydrantId, withPhoto = false) {
      await goTo(page, reached, '/crew/#/new/strike');
      await pickHydrant(page, 'Hydrant', hydrantId);
      await page.getByRole('button', { name: `Change ${hydrantId}` }).waitFor();
      if (!withPhoto) return;
      await page.getByLabel('Add photos').setInputFiles(photo(hydrantId));
      await page.getByRole('img', { name: 'Photo 1' }).waitFor();
      await sendForm(page);
      await page.getByRole('button', { name: /^Photo 1 · What it shows/ }).waitFor();
      await page.getByRole('radiogroup', { name: /shows/ }).getByText('Whole scene', { exact: true }).click();
    },
    async expectOnce(hydrantId, photos = 0) {
      await expect.poll(async () => (await stories(hydrantId)).length, { timeout: 30_000 }).toBe(1);
      const [story] = await stories(hydrantId);
      expect(story).toHaveLength(1);
      const { strikeId } = (await strikesAt(server, hydrantId))[0]!;
      const arrived = async (): Promise<string[]> =>
        Object.values(
          (await server.ask<{ evidence: Record<string, string> }>('manager', `/api/strikes/${strikeId}`))
            .evidence,
        );
      await expect.poll(arrived, { timeout: 30_000 }).toEqual(Array<string>(photos).fill('arrived'));
      return story![0]!;
    },
  };
}

/** Another photo each: the store takes the same bytes once, and then there is nothing to upload. */
export const photo = (name: string) => ({
  name: `${name}.jpg`,
  mimeType: 'image/jpeg',
  buffer: Buffer.concat([photoBytes('quince-overall'), Buffer.from(name)]),
});

export const kept = (page: Page): Promise<void> =>
  page.getByText('It is kept on this device', { exact: false }).waitFor();

/** How many entries wait on a device. */
export const waiting = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const request = indexedDB.open('hsl');
        request.onerror = () => reject(request.error ?? new Error('not opened'));
        request.onsuccess = () => {
          const count = request.result.transaction('outbox').objectStore('outbox').count();
          count.onsuccess = () => {
            request.result.close();
            resolve(count.result);
          };
        };
      }),
  );

/** Until nothing waits on a device any more. */
export const expectNothingWaits = (page: Page): Promise<void> =>
  expect.poll(() => waiting(page), { timeout: 30_000 }).toBe(0);

/** The sign-in on a device ends an hour ago, as its own clock sees it. */
export const expireSignIn = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const [head = '', claims = '', signature = ''] = (localStorage.getItem('hsl.token') ?? '').split('.');
    const read = JSON.parse(atob(claims.replace(/-/g, '+').replace(/_/g, '/'))) as { exp: number };
    read.exp = Math.floor(Date.now() / 1000) - 3600;
    localStorage.setItem(
      'hsl.token',
      [head, btoa(JSON.stringify(read)).replace(/=+$/, ''), signature].join('.'),
    );
  });
