import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LogEntry } from '../../functions/log/log.ts';
import { POINTER_KEY, readPointer } from '../../functions/publish/pointer.ts';
import { PublicationRefused, publishOnce, type PublishDeps } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { filePublished } from '../../functions/stores/published/filePublished.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublishedStore } from '../../functions/stores/published/published.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import { aHydrant, anOutage, aStatus, inventoryOf, townSettings } from '../support/town.ts';

/** Pages as plain as can be, with what every page must have: the real ones are tested where they are rendered. */
const plainRenderer: SiteRenderer = {
  async render(path, { edition, hydrant }) {
    const { checkedAt, relyUntil, outOfService } = edition.snapshot;
    const times = [checkedAt, relyUntil].map((at) => `<time datetime="${at}">${at}</time>`).join('');
    const isList = path === '/' || path === '/es/';
    const out = isList ? outOfService.map(({ hydrantId }) => `[${hydrantId ?? 'unknown'}]`).join('') : '';
    const own = hydrant === null ? 'withdrawn' : hydrant && `${hydrant.hydrantId}${hydrant.past.length}`;
    return `<link href="/_assets/site.css"><a href="tel:5550142">555-0142</a>${times}${path} ${own ?? ''} out:${out}`;
  },
  asset: async (path) =>
    new TextEncoder().encode(path.endsWith('.css') ? 'a{src:url(/_assets/face.woff2)}' : 'font'),
};

const hydrants = [
  aHydrant('A'),
  aHydrant('B', { latitudeDeg: 39.201 }),
  aHydrant('C', { latitudeDeg: 39.202 }),
];
const sourcesWith = (...out: string[]): PublicSources => ({
  inventory: inventoryOf(hydrants),
  statuses: out.map((hydrantId) => aStatus(hydrantId, [anOutage(`o-${hydrantId}`, { cause: 'frozen' })])),
  strikes: [],
  flowTests: new Map(),
});
const minute = (minutes: number): Date => new Date(Date.UTC(2026, 2, 4, 20, minutes));

function publisher(
  store: PublishedStore,
  sources: PublicSources,
  more: Partial<PublishDeps> = {},
): PublishDeps {
  return {
    settings: townSettings,
    store,
    renderer: plainRenderer,
    readSources: async () => sources,
    stillRecorded: async () => true,
    ...more,
  };
}
const textAt = async (store: PublishedStore, key: string): Promise<string> =>
  new TextDecoder().decode((await store.get(key))?.bytes);

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'publish-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const stores: readonly [string, () => PublishedStore][] = [
  ['the store in memory', () => memoryPublished()],
  ['files', () => filePublished(join(folder, String(Math.random())))],
];

/** Pages that say when they were checked, and are made anew at each. */
const lists = ['', 'cover/', 'map/', 'wall/'].flatMap((page) => [
  `${page}index.html`,
  `es/${page}index.html`,
]);
/** Every file for machines that says when it was checked, and so is new at each check. */
const feeds = [
  'v1/changes.json',
  'v1/index.json',
  'v1/out-of-service.csv',
  'v1/out-of-service.geojson',
  ...['en', 'es'].flatMap((locale) => [
    `v1/${locale}/out-of-service.atom`,
    `v1/${locale}/out-of-service.feed.json`,
    `v1/${locale}/returns-and-work.ics`,
  ]),
];

/** Figures of the years, which say the same until something happens. */
const years = ['years/', 'years/2026/'].flatMap((page) => [`${page}index.html`, `es/${page}index.html`]);

