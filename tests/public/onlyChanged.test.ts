import { beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { builtRenderer } from '../support/builtSite.ts';
import {
  aFlowTest,
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townHydrants,
  townNow,
  townSettings,
} from '../support/town.ts';

/**
 * A page that would show the same stands as it is (decision 0221). What each shows is named by hand where pages are
 * made, so it is held here against the pages themselves: two states are published from nothing at the same check, and
 * the pages that differ are the very ones that must be written when the one follows the other.
 */
const hydrants = townHydrants(3000);
const inventory = inventoryOf(hydrants);
const idAt = (index: number): string => hydrants[index]?.hydrantId ?? '';
const since = (minutes: number): string => new Date(townNow.getTime() - minutes * 60_000).toISOString();

const struck = (hydrantId: string, index: number) => ({
  hydrantId,
  strikeId: `s-${index}`,
  since: since((index + 1) * 10),
});
/** The last is known to no inventory and has no place: it stands in the list of those elsewhere. */
const out = [...Array.from({ length: 120 }, (_, index) => idAt(index * 23)), 'ZZ-0001'].map(struck);
const cityWith = (strikes: typeof out, more: Partial<PublicSources> = {}): PublicSources => ({
  inventory,
  strikes: strikes.map(({ strikeId, ...rest }) => aStrike(strikeId, rest)),
  statuses: strikes.map(({ hydrantId, ...rest }) =>
    aStatus(hydrantId, [anOutage(rest.strikeId, { since: rest.since })]),
  ),
  flowTests: new Map(),
  ...more,
});
const city = cityWith(out);
/** So little hose that many a hydrant is beyond it, and the page says how much it is. */
const hose = { fireCover: { hoseFt: 100 } };
/** Beside the first that is out, so that it is among what is offered there. */
const beside = idAt(1);

interface Change {
  readonly sources: PublicSources;
  readonly settings?: Partial<UtilitySettings>;
}
const changes: Readonly<Record<string, Change>> = {
  'nothing at all': { sources: city },
  'one strike more': {
    sources: cityWith([{ hydrantId: beside, strikeId: 's-new', since: since(0) }, ...out]),
  },
  'one back in service': {
    sources: {
      ...city,
      strikes: city.strikes.map((strike, index) =>
        index === 40 ? { ...strike, stage: 'back', returnedAt: since(1) } : strike,
      ),
      statuses: city.statuses.map((status, index) =>
        index === 40 ? aStatus(status.hydrantId, [{ ...status.open[0]!, endedAt: since(1) }]) : status,
      ),
    },
  },
  'one that gets a page and is told nothing else of': {
    sources: {
      ...city,
      statuses: [
        ...city.statuses,
        aStatus(beside, [anOutage('old', { cause: 'frozen', since: since(9000), endedAt: since(8000) })]),
      ],
    },
  },
  'a flow test of one in service': {
    sources: cityWith(out, {
      statuses: [...city.statuses, aStatus(beside, [], { flowTestIds: ['t'] })],
      flowTests: new Map([[beside, [aFlowTest('t', { residualHydrantId: beside })]]]),
    }),
  },
  'a day on which one is expected back': {
    sources: {
      ...city,
      statuses: city.statuses.map((status, index) =>
        index === 7
          ? { ...status, open: status.open.map((outage) => ({ ...outage, expectedAt: since(-600) })) }
          : status,
      ),
    },
  },
  'a report that is missing from every page': { sources: { ...city, unprojected: [since(1)] } },
  'a little less hose on the engines': { sources: city, settings: { fireCover: { hoseFt: 90 } } },
  'streets that lead nowhere near': { sources: { ...city, streets: { walkFt: () => null } } },
  'another number to call': { sources: city, settings: { emergencyPhone: '555-0177' } },
};

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

type Store = ReturnType<typeof memoryPublished>;
const publish = (store: Store, { sources, settings = {} }: Change, now: Date) =>
  publishOnce(
    {
      settings: { ...townSettings, ...hose, ...settings },
      store,
      renderer,
      readSources: async () => sources,
      stillRecorded: async () => false,
    },
    now,
  );

/** Lists are made anew at every check, and days out of service grow with the time: these are not looked at. */
const isPage = (key: string): boolean =>
  key.endsWith('.html') && !/^(es\/)?((cover|map|wall)\/)?index\.html$|^(es\/)?years\//.test(key);
const textOf = (store: Store, key: string): string | undefined => {
  const bytes = store.objects.get(key)?.bytes;
  return bytes && new TextDecoder().decode(bytes);
};

describe('pages that are written', () => {
  const before = memoryPublished();
  beforeAll(() => publish(before, { sources: city }, townNow), 60_000);
  const later = (minutes: number): Date => new Date(townNow.getTime() + minutes * 60_000);

  test.each(Object.entries(changes))(
    'are those that show something else: %s',
    async (_, change) => {
      const anew = memoryPublished();
      await publish(anew, change, townNow);
      const differ = [...anew.objects.keys()]
        .filter(isPage)
        .filter((key) => textOf(anew, key) !== textOf(before, key));

      const following = memoryPublished();
      await publish(following, { sources: city }, townNow);
      const { written } = await publish(following, change, later(1));
      expect(written.filter(isPage).toSorted()).toEqual(differ.toSorted());
    },
    60_000,
  );

  test('are none while the same report goes on missing, all with another, and all when none is missing', async () => {
    const store = memoryPublished();
    const behind = (...unprojected: string[]): Change => ({ sources: { ...city, unprojected } });
    const pagesAt = async (change: Change, minutes: number): Promise<number> =>
      (await publish(store, change, later(minutes))).written.filter(isPage).length;
    await publish(store, { sources: city }, later(0));
    const all = [...store.objects.keys()].filter(isPage).length;
    expect(all).toBeGreaterThan(240);
    expect(await pagesAt(behind(since(1)), 1)).toBe(all);
    expect(await pagesAt(behind(since(1)), 6)).toBe(0);
    expect(await pagesAt(behind(since(1), since(0)), 7)).toBe(all);
    // A page that goes on saying it grows old as every page does, and is made anew before.
    expect(await pagesAt(behind(since(1), since(0)), 18)).toBe(all);
    expect(await pagesAt({ sources: city }, 19)).toBe(all);
  }, 60_000);
});
