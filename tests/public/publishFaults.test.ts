import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { LogEntry } from '../../functions/log/log.ts';
import { POINTER_KEY } from '../../functions/publish/pointer.ts';
import { publishOnce } from '../../functions/publish/publish.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { filePublished } from '../../functions/stores/published/filePublished.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublishedStore } from '../../functions/stores/published/published.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { aHydrant, anOutage, aStatus, inventoryOf, townSettings } from '../support/town.ts';

const inventory = inventoryOf([aHydrant('A'), aHydrant('B', { latitudeDeg: 39.201 })]);
const sourcesWith = (...out: string[]) => ({
  inventory,
  statuses: out.map((hydrantId) => aStatus(hydrantId, [anOutage(`o-${hydrantId}`, { cause: 'frozen' })])),
  strikes: [],
  flowTests: new Map(),
});
const minute = (minutes: number): Date => new Date(Date.UTC(2026, 2, 4, 20, minutes));
const publish = (store: PublishedStore, out: string[], at: Date) =>
  publishOnce(aPublisher(store, sourcesWith(...out), townSettings), at);

/** Everything that readers see, without the publisher's own book. */
const shown = ({ objects }: ReturnType<typeof memoryPublished>): Record<string, string> =>
  Object.fromEntries(
    [...objects]
      .filter(([key]) => key !== POINTER_KEY)
      .map(([key, { bytes }]) => [key, new TextDecoder().decode(bytes)]),
  );

/** What the second of two publications writes, in its order, when nothing goes wrong. */
async function writes(): Promise<readonly string[]> {
  const store = memoryPublished();
  await publish(store, ['A'], minute(5));
  const keys: string[] = [];
  const put: PublishedStore['put'] = (key, ...given) => {
    keys.push(key);
    return store.put(key, ...given);
  };
  await publish({ ...store, put }, ['A', 'B'], minute(10));
  return keys;
}
const all = await writes();

describe('one file that cannot be written, and all others can', () => {
  test('the pointer is put first and last', () => {
    expect(all.indexOf(POINTER_KEY)).toBe(0);
    expect(all.lastIndexOf(POINTER_KEY)).toBe(all.length - 1);
    expect(all.length).toBeGreaterThan(30);
  });

  test.each(all.map((key, index) => [index, key] as const))(
    'write %d, %s: the check that stands does not move, one line rings, the next publication mends it',
    async (failing) => {
      const store = memoryPublished();
      await publish(store, ['A'], minute(5));
      let puts = 0;
      const away: PublishedStore = {
        ...store,
        put: (key, ...given) =>
          puts++ === failing
            ? Promise.reject(new StoreUnavailable('no space left'))
            : store.put(key, ...given),
      };
      const lines: LogEntry[] = [];
      const deps = aPublisher(away, sourcesWith('A', 'B'), townSettings);
      await expect(publishAndReport(deps, minute(10), (line) => lines.push(line))).rejects.toBeInstanceOf(
        StoreUnavailable,
      );
      expect(lines).toMatchObject([
        { event: watchedEvents.publishRefused.event, keptCheckedAt: minute(5).toISOString() },
      ]);
      // What is written after everything else says of the older check that it is the one that stands.
      if (failing < all.indexOf('index.html'))
        expect(shown(store)['index.html']).toContain(minute(5).toISOString());

      await publish(store, ['A', 'B'], minute(11));
      const anew = memoryPublished();
      await publish(anew, ['A', 'B'], minute(11));
      // Before anything was written pages may stand with their own check; afterwards none is taken on trust.
      const said = (text: string): string =>
        failing === 0 ? text.replaceAll(/2026-03-04T20:\d\d:00/g, '') : text;
      // What was told as news is told of the check at which it was first seen; all else is as from nothing.
      const pages = (from: typeof store) =>
        Object.entries(shown(from))
          .filter(([key]) => key.endsWith('.html') || key === 'v1/snapshot.json')
          .map(([key, text]) => [key, said(text)]);
      expect(Object.fromEntries(pages(store))).toEqual(Object.fromEntries(pages(anew)));
    },
  );
});

describe('a disk that refuses', () => {
  test.each(['hydrants/B/index.html', 'index.html', 'v1/snapshot.json'])(
    '%s, where something else is in the way: said so, and made good when it is gone',
    async (key) => {
      const folder = await mkdtemp(join(tmpdir(), 'disk-'));
      try {
        const store = filePublished(folder);
        await publish(store, ['A'], minute(5));
        const path = join(folder, key);
        await rm(path, { force: true });
        // A folder cannot be replaced by a file: the system's own refusal, as of a full or broken disk.
        await mkdir(join(path, 'in-the-way'), { recursive: true });
        const second = publish(store, ['A', 'B'], minute(10));
        await expect(second).rejects.toBeInstanceOf(StoreUnavailable);
        await expect(second).rejects.toThrow(key);

        await rm(path, { recursive: true });
        await mkdir(dirname(path), { recursive: true });
        expect((await publish(store, ['A', 'B'], minute(11))).outcome).toBe('published');
        expect(new TextDecoder().decode((await store.get(key))?.bytes)).toContain(minute(11).toISOString());
      } finally {
        await rm(folder, { recursive: true, force: true });
      }
    },
  );
});