describe.each(stores)('a publisher on %s', (_, open) => {
  test('writes every page in both languages, the snapshot and the assets they need', async () => {
    const store = open();
    const { outcome, written } = await publishOnce(publisher(store, sourcesWith('A')), minute(5));
    expect(outcome).toBe('published');
    expect(written.toSorted()).toEqual(
      [
        '404.html',
        '_assets/face.woff2',
        '_assets/site.css',
        'es/how-to-read/index.html',
        'es/hydrants/A/index.html',
        'how-to-read/index.html',
        'hydrants/A/index.html',
        ...lists,
        ...years,
        'v1/snapshot.json',
        'v1/map/index.json',
        'v1/map/c.json',
        ...feeds,
        'v1/openapi.json',
      ].toSorted(),
    );
    const page = await store.get('index.html');
    // A minute is the most that a cache may keep a page.
    expect(Number(/max-age=(\d+)/.exec(page!.cacheControl)![1])).toBeLessThanOrEqual(60);
    expect(page!.contentType).toBe('text/html; charset=utf-8');
    expect(JSON.parse(await textAt(store, 'v1/snapshot.json'))).toMatchObject({
      version: 1,
      checkedAt: '2026-03-04T20:05:00.000Z',
      utility: { license: { name: 'CC0 1.0' } },
    });
  });

  test('writes again what a new check changed, and leaves alone what did not change', async () => {
    const store = open();
    await publishOnce(publisher(store, sourcesWith('A')), minute(5));
    const { written, unchanged } = await publishOnce(publisher(store, sourcesWith('A')), minute(10));
    // The snapshot, the feeds and the lists say when they were checked; the other pages would say what they said.
    expect(written.toSorted()).toEqual(
      [...lists, 'v1/snapshot.json', 'v1/map/index.json', ...feeds].toSorted(),
    );
    expect(unchanged).toBe(9 + years.length);
    expect(await textAt(store, 'hydrants/A/index.html')).toContain('20:05');
  });

  test('a page that says the same is made anew before it could grow too old', async () => {
    const store = open();
    const checks: string[] = [];
    // Every five minutes, to be relied on for twenty: one publication may be missed, so ten is the oldest that stays.
    for (const at of [0, 5, 10, 15, 20]) {
      await publishOnce(publisher(store, sourcesWith('A')), minute(at));
      checks.push(/20:\d\d/.exec(await textAt(store, 'hydrants/A/index.html'))![0]);
    }
    expect(checks).toEqual(['20:00', '20:00', '20:00', '20:15', '20:15']);
  });

  test('a page that says something else is written at once', async () => {
    const store = open();
    await publishOnce(publisher(store, sourcesWith('A', 'B')), minute(5));
    const ended = [anOutage('o-A', { cause: 'frozen', endedAt: '2026-03-04T20:06:00Z' })];
    const back = { ...sourcesWith('B'), statuses: [aStatus('A', ended), ...sourcesWith('B').statuses] };
    const { written } = await publishOnce(publisher(store, back), minute(7));
    expect(written).toContain('hydrants/A/index.html');
    // B's page offers A again.
    expect(written).toContain('hydrants/B/index.html');
    expect(written).not.toContain('how-to-read/index.html');
  });

  test('the same check twice writes nothing the second time', async () => {
    const store = open();
    await publishOnce(publisher(store, sourcesWith('A')), minute(5));
    expect(await publishOnce(publisher(store, sourcesWith('A')), minute(5))).toMatchObject({
      outcome: 'superseded',
      written: [],
    });
  });

  test('an older check never replaces a newer one', async () => {
    const store = open();
    await publishOnce(publisher(store, sourcesWith('A', 'B')), minute(5));
    const older = await publishOnce(publisher(store, sourcesWith('C')), new Date(minute(5).getTime() - 1));
    expect(older.outcome).toBe('superseded');
    expect(await textAt(store, 'index.html')).toContain('[A][B]');
  });

  test('a new deployment says that it is not set up', async () => {
    const store = open();
    await publishOnce(publisher(store, { ...sourcesWith(), inventory: null }), minute(5));
    expect(JSON.parse(await textAt(store, 'v1/snapshot.json'))).toMatchObject({ inventory: null });
  });

  test('a hydrant whose records were withdrawn keeps its address, which says so', async () => {
    const store = open();
    await publishOnce(publisher(store, sourcesWith('A')), minute(5));
    await publishOnce(publisher(store, sourcesWith(), { stillRecorded: async () => false }), minute(6));
    expect(await textAt(store, 'hydrants/A/index.html')).toContain('withdrawn');
    await publishOnce(publisher(store, sourcesWith()), minute(26));
    expect(await textAt(store, 'hydrants/A/index.html')).toContain('20:26');
    await publishOnce(publisher(store, sourcesWith('A')), minute(28));
    expect(await textAt(store, 'hydrants/A/index.html')).not.toContain('withdrawn');
  });
});

