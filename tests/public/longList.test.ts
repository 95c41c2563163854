import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import { say } from '../../shared/words/index.ts';
import { builtRenderer } from '../support/builtSite.ts';
import {
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townHydrants,
  townNow,
  townSettings,
} from '../support/town.ts';

let renderer: SiteRenderer;
const hydrants = townHydrants(6000);
const inventory = inventoryOf(hydrants);

/** A town with so many out, evenly spread, and one report without a place. */
function sourcesWith(out: number): PublicSources {
  const struck = Array.from({ length: out }, (_, index) => hydrants[index * 17]?.hydrantId ?? '');
  const since = (index: number): string => new Date(townNow.getTime() - (index + 1) * 600_000).toISOString();
  return {
    inventory,
    statuses: struck.map((hydrantId, index) =>
      aStatus(hydrantId, [anOutage(`s-${index}`, { since: since(index) })]),
    ),
    strikes: [
      ...struck.map((hydrantId, index) => aStrike(`s-${index}`, { hydrantId, since: since(index) })),
      aStrike('nowhere', { since: '2026-01-01T00:00:00Z' }),
    ],
    flowTests: new Map(),
  };
}
const deps = (store: ReturnType<typeof memoryPublished>, sources: PublicSources) => ({
  settings: townSettings,
  store,
  renderer,
  readSources: async () => sources,
  stillRecorded: async () => false,
});
const textOf = (store: ReturnType<typeof memoryPublished>, key: string): string =>
  new TextDecoder().decode(store.objects.get(key)?.bytes);
const entriesOf = (html: string): string[] => [...html.matchAll(/id="(out-\d+)"/g)].map(([, id]) => id ?? '');

const namesOf = (html: string): string[] =>
  [...html.matchAll(/<bdi class="entry-id">([^<]+)</g)].map(([, name]) => name ?? '');
const idOf = ({ hydrantId }: { readonly hydrantId: string }): string => hydrantId;
const unnamed = { '': say('en', 'public.unknown-hydrant'), 'es/': say('es', 'public.unknown-hydrant') };

beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

describe('a list that is too long for one page', () => {
  const store = memoryPublished();
  let first: string;
  beforeAll(async () => {
    await publishOnce(deps(store, sourcesWith(300)), townNow);
    first = textOf(store, 'index.html');
  }, 120_000);

  test('has the latest hundred first, says so, and weighs less than 60 kB compressed', () => {
    expect(entriesOf(first)).toEqual(Array.from({ length: 100 }, (_, index) => `out-${index + 1}`));
    expect(first).toContain('The 100 latest of 301 are listed here.');
    expect(first).toContain('300 of 6,000');
    expect(gzipSync(first).length).toBeLessThan(60_000);
  });

  test('leads to areas in which every entry stands exactly once, in both languages', () => {
    for (const [prefix, list] of [
      ['', first],
      ['es/', textOf(store, 'es/index.html')],
    ] as const) {
      const links = [
        ...new Set([...list.matchAll(/href="\/((?:es\/)?areas\/[^"]+)"/g)].map(([, at]) => at ?? '')),
      ];
      expect(links.length).toBeGreaterThan(4);
      for (const link of links) expect(link.startsWith(prefix)).toBe(true);
      const pages = links.map((link) => textOf(store, `${link}index.html`));
      expect(pages.flatMap(namesOf).toSorted()).toEqual(
        [
          unnamed[prefix],
          ...hydrants.filter((_, index) => index % 17 === 0 && index < 300 * 17).map(idOf),
        ].toSorted(),
      );
      // Each counts its own: numbers of the whole list would change everywhere with each strike.
      for (const page of pages)
        expect(entriesOf(page)).toEqual(namesOf(page).map((_, index) => `out-${index + 1}`));
    }
  });

  test('has a page for what has no place', () => {
    expect(textOf(store, 'areas/elsewhere/index.html')).toContain(
      'One place out of service that is on no map',
    );
  });

  test('is one page again when it is short, and the areas’ pages say that they are no longer kept', async () => {
    await publishOnce(deps(store, sourcesWith(20)), new Date(townNow.getTime() + 60_000));
    expect(entriesOf(textOf(store, 'index.html'))).toHaveLength(21);
    const areas = [...store.objects.keys()].filter((key) => /(^|\/)areas\//.test(key));
    expect(areas.length).toBeGreaterThan(8);
    for (const key of areas)
      expect(textOf(store, key), key).toMatch(/This list is no longer kept|Esta lista ya no se lleva/);
    // And they go on saying so, with a time that does not run out.
    await publishOnce(deps(store, sourcesWith(20)), new Date(townNow.getTime() + 30 * 60_000));
    expect(textOf(store, areas[0]!)).toContain('datetime="2026-03-04T20:35:00.000Z"');
  }, 60_000);
});

describe('a page that lacks a report', () => {
  test('says so beside its check on every list and hydrant’s page, in both languages, until it no longer does', async () => {
    const store = memoryPublished();
    const behind = { ...sourcesWith(3), unprojected: ['2026-03-04T20:03:00.000Z'] };
    await publishOnce(deps(store, behind), townNow);
    const id = hydrants[0]!.hydrantId;
    const pages = ['index.html', `hydrants/${id}/index.html`, 'years/index.html'];
    for (const key of pages) {
      expect(textOf(store, key), key).toContain(
        'One report received since Wed, Mar 4, 14:03 CST is not on this page',
      );
      expect(textOf(store, `es/${key}`), key).toContain('Un aviso recibido desde el');
    }
    await publishOnce(deps(store, sourcesWith(3)), new Date(townNow.getTime() + 60_000));
    for (const key of pages) expect(textOf(store, key), key).not.toContain('One report received');
  }, 60_000);
});

describe('figures of the years', () => {
  test('have a page of their own each, with drawings beside their tables', async () => {
    const store = memoryPublished();
    const sources = sourcesWith(3);
    const past = aStrike('p', {
      hydrantId: hydrants[0]!.hydrantId,
      since: '2024-11-02T05:00:00Z',
      returnedAt: '2024-11-09T17:00:00Z',
    });
    await publishOnce(deps(store, { ...sources, strikes: [...sources.strikes, past] }), townNow);
    for (const key of ['years/index.html', 'years/2024/index.html', 'es/years/2026/index.html']) {
      const html = textOf(store, key);
      expect(html, key).toMatch(/<figure class="bars">/);
      expect(html, key).toMatch(/<table class="years"/);
    }
    expect(textOf(store, 'years/2024/index.html')).toMatch(/7 days/);
    expect(textOf(store, 'years/index.html')).toContain('2026 so far');
    expect(store.objects.has('years/2023/index.html')).toBe(false);
  }, 60_000);
});
