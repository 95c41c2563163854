import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import {
  appServer,
  expectAccessible,
  expectNoSideScroll,
  goTo,
  sendAndConfirm,
  signedIn,
  type AppServer,
  type Looking,
} from '../support/app.ts';
import { launchBrowser, launchOn } from '../support/browser.ts';
import { ports } from '../support/ports.ts';

/** The crew at work: time with one touch, hydrants and parts by their codes, the map, and the screen in the sun. */
let browser: Browser;
let server: AppServer;
let open: Looking[] = [];

beforeAll(async () => {
  [server, browser] = await Promise.all([appServer(ports.atWork), launchBrowser()]);
}, 180_000);
afterEach(async () => {
  for (const each of open) await each.close();
  open = [];
});
afterAll(async () => {
  await browser.close();
  await server.end();
});

const crew = async (options: BrowserContextOptions = {}): Promise<Looking> => {
  const looking = await signedIn(browser, server, 'crew', options);
  open.push(looking);
  return looking;
};
/** Reports a strike at this hydrant and gives its id. */
async function struck(hydrantId: string): Promise<string> {
  const looking = await signedIn(browser, server, 'crew');
  await goTo(looking.page, server, `/crew/#/new/strike?hydrant=${hydrantId}`);
  await sendAndConfirm(looking.page);
  await looking.close();
  const { strikes } = await server.ask<{ strikes: StrikeState[] }>('crew', '/api/strikes');
  return strikes.find((strike) => strike.hydrantId === hydrantId)!.strikeId;
}
const repairsOf = async (id: string): Promise<BodyOf<'repair'>[]> =>
  (await server.ask<{ history: HistoryEntry[] }>('manager', `/api/strikes/${id}`)).history
    .filter(({ recorded }) => recorded.submission.kind === 'repair')
    .map(({ recorded }) => recorded.submission.body as BodyOf<'repair'>);
/** Looked at by a person: `SHOTS=folder`. */
const shot = async (page: Page, name: string, part?: string): Promise<void> => {
  const folder = process.env['SHOTS'];
  if (folder === undefined) return;
  const path = `${folder}/${name}.png`;
  if (part === undefined) await page.screenshot({ path });
  else await page.locator(part).first().screenshot({ path });
};
const person = (page: Page, number: number) => page.locator(`#f-crew-${number - 1}`);
const touch = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
/** The sign-in stands in localStorage, which reaches the disk some seconds after it is written. */
const KEPT_AFTER_MS = Number(process.env['KEPT_AFTER_MS'] ?? 6000);
/** The page's clock, which the form reads; the server keeps its own. */
const at = (page: Page, instant: number): Promise<void> => page.clock.setFixedTime(new Date(instant));