describe('the last good page stays, and one line says why', () => {
  const bad: readonly [string, Partial<PublishDeps>, RegExp][] = [
    [
      'the stores cannot be read',
      { readSources: () => Promise.reject(new StoreUnavailable('no answer')) },
      /StoreUnavailable/,
    ],
    [
      'the snapshot is not valid',
      {
        readSources: async () => ({
          ...sourcesWith(),
          statuses: [aStatus('A', [anOutage('o', { cause: 'a name' })])],
        }),
        stillRecorded: async () => false,
      },
      /snapshot\.outOfService\.0\.outages\.0\.cause/,
    ],
    [
      'the inventory is gone',
      { readSources: async () => ({ ...sourcesWith('A'), inventory: null }) },
      /inventory-vanished/,
    ],
    [
      'the inventory is empty',
      { readSources: async () => ({ ...sourcesWith('A'), inventory: inventoryOf([]) }) },
      /inventory-empty/,
    ],
    [
      'the projections lost an outage that the ledger holds',
      { readSources: async () => sourcesWith() },
      /outage-vanished o-A/,
    ],
    [
      'a page does not render',
      { renderer: { ...plainRenderer, render: () => Promise.reject(new Error('broken')) } },
      /Error/,
    ],
    [
      'a page has no time on it',
      { renderer: { ...plainRenderer, render: async () => '<a href="tel:5550142">all is well</a>' } },
      /Error/,
    ],
  ];

  test.each(bad)('when %s', async (_, more, reason) => {
    const store = memoryPublished();
    await publishOnce(publisher(store, sourcesWith('A')), minute(5));
    const etags = (): [string, string][] =>
      [...store.objects].filter(([key]) => key !== POINTER_KEY).map(([key, { etag }]) => [key, etag]);
    const before = etags();
    const lines: LogEntry[] = [];
    await expect(
      publishAndReport(publisher(store, sourcesWith('A'), more), minute(10), (entry) => lines.push(entry)),
    ).rejects.toThrow();
    expect(etags()).toEqual(before);
    expect((await readPointer(store)).pointer.checkedAt).toBe('2026-03-04T20:05:00.000Z');
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({
      level: 'error',
      event: 'public-page-kept',
      hurt: expect.stringContaining('readers'),
      keptCheckedAt: '2026-03-04T20:05:00.000Z',
      keptRelyUntil: '2026-03-04T20:25:00.000Z',
    });
    expect(JSON.stringify(lines[0])).toMatch(reason);
    // The value that broke the schema may be somebody's data.
    expect(JSON.stringify(lines[0])).not.toContain('a name');
  });

  test('when this publisher’s clock is behind the page, it says so instead of going silent', async () => {
    const store = memoryPublished();
    await publishOnce(publisher(store, sourcesWith('A')), minute(30));
    const late = publishOnce(publisher(store, sourcesWith('A')), minute(5));
    await expect(late).rejects.toBeInstanceOf(PublicationRefused);
    await expect(late).rejects.toThrow('clock-behind');
  });

  test('a good publication is one line as well', async () => {
    const lines: LogEntry[] = [];
    const deps = publisher(memoryPublished(), sourcesWith('A'));
    await publishAndReport(deps, minute(5), (entry) => lines.push(entry));
    expect(lines).toMatchObject([
      { level: 'info', event: 'public-page-published', written: 29 + years.length },
    ]);
  });
});

describe('a store that fails in the middle', () => {
  /** Answers as `store` until the `last`-th write, and then not at all. */
  function failingAfter(store: PublishedStore, last: number): PublishedStore {
    let writes = 0;
    return {
      get: (key) => store.get(key),
      head: (key) => store.head(key),
      put: (...given) =>
        ++writes > last ? Promise.reject(new StoreUnavailable('cut off')) : store.put(...given),
    };
  }

  // The pointer says what begins; six pages and the snapshot are written; then the pointer is moved.
  test.each(Array.from({ length: 9 }, (_, index) => index))(
    'after %d writes leaves whole pages, and the next publication mends it',
    async (last) => {
      const store = memoryPublished();
      await publishOnce(publisher(store, sourcesWith('A')), minute(5));
      await expect(
        publishOnce(publisher(failingAfter(store, last), sourcesWith('A', 'B')), minute(10)),
      ).rejects.toBeInstanceOf(StoreUnavailable);
      expect((await readPointer(store)).pointer).toMatchObject({ checkedAt: minute(5).toISOString() });
      for (const [key, { bytes }] of store.objects) {
        const text = new TextDecoder().decode(bytes);
        // Each page is wholly of one check: its list and its time agree.
        if (key.endsWith('.html')) expect(text).toMatch(/20:05.*out:(\[A\])?$|20:10.*out:(\[A\]\[B\])?$/s);
      }
      const { written } = await publishOnce(publisher(store, sourcesWith('A', 'B')), minute(11));
      for (const list of ['index.html', 'es/index.html'])
        expect(await textAt(store, list)).toMatch(/20:11.*out:\[A\]\[B\]$/s);
      // What a publication that was cut off wrote is in no list, so no page is taken on trust.
      if (last > 0)
        expect(written.filter((key) => key.endsWith('.html'))).toHaveLength(7 + lists.length + years.length);
    },
  );

  test('a page written before the cut is not forgotten, even when its outage is withdrawn meanwhile', async () => {
    const store = memoryPublished();
    for (let last = 1; last < 11; last++)
      await publishOnce(publisher(failingAfter(store, last), sourcesWith('A')), minute(last)).catch(
        () => undefined,
      );
    await publishOnce(publisher(store, sourcesWith()), minute(20));
    expect(await textAt(store, 'hydrants/A/index.html')).toContain('withdrawn');
  });

  test('a list stands only when the pages that it leads to stand', async () => {
    for (let last = 0; last < 13; last++) {
      const store = memoryPublished();
      await publishOnce(publisher(failingAfter(store, last), sourcesWith('A')), minute(5)).catch(
        () => undefined,
      );
      if (store.objects.has('index.html')) expect(store.objects.has('hydrants/A/index.html')).toBe(true);
      if (store.objects.has('404.html')) expect(store.objects.has('_assets/site.css')).toBe(true);
      if (store.objects.has('_assets/site.css')) expect(store.objects.has('_assets/face.woff2')).toBe(true);
    }
  });
});

