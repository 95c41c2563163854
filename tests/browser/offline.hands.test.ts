import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { goTo, sendForm } from '../support/app.ts';
import { badLineTest, expectNothingWaits, expireSignIn, kept, waiting } from '../support/badLineTest.ts';
import { ports } from '../support/ports.ts';
import { strikesAt } from '../support/records.ts';

/** Several hands, tabs and devices, wrong clocks and false answers. Each ends with everything there exactly once. */
const app = badLineTest(ports.offlineHands, ports.offlineHandsLine);
const { down, expectOnce, fillStrike, line, phone, reached, server, stories, up } = app;

const signInAgain = async (page: Page, role: 'crew' | 'manager'): Promise<void> => {
  await page.goto(`${reached.origin}/local/sign-in?role=${role}`);
  await page.waitForSelector('h1[tabindex]');
};
/** Somebody else picks the phone up, while there is no signal. */
const handTo = async (page: Page, role: 'crew' | 'manager'): Promise<void> => {
  await page.evaluate((token) => localStorage.setItem('hsl.token', token), await server.token(role));
};
const keepStrike = async (page: Page, hydrantId: string, withPhoto = false): Promise<void> => {
  await fillStrike(page, hydrantId, withPhoto);
  await sendForm(page);
  await kept(page);
};
/** The entry that waits, this many times more, each about another place. */
const multiply = (page: Page, times: number): Promise<void> =>
  page.evaluate(async (howMany) => {
    interface Kept {
      submissionId: string;
      submission: { submissionId: string; subject: { strikeId: string }; body: object };
    }
    const db = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('hsl');
      request.onsuccess = () => resolve(request.result);
    });
    const transaction = db.transaction('outbox', 'readwrite');
    const store = transaction.objectStore('outbox');
    const [first] = await new Promise<Kept[]>((resolve) => {
      const request = store.getAll();
      request.onsuccess = () => resolve(request.result as Kept[]);
    });
    if (!first) throw new Error('nothing waits');
    const id = (from: string, index: number): string => from.slice(0, 24) + String(index).padStart(12, '0');
    for (let index = 1; index <= howMany; index += 1) {
      const { submission } = first;
      const submissionId = id(first.submissionId, index);
      const strikeId = id(submission.subject.strikeId, index);
      store.put({
        ...first,
        submissionId,
        submission: {
          ...submission,
          submissionId,
          subject: { ...submission.subject, strikeId },
          body: { ...submission.body, hydrantId: null, placeDescription: `Post ${index}` },
        },
      });
    }
    await new Promise<void>((resolve) => {
      transaction.oncomplete = () => resolve();
    });
    db.close();
  }, times);
/** The clock of a device, so many hours off from the next page on. */
const setClockOff = async (page: Page, hours: number): Promise<void> => {
  await page.addInitScript((ms) => {
    const now = Date.now.bind(Date);
    globalThis.Date = new Proxy(Date, {
      construct: (target, given: unknown[]) =>
        Reflect.construct(target, given.length === 0 ? [now() + ms] : given) as Date,
      get: (target, name) => (name === 'now' ? () => now() + ms : (Reflect.get(target, name) as unknown)),
    });
  }, hours * 3_600_000);
};

describe('several hands', { timeout: 90_000 }, () => {
  test('fifty entries of a person whose sign-in has ended: none is refused, and each goes once after a new one', async () => {
    const page = await phone();
    down();
    await keepStrike(page, 'T-101');
    await multiply(page, 49);
    await expireSignIn(page);
    up();
    await goTo(page, reached, '/crew/#/outbox');
    await page.getByText('Sign in again to send.', { exact: false }).waitFor();
    await page.waitForTimeout(2_000);
    expect(await waiting(page)).toBe(50);
    await signInAgain(page, 'crew');
    await expect.poll(() => waiting(page), { timeout: 60_000 }).toBe(0);
    await expectOnce('T-101');
    const places = async (): Promise<string[]> => {
      const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
      return strikes.flatMap(({ placeDescription }) => placeDescription ?? []).sort();
    };
    const posts = Array.from({ length: 49 }, (_, index) => `Post ${index + 1}`).sort();
    await expect.poll(places, { timeout: 20_000 }).toEqual(posts);
  });

  test('two people on one phone: what each wrote goes with their own sign-in and in their own name', async () => {
    const page = await phone();
    down();
    await keepStrike(page, 'T-102');
    await handTo(page, 'manager');
    // The hydrant is out and dispatch does not know, whoever holds the phone now.
    await goTo(page, reached, '/crew/');
    await page.getByText('Tell dispatch by radio or phone now.').waitFor();
    await page.getByRole('link', { name: 'One outage is not sent' }).waitFor();
    await keepStrike(page, 'T-103');
    up();
    await goTo(page, reached, '/crew/#/outbox');
    const second = await expectOnce('T-103');
    expect(second.recorded.submission.person.personId).not.toBe('w-101');
    expect(second.recorded.deliveredBy).toBeNull();
    expect(await stories('T-102')).toEqual([]);
    expect(await waiting(page)).toBe(1);
    await signInAgain(page, 'crew');
    const first = await expectOnce('T-102');
    expect(first.recorded.submission.person.personId).toBe('w-101');
    expect(first.recorded.deliveredBy).toBeNull();
    await expectNothingWaits(page);
  });

  test('two tabs of one person send at the same moment, and send one form that stands open in both', async () => {
    const page = await phone();
    const other = await page.context().newPage();
    await goTo(other, reached, '/crew/');
    down();
    await keepStrike(page, 'T-104');
    await keepStrike(other, 'T-105');
    up();
    line.seen.length = 0;
    const sendNow = (tab: Page) => goTo(tab, reached, '/crew/#/outbox');
    await Promise.all([sendNow(page), sendNow(other)]);
    await expectOnce('T-104');
    await expectOnce('T-105');
    await expectNothingWaits(page);
    expect(line.seen.filter((request) => request === 'POST /api/submissions')).toHaveLength(2);

    await fillStrike(page, 'T-106');
    const address = page.url();
    await other.goto('about:blank');
    await other.goto(address);
    await other.getByRole('button', { name: 'Change T-106' }).waitFor();
    await Promise.all([sendForm(page), sendForm(other)]);
    await expectOnce('T-106');
    await expectNothingWaits(page);
  });
});

