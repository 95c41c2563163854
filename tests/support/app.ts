import AxeBuilder from '@axe-core/playwright';
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';
import { builtSite } from '../../infra/local/buildSite.ts';
import type { Role } from '../../shared/roles.ts';
import { localMinute } from '../../site/src/app/form/localTime.ts';
import { openPage, type Looking } from './browser.ts';
import { ensureBuilt } from './builtSite.ts';
import { killable, type Killable } from './killable.ts';

/** What the server begins with: six hydrants with models and rates in force, or the whole demo. */
export type Load = 'small' | 'town';

/** The zone of the utility under test; browsers in the tests stand in another one on purpose. */
export const utilityZone = 'America/New_York';

export interface AppServer {
  readonly origin: string;
  /** Its data folder. */
  readonly folder: string;
  /** Ends it at once, as a cut cable would. */
  kill(): Promise<void>;
  /** Starts it again on the same data. */
  start(): Promise<void>;
  /** Asks the API as a role would; throws on a refusal. */
  ask<T>(role: Role, path: string, body?: unknown): Promise<T>;
  token(role: Role): Promise<string>;
  /** Kills it and removes its data. */
  end(): Promise<void>;
}

/**
 * The real local server on an empty folder of its own, in a process that can be killed; `start` starts it. `client` gives
 * the folder of a built site other than this project's; `SITE_CLIENT_DIR` names one too.
 */
export function appServer(port: number, load: Load = 'small', client?: () => Promise<string>): AppServer {
  const data = mkdtempSync(join(tmpdir(), 'hsl-app-'));
  const folder = join(data, 'data');
  const origin = `http://localhost:${port}`;
  let server: Killable | null = null;
  const made = async (): Promise<Killable> =>
    killable(join(import.meta.dirname, 'serveApp.ts'), [], {
      DATA_DIR: folder,
      PORT: String(port),
      CLIENT_DIR: await (client ?? builtClient)(),
      LOAD: load,
    });
  const token = async (role: Role): Promise<string> => {
    const answer = await fetch(`${origin}/local/sign-in?role=${role}`, { redirect: 'manual' });
    return (answer.headers.get('location') ?? '').split('#token=')[1] ?? '';
  };
  const kill = async (): Promise<void> => server?.kill();
  return {
    origin,
    folder,
    token,
    kill,
    async start() {
      server ??= await made();
      await server.start();
    },
    async ask<T>(role: Role, path: string, body?: unknown) {
      const answer = await fetch(origin + path, {
        method: body === undefined ? 'GET' : 'POST',
        headers: {
          authorization: `Bearer ${await token(role)}`,
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
      return (await answer.json()) as T;
    },
    async end() {
      await kill();
      await rm(data, { recursive: true, force: true });
    },
  };
}

/** The client of the site under test: this project's, built if its sources changed, or the one that is named. */
export async function builtClient(): Promise<string> {
  const named = process.env['SITE_CLIENT_DIR'];
  if (named !== undefined) return named;
  await ensureBuilt();
  return builtSite.client;
}

/** A phone (or another screen) with somebody signed in, in Los Angeles, at the middle of the small inventory. */
export async function signedIn(
  browser: Browser,
  server: AppServer,
  role: Role,
  options: BrowserContextOptions = {},
): Promise<Looking> {
  const looking = await openPage(browser, {
    viewport: role === 'crew' ? { width: 360, height: 740 } : { width: 1280, height: 900 },
    timezoneId: 'America/Los_Angeles',
    permissions: ['geolocation'],
    geolocation: { latitude: 40.6031, longitude: -60.4, accuracy: 9 },
    acceptDownloads: true,
    // Requests that a service worker sees cannot be held up by a test; what it does has tests of its own (offline.*).
    serviceWorkers: 'block',
    ...options,
  });
  await looking.page.goto(`${server.origin}/local/sign-in?role=${role}`);
  await looking.page.waitForSelector('h1[tabindex]');
  return looking;
}

/** Opens a place inside the app on a page that is loaded anew, and waits for its heading. */
export async function goTo(page: Page, server: AppServer, path: string): Promise<void> {
  // Another fragment alone would be a step inside the page that is open.
  await page.goto('about:blank');
  await page.goto(server.origin + path);
  await page.waitForSelector('h1[tabindex]');
}

/** So many minutes ago as it is typed: in the utility's zone, not the browser's. */
export const minutesAgo = (minutes: number): string =>
  localMinute(new Date(Date.now() - minutes * 60_000), utilityZone);

/** Finds a hydrant in a form's finder and takes it. */
export async function pickHydrant(page: Page, label: string, hydrantId: string): Promise<void> {
  await page.getByRole('searchbox', { name: label }).fill(hydrantId);
  await page.getByRole('button', { name: hydrantId }).first().click();
}

export const sendForm = (page: Page): Promise<void> =>
  page.getByRole('button', { name: /^(Send|Enviar)$/ }).click();

/** Sends the form and waits until the server has confirmed it. */
export async function sendAndConfirm(page: Page): Promise<void> {
  await sendForm(page);
  await page.getByText(/^(Recorded\.|Registrado\.)$/).waitFor();
}

/** WCAG 2.2 AA by axe, on what is on screen now. */
export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
  ).toEqual([]);
}

/** Nothing may reach beyond the right edge: a phone would scroll sideways. */
export async function expectNoSideScroll(page: Page): Promise<void> {
  const { scroll, client } = await page.evaluate(() => ({
    scroll: document.documentElement.scrollWidth,
    client: document.documentElement.clientWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(client);
}

/** Every word is there: a key that no catalogue has would stand in brackets, in the text or in the name of a control. */
export async function expectEveryWord(page: Page): Promise<void> {
  const missing = await page.evaluate(() => {
    const named = [...document.querySelectorAll('[aria-label], [placeholder], [title], [alt]')];
    const names = named.flatMap((element) =>
      ['aria-label', 'placeholder', 'title', 'alt'].map((name) => element.getAttribute(name) ?? ''),
    );
    return [document.title, document.body.innerText, ...names].flatMap(
      (text) => text.match(/\[[\w-]+(?:\.[\w-]+)+\]/g) ?? [],
    );
  });
  expect(missing, 'keys without words').toEqual([]);
}

/**
 * Whatever is touched is at least 44 px high and wide, for a wet glove (WCAG 2.2, 2.5.5, AAA). A control inside a label
 * is as large as its label. Links in the middle of a sentence are excepted there, and not here.
 */
export async function expectTouchable(page: Page): Promise<void> {
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('a, button, input, select, textarea, summary')].flatMap((element) => {
      const box = (
        element.matches('input') ? (element.closest('label') ?? element) : element
      ).getBoundingClientRect();
      const shown = box.width > 1 && box.height > 1 && !element.closest('.visually-hidden, .skip');
      return shown && (box.width < 43.5 || box.height < 43.5)
        ? [`${element.outerHTML.slice(0, 80)} ${Math.round(box.width)} x ${Math.round(box.height)}`]
        : [];
    }),
  );
  expect(small).toEqual([]);
}