describe('time with one touch', () => {
  test('people start, pause and stop one by one and together; the draft survives a reload; times stay editable', async () => {
    const strikeId = await struck('T-101');
    const { page, faults } = await crew();
    const began = Math.floor(Date.now() / 60_000) * 60_000 - 5 * 3_600_000;
    const hour = (hours: number): number => began + hours * 3_600_000;
    await at(page, began);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-101`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await shot(page, 'timer-fresh-360', '#f-crew');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    await person(page, 1)
      .getByText(/^At work since/)
      .waitFor();
    await shot(page, 'timer-one-360', '#f-crew');

    await touch(page, 'Add a person');
    await person(page, 2).getByLabel('Person’s number').fill('w-102');
    await person(page, 2).getByLabel('Labor class').fill('HELPER');
    await at(page, hour(1));
    await person(page, 2)
      .getByRole('button', { name: /^Start/ })
      .click();
    await touch(page, 'Break for all of us');
    await person(page, 2)
      .getByText(/^On a break since/)
      .waitFor();
    await at(page, hour(1.5));
    await touch(page, 'All back to work');

    // A reload, as when the browser was put away: what runs, runs on.
    await page.reload();
    await page.waitForSelector('h1[tabindex]');
    await at(page, hour(2));
    await page.reload();
    await person(page, 1)
      .getByText(/^At work since/)
      .waitFor();
    await person(page, 1).getByText('1 h 30 min worked').waitFor();
    await page.getByText('Still running: 2').waitFor();
    await shot(page, 'timer-running-360', '#f-crew');
    await expectAccessible(page);
    await expectNoSideScroll(page);

    await touch(page, 'Send');
    expect(await page.getByText('No end yet: stop it, or give the date and time.').count()).toBeGreaterThan(
      1,
    );
    await shot(page, 'timer-problems-360');
    await touch(page, 'Stop all of us');
    await sendAndConfirm(page);
    const [body] = await repairsOf(strikeId);
    const iso = (instant: number): string => new Date(instant).toISOString();
    expect(body?.crew).toEqual([
      {
        workerId: 'w-101',
        laborClass: 'LEAD',
        work: [{ from: iso(began), to: iso(hour(2)) }],
        breaks: [{ from: iso(hour(1)), to: iso(hour(1.5)) }],
      },
      {
        workerId: 'w-102',
        laborClass: 'HELPER',
        work: [{ from: iso(hour(1)), to: iso(hour(2)) }],
        breaks: [{ from: iso(hour(1)), to: iso(hour(1.5)) }],
      },
    ]);
    expect(faults).toEqual([]);
  });

  test('what is done so far is sent, and the same people run on in a new form', async () => {
    const strikeId = await struck('T-102');
    const { page } = await crew();
    const began = Math.floor(Date.now() / 60_000) * 60_000 - 4 * 3_600_000;
    await at(page, began);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-102`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    await at(page, began + 3_600_000);
    await touch(page, 'Send what is done so far');
    await page.getByText('Recorded.', { exact: true }).waitFor();
    const [first] = await repairsOf(strikeId);
    const cut = new Date(began + 3_600_000).toISOString();
    expect(first?.crew[0]?.work).toEqual([{ from: new Date(began).toISOString(), to: cut }]);

    // Among the unfinished forms, with the clock running since the cut.
    await goTo(page, server, '/crew/');
    await at(page, began + 2 * 3_600_000);
    await page.locator('a[href^="#/form/"]').first().click();
    await person(page, 1).getByText('1 h 0 min worked').waitFor();
    await touch(page, /^Stop Odalys/);
    await sendAndConfirm(page);
    const bodies = await repairsOf(strikeId);
    expect(bodies).toHaveLength(2);
    expect(
      bodies
        .flatMap(({ crew: members }) => members.flatMap(({ work }) => work))
        .toSorted((a, b) => (a.from < b.from ? -1 : 1)),
    ).toEqual([
      { from: new Date(began).toISOString(), to: cut },
      { from: cut, to: new Date(began + 2 * 3_600_000).toISOString() },
    ]);

    // The next job starts with the same people in one touch.
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-102`);
    expect(await page.getByRole('button', { name: /^Same people/ }).count()).toBe(0);
    await touch(page, 'Remove Person 1');
    await touch(page, 'Same people as last time: Odalys Brennick');
    expect(await person(page, 1).getByLabel('Labor class').inputValue()).toBe('LEAD');
  });

  test('a clock that was set back changes nothing and says so; the time can be typed', async () => {
    const strikeId = await struck('T-103');
    const { page } = await crew();
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-103`);
    await person(page, 1).getByLabel('Labor class').fill('LEAD');
    await person(page, 1)
      .getByRole('button', { name: /^Start/ })
      .click();
    const from = await page.locator('#f-crew-0-work-0-from').inputValue();
    await at(page, Date.now() - 7_200_000);
    await person(page, 1).getByRole('button', { name: /^Stop/ }).click();
    await page
      .getByText(/^Nothing was changed: this device’s clock stands before/)
      .first()
      .waitFor();
    expect(await page.locator('#f-crew-0-work-0-from').inputValue()).toBe(from);
    expect(await page.locator('#f-crew-0-work-0-to').inputValue()).toBe('');
  });

  test('a browser that is killed comes back with the clock running', async () => {
    const profile = await mkdtemp(join(tmpdir(), 'hsl-killed-'));
    const strikeId = await struck('T-105');
    try {
      const first = await launchOn(profile);
      const page = await first.context.newPage();
      await page.goto(`${server.origin}/local/sign-in?role=crew`);
      await page.waitForSelector('h1[tabindex]');
      await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-105`);
      await person(page, 1).getByLabel('Labor class').fill('LEAD');
      await person(page, 1)
        .getByRole('button', { name: /^Start/ })
        .click();
      await person(page, 1)
        .getByText(/^At work since/)
        .waitFor();
      await new Promise((resolve) => setTimeout(resolve, KEPT_AFTER_MS));
      const address = page.url();
      await first.kill();

      const second = await launchOn(profile);
      const again = await second.context.newPage();
      await again.goto(address);
      await person(again, 1)
        .getByText(/^At work since/)
        .waitFor();
      await second.kill();
    } finally {
      await rm(profile, { recursive: true, force: true });
    }
  }, 60_000);
});

/**
 * The camera and the browser's reader of codes, faked in the page: no machine here has a camera, and this Chromium has no
 * reader. What the page does with them is real: when it asks, what it stops, what it makes of a code.
 */
async function withCamera(page: Page, options: { readonly deny?: boolean } = {}): Promise<void> {
  await page.addInitScript((deny: boolean) => {
    const seen = { asked: 0, stopped: 0, codes: [] as string[] };
    Object.assign(window, { seen });
    class Reader {
      static getSupportedFormats(): Promise<string[]> {
        return Promise.resolve(['qr_code', 'data_matrix', 'code_128']);
      }
      detect(): Promise<{ rawValue: string }[]> {
        return Promise.resolve(seen.codes.splice(0).map((rawValue) => ({ rawValue })));
      }
    }
    Object.assign(window, { BarcodeDetector: Reader });
    Object.defineProperty(navigator, 'mediaDevices', {
      value: {
        getUserMedia: () => {
          seen.asked += 1;
          if (deny) return Promise.reject(new DOMException('not allowed', 'NotAllowedError'));
          const canvas = document.createElement('canvas');
          const context = canvas.getContext('2d');
          const draw = (): void => context?.fillRect(Math.random() * 50, 0, 40, 40);
          draw();
          setInterval(draw, 50);
          const stream = canvas.captureStream(20);
          for (const track of stream.getTracks()) {
            const stop = track.stop.bind(track);
            track.stop = () => {
              seen.stopped += 1;
              stop();
            };
          }
          return Promise.resolve(stream);
        },
      },
    });
  }, options.deny ?? false);
}
interface Seen {
  readonly asked: number;
  readonly stopped: number;
  readonly codes: string[];
}
const seenBy = (page: Page): Promise<Seen> => page.evaluate(() => (window as unknown as { seen: Seen }).seen);
const hold = (page: Page, code: string): Promise<void> =>
  page.evaluate((text) => void (window as unknown as { seen: Seen }).seen.codes.push(text), code);

describe('codes', () => {
  test('a tag’s code finds its hydrant; the camera is asked for at the touch and stopped after it; no address is opened', async () => {
    const { page, faults } = await crew();
    await withCamera(page);
    const requested: string[] = [];
    page.on('request', (request) => requested.push(request.url()));
    await goTo(page, server, '/crew/#/new/strike');
    const scan = page.getByRole('button', { name: 'Scan tag' });
    await scan.waitFor();
    expect((await seenBy(page)).asked).toBe(0);
    await scan.click();
    await page.getByText('Hold the code in the frame.').waitFor();
    await shot(page, 'scan-360');
    await expectAccessible(page);
    await hold(page, 'https://elsewhere.invalid/');
    await page.getByText('That code holds no number that can be used: https://elsewhere.invalid/').waitFor();
    await hold(page, 'https://elsewhere.invalid/tags/t-104');
    await page.getByRole('button', { name: 'Change T-104' }).waitFor();
    const after = await seenBy(page);
    expect([after.asked, after.stopped]).toEqual([1, 1]);
    expect(requested.filter((url) => url.includes('elsewhere'))).toEqual([]);
    expect(page.url()).toContain('/crew/#/form/');
    expect(faults).toEqual([]);
  });

  test('a tag that no list has is offered as typed; a closed camera is stopped; a forbidden one says so', async () => {
    const { page } = await crew();
    await withCamera(page);
    await goTo(page, server, '/crew/#/find');
    await touch(page, 'Scan tag');
    await page.getByText('Hold the code in the frame.').waitFor();
    await touch(page, 'Close the camera');
    await expect.poll(async () => (await seenBy(page)).stopped).toBe(1);
    await touch(page, 'Scan tag');
    await hold(page, 'Z-900');
    await touch(page, 'Use “Z-900” as typed');
    await page.getByRole('heading', { name: /Z-900/ }).first().waitFor();

    const { page: forbidden } = await crew();
    await withCamera(forbidden, { deny: true });
    await goTo(forbidden, server, '/crew/#/find');
    await touch(forbidden, 'Scan tag');
    await forbidden.getByText(/^The camera is not allowed here/).waitFor();
  });

  test('a browser that reads no codes says to type', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/find');
    await page.getByText('This browser cannot read codes.', { exact: false }).waitFor();
    expect(await page.getByRole('button', { name: 'Scan tag' }).count()).toBe(0);
  });

  test('a part’s code puts it into the list, a second time as one more', async () => {
    const strikeId = await struck('T-104');
    const { page } = await crew();
    await withCamera(page);
    await goTo(page, server, `/crew/#/new/repair?strike=${strikeId}&hydrant=T-104`);
    await touch(page, 'Scan a part');
    await hold(page, 'bw-gsk');
    await page.getByText('BW-GSK added: Nozzle section gasket set').waitFor();
    await touch(page, 'Scan another part');
    await hold(page, 'BW-GSK');
    await page.getByText('BW-GSK is in the list: now 2.').waitFor();
    expect(await page.getByLabel('How many').inputValue()).toBe('2');
    await shot(page, 'scan-part-360', '#f-parts');
  });
});