describe('several devices', { timeout: 90_000 }, () => {
  test('that report one strike without knowing of each other: both reports are there, and the hydrant is out', async () => {
    const [first, second] = [await phone(), await phone('manager')];
    const before = (await stories('T-101')).length;
    down();
    await keepStrike(first, 'T-101');
    await keepStrike(second, 'T-101');
    up();
    await Promise.all([goTo(first, reached, '/crew/#/outbox'), goTo(second, reached, '/crew/#/outbox')]);
    await expectNothingWaits(first);
    await expectNothingWaits(second);
    await expect.poll(async () => (await stories('T-101')).length, { timeout: 20_000 }).toBe(before + 2);
    expect((await stories('T-101')).map((story) => story.length)).toEqual(Array(before + 2).fill(1));
    // Two people say that it is struck; that it is one strike is for a person to say.
    await goTo(first, reached, `/crew/#/strike/${(await strikesAt(server, 'T-101'))[0]!.strikeId}`);
    await first
      .getByText(/same strike|one strike/i)
      .first()
      .waitFor();
  });
});

describe('a line that lies', { timeout: 90_000 }, () => {
  test('a photo that never gets through holds up no report', async () => {
    const page = await phone();
    down();
    await keepStrike(page, 'T-102', true);
    await keepStrike(page, 'T-103');
    const before = (await stories('T-103')).length;
    line.fate = (method) => (method === 'PUT' ? 'cut' : 'pass');
    await goTo(page, reached, '/crew/#/outbox');
    await expect.poll(async () => (await stories('T-103')).length, { timeout: 20_000 }).toBe(before + 1);
    expect(await waiting(page)).toBe(1);
    up();
    await expectNothingWaits(page);
  });

  test('a network that answers with a page of its own has refused nothing', async () => {
    const page = await phone();
    const before = (await stories('T-104')).length;
    down();
    await keepStrike(page, 'T-104');
    line.fate = (method) => (method === 'POST' ? 'portal' : 'pass');
    await goTo(page, reached, '/crew/#/outbox');
    await expect
      .poll(() => line.seen.filter((one) => one === 'POST /api/submissions').length)
      .toBeGreaterThan(0);
    await page.waitForTimeout(1_000);
    expect(await page.getByText('Refused', { exact: false }).count()).toBe(0);
    up();
    await expectNothingWaits(page);
    await expect.poll(async () => (await stories('T-104')).length, { timeout: 20_000 }).toBe(before + 1);
  });
});

describe.each([
  ['a day ahead', 26],
  ['a day behind', -26],
])('a device whose clock is %s', (_, hours) => {
  test('signs in, keeps, and sends once; the server says when it came', { timeout: 90_000 }, async () => {
    const page = await phone();
    const hydrantId = hours > 0 ? 'T-105' : 'T-106';
    const before = (await stories(hydrantId)).length;
    await setClockOff(page, hours);
    await signInAgain(page, 'crew');
    expect(await page.getByText('Sign in again to send.', { exact: false }).count()).toBe(0);
    down();
    await keepStrike(page, hydrantId);
    up();
    await goTo(page, reached, '/crew/#/outbox');
    await expectNothingWaits(page);
    await expect.poll(async () => (await stories(hydrantId)).length, { timeout: 20_000 }).toBe(before + 1);
    const [entry] = (await stories(hydrantId)).at(0)!;
    expect(Math.abs(Date.parse(entry!.recorded.recordedAt) - Date.now())).toBeLessThan(120_000);
  });
});
