import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import {
  builtClient,
  expectAccessible,
  expectNoSideScroll,
  goTo,
  pickHydrant,
  sendForm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest, noSignal, preloadPassedBy, refusal } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { strikesAt } from '../support/records.ts';

/** The crew app with no signal: it opens, it knows the hydrants around, and it shows nobody what another one read. */
const { server, signIn } = appTest(ports.offlineApp, {
  client: ownClient,
  tolerated: [noSignal, refusal, preloadPassedBy],
});
let client: string;
let worker: string;

/** The built site in a folder of its own, so that a newer worker can be put there. */
async function ownClient(): Promise<string> {
  client = await mkdtemp(join(tmpdir(), 'hsl-offline-'));
  await cp(await builtClient(), client, { recursive: true });
  worker = await readFile(join(client, 'crew', 'sw.js'), 'utf8');
  return client;
}
afterEach(async () => {
  await up();
  await deploy(worker);
});
afterAll(async () => {
  await rm(client, { recursive: true, force: true });
});

const deploy = (text: string): Promise<void> => writeFile(join(client, 'crew', 'sw.js'), text);

/** No signal, and signal again: the server's address refuses connections, or answers. */
let isDown = false;
async function down(): Promise<void> {
  await server.kill();
  isDown = true;
}
async function up(): Promise<void> {
  if (isDown) await server.start();
  isDown = false;
}

/** A phone on which the app, and the hydrants around, are ready for no signal. */
async function readyPhone(role: 'crew' | 'manager' = 'crew'): Promise<Looking> {
  const looking = await signIn(role, {
    serviceWorkers: 'allow',
    viewport: { width: 360, height: 740 },
  });
  const { page } = looking;
  await goTo(page, server, '/crew/');
  await page.getByText('Ready with no signal: 6 hydrants on this device.').waitFor();
  return looking;
}
const notSent = (page: Page) => page.getByText('Tell dispatch by radio or phone now.');
/** Every address that any cache of this origin holds. */
const cached = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const held: string[] = [];
    for (const name of await caches.keys())
      for (const { url } of await (await caches.open(name)).keys()) held.push(new URL(url).pathname);
    return held;
  });

