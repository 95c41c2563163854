import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublicSources } from '../../shared/public/build.ts';
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

const hydrants = townHydrants(6000);
const inventory = inventoryOf(hydrants);
const hourAgo = (hours: number): string => new Date(townNow.getTime() - hours * 3_600_000).toISOString();

/** A city after a hard winter: so many put back with a flow test put off, the first of them the latest, and so many out. */
function sources(owing: number, out: number): PublicSources {
  const struck = hydrants.slice(owing, owing + out);
  return {
    inventory,
    statuses: [
      ...hydrants.slice(0, owing).map(({ hydrantId }, index) =>
        aStatus(hydrantId, [
          anOutage(`w-${index}`, {
            cause: 'frozen',
            since: hourAgo(9000),
            endedAt: hourAgo(1 + index),
            deferred: [{ proof: 'flow-test', reason: 'ice in the street', byWorkerId: 'w-4' }],
          }),
        ]),
      ),
      ...struck.map(({ hydrantId }, index) => aStatus(hydrantId, [anOutage(`s-${index}`)])),
    ],
    strikes: struck.map(({ hydrantId }, index) => aStrike(`s-${index}`, { hydrantId })),
    flowTests: new Map(),
  };
}

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

async function publish(
  store: ReturnType<typeof memoryPublished>,
  of: PublicSources,
  minutes = 0,
): Promise<void> {
  const deps = {
    settings: townSettings,
    store,
    renderer,
    readSources: async () => of,
    stillRecorded: async () => false,
  };
  await publishOnce(deps, new Date(townNow.getTime() + minutes * 60_000));
}
const pageOf = (store: ReturnType<typeof memoryPublished>, key: string): string =>
  new TextDecoder().decode(store.objects.get(key)?.bytes);
/** The hydrants that the list on a page names, in its order. */
const namedOn = (html: string): string[] => {
  const [list = ''] = /<section class="owing-list" [\s\S]*?<\/section>/.exec(html) ?? [];
  return [...list.matchAll(/<bdi>(H-\d+)<\/bdi>/g)].map(([, id = '']) => id);
};
const idsOf = (count: number): string[] => hydrants.slice(0, count).map(({ hydrantId }) => hydrantId);

describe('hydrants that are back and not re-tested', () => {
  test('are all on the first page while they are few', async () => {
    const store = memoryPublished();
    await publish(store, sources(20, 3));
    expect(namedOn(pageOf(store, 'index.html'))).toEqual(idsOf(20));
    expect([...store.objects.keys()].filter((key) => key.includes('not-retested'))).toEqual([]);
  });

  test('when there are 2,000, the latest twenty are on the first page, which stays below 60 kB, and each is in the list', async () => {
    const store = memoryPublished();
    await publish(store, sources(2000, 300));
    for (const language of ['', 'es/']) {
      const first = pageOf(store, `${language}index.html`);
      expect(gzipSync(first).length).toBeLessThan(60_000);
      expect(namedOn(first)).toEqual(idsOf(20));
      expect(first).toContain(`href="/${language}not-retested/"`);
      const list = pageOf(store, `${language}not-retested/index.html`);
      const parts = new Set(
        [...list.matchAll(/href="\/((?:es\/)?not-retested\/(?:\d+\/)?)"/g)].map(([, at]) => at ?? ''),
      );
      // Each part is led to from the first; the other language's first part is, too.
      const own = [...parts].filter((part) => part.startsWith('es/') === (language === 'es/'));
      expect(own).toHaveLength(20);
      expect(own.flatMap((part) => namedOn(pageOf(store, `${part}index.html`)))).toEqual(idsOf(2000));
    }
    expect(pageOf(store, 'not-retested/index.html')).toContain('All 2,000 that were not re-tested');
  }, 120_000);

  test('when they are few again, what stood there says that it is no longer kept', async () => {
    const store = memoryPublished();
    await publish(store, sources(120, 0));
    expect(namedOn(pageOf(store, 'not-retested/2/index.html'))).toEqual(idsOf(120).slice(100));
    await publish(store, sources(50, 0), 1);
    expect(namedOn(pageOf(store, 'not-retested/index.html'))).toEqual(idsOf(50));
    expect(pageOf(store, 'not-retested/2/index.html')).toContain('This list is no longer kept');
    expect(pageOf(store, 'es/not-retested/2/index.html')).toContain('Esta lista ya no se lleva');
  }, 60_000);
});