describe('several publishers at once', () => {
  /** Each call waits a little, by the numbers given, so that publishers interleave in every way. */
  function slow(store: PublishedStore, delays: readonly number[]): PublishedStore {
    let call = 0;
    const pause = (): Promise<void> => wait(delays[call++ % delays.length] ?? 0);
    return {
      get: async (key) => {
        await pause();
        return store.get(key);
      },
      head: async (key) => {
        await pause();
        return store.head(key);
      },
      put: async (...given) => {
        await pause();
        return store.put(...given);
      },
    };
  }

  test('leave no page of an overtaken publication behind for good', async () => {
    const store = memoryPublished();
    await publishOnce(publisher(store, sourcesWith()), minute(0));
    // The older one knows an outage of A that was withdrawn before the newer one read, and is overtaken just then.
    let overtaken: Promise<unknown> | undefined;
    const overtaking: PublishedStore = {
      ...store,
      put: async (key, ...given) => {
        if (key === 'hydrants/A/index.html')
          await (overtaken ??= publishOnce(publisher(store, sourcesWith()), minute(2)));
        return store.put(key, ...given);
      },
    };
    const older = await publishOnce(publisher(overtaking, sourcesWith('A')), minute(1));
    expect(older.outcome).toBe('superseded');
    // The older one had announced A's page before it wrote it, so the newer one knew to write there too.
    expect(await textAt(store, 'hydrants/A/index.html')).toMatch(/20:02.*withdrawn/);
    expect(await textAt(store, 'index.html')).toContain('20:02');
  });

  test('leave the pages of a newer one that came by while this one announced its own', async () => {
    const store = memoryPublished();
    await publishOnce(publisher(store, sourcesWith()), minute(0));
    // Between the older one's reading of the pointer and its announcement the newer one publishes from end to end.
    let newer: Promise<unknown> | undefined;
    const overtaken: PublishedStore = {
      ...store,
      put: async (key, ...given) => {
        if (newer === undefined) await (newer = publishOnce(publisher(store, sourcesWith()), minute(2)));
        return store.put(key, ...given);
      },
    };
    const older = await publishOnce(publisher(overtaken, sourcesWith('A')), minute(1));
    expect(older.outcome).toBe('superseded');
    expect(await textAt(store, 'index.html')).toContain('20:02');
  });

  test('leave the newest check everywhere, however they interleave', async () => {
    const outOf = (index: number): string[] => [[], ['A'], ['B', 'C'], ['A', 'C']][index % 4] ?? [];
    const delays = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 7 });
    await fc.assert(
      fc.asyncProperty(fc.array(delays, { minLength: 2, maxLength: 4 }), async (publishers) => {
        const store = memoryPublished();
        await publishOnce(publisher(store, sourcesWith()), minute(0));
        const newest = publishers.length - 1;
        await Promise.all(
          publishers.map((delay, index) =>
            publishOnce(
              publisher(slow(store, delay), sourcesWith(...outOf(index)), {
                stillRecorded: async () => false,
              }),
              new Date(minute(1).getTime() + index),
            ),
          ),
        );
        const checkedAt = new Date(minute(1).getTime() + newest).toISOString();
        expect((await readPointer(store)).pointer).toMatchObject({ checkedAt });
        for (const key of ['index.html', 'es/index.html', 'v1/snapshot.json'])
          expect(await textAt(store, key)).toContain(checkedAt);
        // The next one knows which pages it may leave: every hydrant's page says what the newest check knew.
        const known = outOf(newest);
        await publishOnce(
          publisher(store, sourcesWith(...known), { stillRecorded: async () => false }),
          minute(2),
        );
        for (const hydrantId of ['A', 'B', 'C']) {
          const page = await textAt(store, `hydrants/${hydrantId}/index.html`);
          if (page !== '') expect(page.includes('withdrawn')).toBe(!known.includes(hydrantId));
        }
      }),
      { numRuns: 60 },
    );
  });
});