describe('with no server from the start', () => {
  test('the app opens, finds a hydrant by number and by position, and keeps a strike on it', async () => {
    const { page } = await readyPhone();
    await down();
    await goTo(page, server, '/crew/#/new/strike');
    await page.getByRole('searchbox', { name: 'Hydrant' }).fill('T-10');
    await page.getByText('6 hydrants found on this device', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Near me' }).click();
    const nearest = page.locator('.results li').first();
    await nearest.getByText('T-103').waitFor();
    // An older list can say that one is out, not that one can be relied on.
    expect(await nearest.getByText('In service').count()).toBe(0);
    await nearest.getByRole('button').click();
    await page.getByRole('button', { name: 'Change T-103' }).waitFor();
    await expectAccessible(page);
    await expectNoSideScroll(page);
    await sendForm(page);
    await notSent(page).first().waitFor();
    // "Tell dispatch" stands there from the touch on; the page may be left once the report is kept.
    await page.getByText('It is kept on this device', { exact: false }).waitFor();

    await goTo(page, server, '/crew/#/hydrant/T-103');
    await page.getByText('takes this hydrant out of service. It is not sent.', { exact: false }).waitFor();
    expect(await page.getByText('In service', { exact: true }).count()).toBe(0);

    await up();
    await expect.poll(async () => (await strikesAt(server, 'T-103')).length, { timeout: 40_000 }).toBe(1);
    await notSent(page).waitFor({ state: 'detached', timeout: 30_000 });
    // Nothing but refused connections went wrong.
  });

  test('a strike and what follows it are written one on the other, and everything is there once when signal is back', async () => {
    const { page } = await readyPhone();
    await down();
    await goTo(page, server, '/crew/#/new/strike');
    await pickHydrant(page, 'Hydrant', 'T-105');
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await page.getByRole('link', { name: 'Go on with this strike' }).click();
    await page.getByText('Not sent yet. This is what this device knows.').waitFor();
    await expectAccessible(page);
    await page.getByRole('link', { name: 'Expected return', exact: false }).first().click();
    await page.getByText('Parts', { exact: true }).first().click();
    await sendForm(page);
    await page.getByText('It is kept on this device', { exact: false }).waitFor();
    await page.getByRole('link', { name: 'Go on with this strike' }).click();
    // The strike that only waits here stands as its reports make it.
    await page.getByText('Waiting', { exact: false }).first().waitFor();

    // The phone is put away and taken out again.
    await goTo(page, server, '/crew/#/outbox');
    await up();
    await expect.poll(async () => (await strikesAt(server, 'T-105')).length, { timeout: 40_000 }).toBe(1);
    const [strike] = await strikesAt(server, 'T-105');
    await expect
      .poll(
        async () =>
          (
            await server.ask<{ history: HistoryEntry[] }>('manager', `/api/strikes/${strike!.strikeId}`)
          ).history.map(({ recorded }) => recorded.submission.kind),
        { timeout: 20_000 },
      )
      .toEqual(['strike', 'expected-return']);
  }, 90_000);
});

describe('what stands on the device', () => {
  test('no cache holds anything but the app’s own files', async () => {
    const { page } = await readyPhone();
    const held = await cached(page);
    expect(held).toContain('/crew/');
    expect(held.filter((path) => path !== '/crew/' && !path.startsWith('/_assets/'))).toEqual([]);
  });

  test('what was read is one person’s: kept for them, gone when they sign out, and never another’s', async () => {
    const { page } = await readyPhone();
    await server.ask('crew', '/api/strikes');
    await goTo(page, server, '/crew/#/hydrant/T-101');
    await page.getByText('1 Test St').first().waitFor();
    const reads = () =>
      page.evaluate(
        () =>
          new Promise<string[]>((resolve, reject) => {
            const request = indexedDB.open('hsl');
            request.onerror = () => reject(request.error ?? new Error('not opened'));
            request.onsuccess = () => {
              const all = request.result.transaction('reads').objectStore('reads').getAllKeys();
              all.onsuccess = () => {
                request.result.close();
                resolve(all.result.map(String));
              };
            };
          }),
      );
    await expect.poll(reads).toContain('w-101,/api/hydrants/T-101');
    await down();
    await goTo(page, server, '/crew/#/hydrant/T-101');
    await page.getByText('What you see is from', { exact: false }).first().waitFor();
    await page.getByText('1 Test St').first().waitFor();
    await up();

    await page.goto(`${server.origin}/sign-in/`);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await expect.poll(reads).toEqual([]);
    expect(await page.evaluate(() => localStorage.getItem('hsl.people'))).toBeNull();
  });

  test('public pages, the desk and the sign-in do not pass through the worker', async () => {
    const { page } = await readyPhone();
    for (const path of ['/', '/desk/', '/sign-in/']) {
      const answer = await page.goto(server.origin + path);
      expect(answer?.fromServiceWorker(), path).toBe(false);
      expect(await page.evaluate(() => navigator.serviceWorker.controller), path).toBeNull();
    }
    const crew = await page.goto(`${server.origin}/crew/`);
    expect(crew?.fromServiceWorker()).toBe(true);
  });

  test('the worker is served so that a newer one is seen, under the page’s policy', async () => {
    const answer = await fetch(`${server.origin}/crew/sw.js`);
    expect(answer.headers.get('content-type')).toContain('text/javascript');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
  });
});

describe('a newer version', () => {
  test('waits while a form is open, is said, and takes over when asked; what was typed is there', async () => {
    const { page } = await readyPhone();
    await goTo(page, server, '/crew/#/new/inspection?hydrant=T-104');
    await page.getByLabel('Note').fill('valve box paved over');
    const before = await page.evaluate(async () => (await caches.keys()).length);
    // The same files under another version, as a deployment brings them.
    await deploy(worker.replace(/"version": "\w+"/, '"version": "newer"'));
    await page.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration('/crew/'))?.update();
    });
    await page.getByText('A newer version of this app is ready.', { exact: false }).waitFor();
    expect(await page.getByLabel('Note').inputValue()).toBe('valve box paved over');
    await expectAccessible(page);
    const loaded = page.waitForEvent('load');
    await page.getByRole('button', { name: 'Open it now' }).click();
    await loaded;
    await page.waitForSelector('h1[tabindex]');
    expect(await page.getByLabel('Note').inputValue()).toBe('valve box paved over');
    // The version before stays for forms that were opened with it.
    expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(before + 1);
    expect(await page.evaluate(async () => (await caches.keys()).at(-1))).toBe('hsl-crew-newer');
  });

  test('one of another build is not taken: the version before goes on', async () => {
    const { page } = await readyPhone();
    const broken = worker
      .replace(/"version": "\w+"/, '"version": "broken"')
      .replace(/("url": "\/crew\/",\s*"sha256": ")\w{8}/, (_, start: string) => `${start}00000000`);
    expect(broken.match(/"00000000/g)).toHaveLength(1);
    await deploy(broken);
    const state = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration('/crew/');
      await registration?.update().catch(() => undefined);
      const installing = registration?.installing;
      if (installing)
        await new Promise<void>((resolve) => {
          installing.addEventListener('statechange', () => {
            if (installing.state === 'redundant' || installing.state === 'installed') resolve();
          });
        });
      return { waiting: registration?.waiting?.state ?? null, caches: await caches.keys() };
    });
    expect(state.waiting).toBeNull();
    expect(state.caches).not.toContain('hsl-crew-broken');
    await down();
    await goTo(page, server, '/crew/');
    await page.getByRole('heading', { name: 'Hydrants' }).waitFor();
  });
});
