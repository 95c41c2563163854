import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { expectNoSideScroll, goTo, sendAndConfirm, sendForm } from '../support/app.ts';
import { badLineTest, kept, waiting } from '../support/badLineTest.ts';
import { fillForm } from '../support/fillForm.ts';
import { ports } from '../support/ports.ts';
import { historyOf } from '../support/records.ts';
import { reportStrike } from '../support/reportStrike.ts';
import { sampleBodies } from '../support/sampleBodies.ts';

/**
 * The kinds that the night strike does not fill in (crew.night), on a phone and on a laptop, with a signal and without:
 * each is recorded once and says what was typed.
 */
const { device, down, line, reached, server, signIn } = badLineTest(
  ports.offlineKinds,
  ports.offlineKindsLine,
);

/** What the forms about a strike are filled in with; `link` names another strike and comes last. */
const aboutStrike = {
  'planned-work': sampleBodies['planned-work'],
  'expected-return': sampleBodies['expected-return'],
  party: sampleBodies.party,
  // A valve that holds is the whole answer: nothing else is asked.
  'water-lost': {
    question: { found: { mainValve: 'holds' } },
    byWorkerId: sampleBodies['water-lost'].byWorkerId,
    note: sampleBodies['water-lost'].note,
  },
  'water-quality-answer': sampleBodies['water-quality-answer'],
  link: { reason: sampleBodies.link.reason, note: sampleBodies.link.note },
} as const;
const aboutHydrant = { inspection: sampleBodies.inspection, outage: sampleBodies.outage } as const;
type Kind = keyof typeof aboutStrike | keyof typeof aboutHydrant;
const kinds = [...Object.keys(aboutHydrant), ...Object.keys(aboutStrike)] as Kind[];

/** Each strike is another one, and all are joined to this. */
const joined = 'T-106';
const struck = ['T-101', 'T-102', 'T-103', 'T-104'] as const;
const strikeIds = new Map<string, string>();
beforeAll(async () => {
  for (const hydrantId of [...struck, joined])
    strikeIds.set(hydrantId, await reportStrike(signIn, server, hydrantId));
}, 180_000);

interface Job {
  readonly hydrantId: (typeof struck)[number];
  readonly strikeId: string;
  /** The strike that it is joined to, as the list has it now. */
  readonly sameAsStrikeId: string;
}
async function jobAt(hydrantId: Job['hydrantId']): Promise<Job> {
  const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
  const other = strikes.find(({ memberIds }) => memberIds.includes(strikeIds.get(joined)!));
  return { hydrantId, strikeId: strikeIds.get(hydrantId)!, sameAsStrikeId: other!.strikeId };
}
const bodyOf = (kind: Kind, { sameAsStrikeId }: Job): object => ({
  ...{ ...aboutHydrant, ...aboutStrike }[kind],
  ...(kind === 'link' ? { sameAsStrikeId } : {}),
});

async function fill(page: Page, kind: Kind, job: Job): Promise<void> {
  const strike = kind in aboutStrike ? `strike=${job.strikeId}&` : '';
  await goTo(page, reached, `/crew/#/new/${kind}?${strike}hydrant=${job.hydrantId}`);
  await page.waitForFunction(() => location.hash.startsWith('#/form/'));
  await fillForm(page, kind, bodyOf(kind, job));
  await expectNoSideScroll(page);
}

/** As the server writes instants: to the thousandth of a second. */
const asStored = (body: object): unknown =>
  JSON.parse(JSON.stringify(body).replaceAll(/(T\d\d:\d\d:\d\d)Z"/g, '$1.000Z"'));

/** What the hydrant's page says follows a moment later than the record. */
async function expectEachOnce(job: Job): Promise<void> {
  const history = (await historyOf(server, job.strikeId)).map(({ recorded }) => recorded.submission);
  for (const kind of Object.keys(aboutStrike) as Kind[]) {
    const bodies = history
      .filter(
        ({ subject, ...submission }) =>
          submission.kind === kind && subject.type === 'strike' && subject.strikeId === job.strikeId,
      )
      .map(({ body }) => body);
    expect(bodies, kind).toHaveLength(1);
    expect(bodies[0], kind).toMatchObject(asStored(bodyOf(kind, job)) as object);
  }
  const { status } = await server.ask<{ status: HydrantStatus }>('crew', `/api/hydrants/${job.hydrantId}`);
  expect(status.open.filter(({ cause }) => cause === 'main-shut').map(({ since }) => since)).toEqual([
    '2026-03-04T02:00:00.000Z',
  ]);
  expect(status.lastInspectedAt).toBe('2026-02-01T15:00:00.000Z');
}
const sent = (): number => line.seen.filter((request) => request === 'POST /api/submissions').length;

describe.each([
  { on: 'a phone', width: 360, height: 740, online: struck[0], offline: struck[1] },
  { on: 'a laptop', width: 1280, height: 800, online: struck[2], offline: struck[3] },
])('on $on', { timeout: 120_000 }, ({ width, height, online, offline }) => {
  test('with a signal each kind is recorded as it is sent', async () => {
    const job = await jobAt(online);
    const { page } = await signIn('crew', { viewport: { width, height } }, reached);
    const before = sent();
    for (const kind of kinds) {
      await fill(page, kind, job);
      await sendAndConfirm(page);
    }
    await vi.waitFor(() => expectEachOnce(job), { timeout: 20_000 });
    expect(sent() - before).toBe(kinds.length);
  });

  test('with none each waits, outlives the browser, and is recorded once though answers are lost', async () => {
    const job = await jobAt(offline);
    const mine = await device();
    const first = await mine.open();
    await first.page.setViewportSize({ width, height });
    await first.page.goto(`${reached.origin}/local/sign-in?role=crew`);
    await first.page.waitForSelector('h1[tabindex]');
    await goTo(first.page, reached, '/crew/');
    await first.page.getByText('Ready with no signal', { exact: false }).waitFor();
    // What the truck takes along: the strike's page was open before it left.
    await goTo(first.page, reached, `/crew/#/strike/${job.strikeId}`);
    await first.page.waitForLoadState('networkidle');
    down();
    for (const kind of kinds) {
      await fill(first.page, kind, job);
      await sendForm(first.page);
      await kept(first.page);
    }
    expect(await waiting(first.page)).toBe(kinds.length);
    await first.kill();

    let tries = 0;
    line.fate = (method, path) => {
      if (method !== 'POST' || path !== '/api/submissions') return 'pass';
      tries += 1;
      // Twice: a browser repeats by itself what is lost on a connection that stood open, and the app never knows.
      return tries % 3 === 0 ? 'pass' : 'lose-answer';
    };
    const second = await mine.open();
    await second.page.goto(`${reached.origin}/local/sign-in?role=crew`);
    await second.page.waitForSelector('h1[tabindex]');
    await goTo(second.page, reached, '/crew/#/outbox');
    // Each try that failed would be waited out, longer every time; a signal that comes back is not.
    const left = async (): Promise<number> => {
      await second.page.evaluate(() => window.dispatchEvent(new Event('online')));
      return waiting(second.page);
    };
    await expect.poll(left, { timeout: 60_000, interval: 500 }).toBe(0);
    await vi.waitFor(() => expectEachOnce(job), { timeout: 20_000 });
    expect(tries).toBeGreaterThan(2 * kinds.length);
  });
});
