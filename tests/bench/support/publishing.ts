import { publishOnce } from '../../../functions/publish/publish.ts';
import { memoryPublished } from '../../../functions/stores/published/memoryPublished.ts';
import type { PublishedStore } from '../../../functions/stores/published/published.ts';
import type { PublicSources } from '../../../shared/public/build.ts';
import { builtRenderer } from '../../support/builtSite.ts';
import {
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townHydrants,
  townNow,
  townSettings,
} from '../../support/town.ts';

/** A utility as the public page knows it. */
export interface PublishedUtility {
  readonly hydrants: number;
  /** Out of service at one time. */
  readonly out: number;
  /** Struck and back in service, since the start. */
  readonly past: number;
}

/** What publishing at the fixed interval costs while nothing happens, on average of a time in which every page comes anew. */
export interface Publishing {
  readonly cpuMs: number;
  readonly puts: number;
  readonly gets: number;
  readonly putBytes: number;
  /** Files that stand. */
  readonly files: number;
  readonly heapMb: number;
}

const MINUTE_MS = 60_000;

/** The settings with which it is measured. Letters have no part in it. */
export const publishedAt = {
  publishEveryMinutes: townSettings.publishing.everyMinutes,
  relyForMinutes: townSettings.publishing.relyForMinutes,
  digestFromHour: 24,
};

/** Counts what is asked of it. Pages are not kept: nobody reads one back, and a city's would fill the memory. */
function countingStore(): {
  store: PublishedStore;
  take: () => Omit<Publishing, 'cpuMs' | 'files' | 'heapMb'>;
} {
  const kept = memoryPublished();
  let counts = { puts: 0, gets: 0, putBytes: 0 };
  return {
    store: {
      get: (key) => ((counts.gets += 1), kept.get(key)),
      head: (key) => ((counts.gets += 1), kept.head(key)),
      put: (key, object, expected) => {
        counts.puts += 1;
        counts.putBytes += object.bytes.length;
        return kept.put(
          key,
          key.endsWith('.html') ? { ...object, bytes: new Uint8Array() } : object,
          expected,
        );
      },
    },
    take: () => {
      const taken = counts;
      counts = { puts: 0, gets: 0, putBytes: 0 };
      return taken;
    },
  };
}

function sourcesOf({ hydrants: count, out, past }: PublishedUtility): PublicSources {
  const hydrants = townHydrants(count);
  const hour = 3_600_000;
  const at = (hoursAgo: number): string => new Date(townNow.getTime() - hoursAgo * hour).toISOString();
  const events = hydrants.filter((_, index) => index % Math.floor(count / (out + past)) === 0);
  const struck = events.slice(0, out);
  const back = events.slice(out, out + past);
  const before = (index: number) => ({ since: at(24 * 30 + index), endedAt: at(24 * 30 + index - 9) });
  return {
    inventory: inventoryOf(hydrants),
    strikes: [
      ...struck.map(({ hydrantId }, index) => aStrike(`s-${index}`, { hydrantId, since: at(index % 200) })),
      ...back.map(({ hydrantId }, index) =>
        aStrike(`p-${index}`, {
          hydrantId,
          stage: 'back',
          since: before(index).since,
          returnedAt: before(index).endedAt,
        }),
      ),
    ],
    statuses: [
      ...struck.map(({ hydrantId }, index) =>
        aStatus(hydrantId, [anOutage(`s-${index}`, { since: at(index % 200) })]),
      ),
      ...back.map(({ hydrantId }, index) => aStatus(hydrantId, [anOutage(`p-${index}`, before(index))])),
    ],
    flowTests: new Map(),
  };
}

/** Publishes from nothing, then at every interval until all pages came anew once, and answers the average of the latter. */
export async function publishingOf(utility: PublishedUtility): Promise<Publishing> {
  const { everyMinutes, relyForMinutes } = townSettings.publishing;
  const { store, take } = countingStore();
  const sources = sourcesOf(utility);
  const deps = {
    settings: townSettings,
    renderer: await builtRenderer(),
    store,
    readSources: async () => sources,
    stillRecorded: async () => true,
  };
  const publish = (round: number) =>
    publishOnce(deps, new Date(townNow.getTime() + round * everyMinutes * MINUTE_MS));
  const first = await publish(0);
  take();
  // A page stands while it can be missed once more (decision 0221): as many rounds as that lasts.
  const rounds = Math.floor(relyForMinutes / everyMinutes) - 1;
  const before = process.cpuUsage();
  let heapMb = 0;
  for (let round = 1; round <= rounds; round++) {
    await publish(round);
    heapMb = Math.max(heapMb, process.memoryUsage().heapUsed / 1e6);
  }
  const { user, system } = process.cpuUsage(before);
  const counts = take();
  return {
    cpuMs: (user + system) / 1000 / rounds,
    puts: counts.puts / rounds,
    gets: counts.gets / rounds,
    putBytes: counts.putBytes / rounds,
    files: first.written.length,
    heapMb,
  };
}