describe('the map', () => {
  test('shows what is near; a touch or an arrow key chooses, a button takes', async () => {
    const { page, faults } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await touch(page, 'Map');
    const map = page.locator('svg.drawing');
    await map.waitFor();
    await shot(page, 'map-360');
    await expectAccessible(page);
    await expectNoSideScroll(page);
    // T-103 is 36 ft away and chosen to begin with; the next one to the north stands above it.
    await page.getByRole('button', { name: 'Take T-103' }).waitFor();
    const mark = page.locator('svg.drawing [data-id="T-103"]');
    await mark.focus();
    await page.keyboard.press('ArrowUp');
    await page.getByRole('button', { name: 'Take T-104' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-id'))).toBe('T-104');
    // A thumb that comes down 15 px beside a mark means that mark.
    const box = (await page.locator('svg.drawing [data-id="T-102"] .dot').boundingBox())!;
    await page.mouse.click(box.x + box.width / 2 + 15, box.y + box.height / 2);
    await page.getByRole('button', { name: 'Take T-102' }).waitFor();
    // From far off, several stand under one thumb and are told apart by name.
    for (let times = 0; times < 4; times += 1)
      if (await page.getByRole('button', { name: 'Wider' }).isEnabled()) await touch(page, 'Wider');
    const middle = (await page.locator('svg.drawing [data-id="T-103"] .dot').boundingBox())!;
    await page.mouse.click(middle.x + middle.width / 2, middle.y + middle.height / 2);
    await page.getByText('Several stand there:').waitFor();
    await shot(page, 'map-several-360');
    await touch(page, 'Take T-102');
    await page.getByRole('button', { name: 'Change T-102' }).waitFor();
    expect(faults).toEqual([]);
  });
});

describe('with no signal', () => {
  test('number, position, tag and map find the hydrant, and the clock runs', async () => {
    const { page } = await crew({ serviceWorkers: 'allow' });
    await withCamera(page);
    await goTo(page, server, '/crew/');
    await page.getByText('Ready with no signal: 6 hydrants on this device.').waitFor();
    await server.kill();
    try {
      await goTo(page, server, '/crew/#/new/strike');
      await touch(page, 'Map');
      await page.getByText(/^From the list on this device, as of/).waitFor();
      await shot(page, 'map-offline-360');
      await touch(page, 'Take T-103');
      await touch(page, 'Change T-103');
      await touch(page, 'Scan tag');
      await hold(page, 'T-106');
      await touch(page, 'Change T-106');
      await page.getByRole('searchbox', { name: 'Hydrant' }).fill('T-105');
      await page.locator('.results button').first().click();
      await touch(page, 'Change T-105');
      await touch(page, 'Near me');
      await page.locator('.results button').first().click();
      await page.getByRole('button', { name: 'Change T-103' }).waitFor();

      await goTo(page, server, '/crew/#/new/repair?hydrant=T-103');
      await person(page, 1)
        .getByRole('button', { name: /^Start/ })
        .click();
      await person(page, 1)
        .getByText(/^At work since/)
        .waitFor();
    } finally {
      await server.start();
    }
  }, 90_000);
});

/**
 * A pace for a hand in a wet glove: the keystroke-level model's times (Card, Moran, Newell, Communications of the ACM
 * 23 (7), 1980; from memory: thinking 1.35 s, pointing 1.1 s, pressing 0.1 s, a key 0.28 s for an average typist),
 * every one doubled.
 */
const TOUCH_MS = 2 * (1350 + 1100 + 100);
const KEY_MS = 2 * 280;
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

describe('a strike in under 60 seconds', () => {
  test.each(['near me', 'by number'] as const)(
    '%s: from the start screen to out of service on the server',
    async (way) => {
      const { page } = await crew();
      const hydrantId = way === 'near me' ? 'T-103' : 'T-106';
      await goTo(page, server, '/crew/');
      let touches = 0;
      const press = async (find: ReturnType<Page['getByRole']>): Promise<void> => {
        await wait(TOUCH_MS);
        touches += 1;
        await find.click();
      };
      const began = Date.now();
      await press(page.getByRole('link', { name: 'Report a strike' }));
      if (way === 'near me') await press(page.getByRole('button', { name: 'Near me' }));
      else {
        await press(page.getByRole('searchbox', { name: 'Hydrant' }));
        await page.keyboard.type(hydrantId, { delay: KEY_MS });
      }
      await press(page.locator('.results button').first());
      await press(page.getByRole('button', { name: 'Send' }));
      await page.getByText('Recorded.', { exact: true }).waitFor();
      const took = (Date.now() - began) / 1000;
      const { status } = await server.ask<{ status: { inService: boolean } }>(
        'manager',
        `/api/hydrants/${hydrantId}`,
      );
      expect(status.inService).toBe(false);
      expect(touches).toBe(4);
      expect(took).toBeLessThan(60);
      process.stdout.write(`strike ${way}: ${touches} touches, ${took.toFixed(1)} s\n`);
    },
    90_000,
  );

  test('keyboard alone does it', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/#/new/strike');
    await page.getByRole('searchbox', { name: 'Hydrant' }).focus();
    await page.keyboard.type('T-102');
    await page.locator('.results button').first().waitFor();
    const at_ = async (): Promise<string> =>
      page.evaluate(() => document.activeElement?.textContent?.replace(/\s+/g, ' ').trim() ?? '');
    for (let tabs = 0; tabs < 8 && !(await at_()).startsWith('T-102'); tabs += 1)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change T-102' }).waitFor();
    for (let tabs = 0; tabs < 80 && (await at_()) !== 'Send'; tabs += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Recorded.', { exact: true }).waitFor();
  });
});

describe('to be read anywhere', () => {
  const screens = {
    home: '/crew/',
    strike: '/crew/#/new/strike',
    find: '/crew/#/find',
    repair: '/crew/#/new/repair?hydrant=T-103',
  };
  test.each([
    ['light', {}],
    ['dark', { colorScheme: 'dark' }],
    ['sunlight', {}],
  ] as const)(
    '%s, 320 px, Spanish: accessible, no side scroll, nothing to touch under 44 px',
    async (look, options) => {
      const { page } = await crew({ viewport: { width: 320, height: 640 }, ...options });
      await goTo(page, server, '/crew/');
      await touch(page, 'Español');
      if (look === 'sunlight') {
        await page.getByLabel('Pantalla').selectOption('sunlight');
        expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
          'rgb(255, 255, 255)',
        );
      }
      for (const [name, path] of Object.entries(screens)) {
        await goTo(page, server, path);
        if (name === 'repair') await page.locator('.timer').first().waitFor();
        if (name === 'strike') {
          await touch(page, 'Mapa');
          await page.locator('svg.drawing').waitFor();
        }
        await shot(page, `${look}-${name}-320`);
        if (name === 'repair') await shot(page, `${look}-crew-320`, '#f-crew');
        await expectAccessible(page);
        await expectNoSideScroll(page);
        const small = await page.evaluate(() =>
          [
            ...document.querySelectorAll<HTMLElement>(
              'button, a[href], select, summary, input:not([type=file])',
            ),
          ]
            .filter((each) => each.checkVisibility() && !each.closest('.visually-hidden, .skip, p a, li p'))
            .map((each) => each.closest<HTMLElement>('label.choice') ?? each)
            .map((each) => ({
              text: (each.textContent ?? '').trim().slice(0, 40) || each.id,
              height: each.getBoundingClientRect().height,
              tag: each.tagName,
              inline: getComputedStyle(each).display === 'inline',
            }))
            .filter(({ height, inline }) => height > 1 && height < 43.9 && !inline)
            .map(({ tag, text, height }) => `${tag} ${text}: ${height}`),
        );
        expect(small, name).toEqual([]);
      }
      // The choice is this device's and stays.
      if (look === 'sunlight')
        expect(await page.evaluate(() => document.documentElement.dataset['look'])).toBe('sunlight');
    },
    90_000,
  );

  test('the look chosen stands after a reload in the utility’s own language and units; a time keeps its AM or PM', async () => {
    const { page } = await crew();
    await goTo(page, server, '/crew/');
    await page.getByLabel('Screen').selectOption('sunlight');
    await goTo(page, server, '/crew/#/new/valve-operation?hydrant=T-103');
    expect(await page.evaluate(() => document.documentElement.dataset['look'])).toBe('sunlight');
    const when = page.locator('input[type="datetime-local"]').first();
    await when.fill('2026-12-28T20:58');
    expect(await when.evaluate((input) => input.clientWidth - input.scrollWidth)).toBe(0);
    await goTo(page, server, '/crew/');
    expect(await page.getByLabel('Screen').inputValue()).toBe('sunlight');
  });
});
