import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { publishOnce } from '../../functions/publish/publish.ts';
import { filePublished } from '../../functions/stores/published/filePublished.ts';
import { buildEdition } from '../../shared/public/build.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { townNow, townSettings } from '../support/town.ts';
import type { BenchRow } from './row.ts';
import { cityWith, oneMore, OUT } from './support/city.ts';

/** What the issue that asked for it allows; stands beside each figure. */
const allowed = (value: number): NonNullable<BenchRow['beside']> => ({ name: 'allowed', value });

/** Seconds of one run, and of the processor in it: beside other work the one says little, the other still does. */
async function timed<T>(work: () => T | Promise<T>): Promise<{ answer: T; seconds: number; cpu: number }> {
  const [began, before] = [performance.now(), process.cpuUsage()];
  const answer = await work();
  const { user, system } = process.cpuUsage(before);
  return { answer, seconds: (performance.now() - began) / 1000, cpu: (user + system) / 1e6 };
}

/** Heap in use after something was computed beyond what was before, MB; the inventory itself was there. */
function heapOf<T>(work: () => T): { answer: T; megabytes: number } {
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const answer = work();
  return { answer, megabytes: (process.memoryUsage().heapUsed - before) / 1e6 };
}

/**
 * A city of 250,000 hydrants with 2,000 out of service: computing what the public may know, publishing all of it from
 * nothing to files, publishing one strike more, and the weight of what a reader gets first.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const renderer = await builtRenderer();
  const folder = await mkdtemp(join(tmpdir(), 'bench-city-'));
  try {
    const city = cityWith(OUT);
    const compute = () => buildEdition(city, townSettings, townNow.toISOString());
    const { megabytes } = heapOf(compute);
    const computed = await timed(compute);

    const store = filePublished(folder);
    const deps = {
      settings: townSettings,
      renderer,
      store,
      readSources: async () => city,
      stillRecorded: async () => true,
    };
    const cold = await timed(() => publishOnce(deps, townNow));
    const later = oneMore(city);
    const change = await timed(() =>
      publishOnce({ ...deps, readSources: async () => later }, new Date(townNow.getTime() + 60_000)),
    );
    const pages = cold.answer.written.filter((key) => key.endsWith('.html'));
    const weights = await Promise.all(
      pages.map(async (key) => gzipSync((await store.get(key))?.bytes ?? new Uint8Array()).length / 1000),
    );
    const first = gzipSync((await store.get('index.html'))?.bytes ?? new Uint8Array()).length / 1000;
    return [
      { name: 'a city: snapshot and cover', value: computed.seconds, unit: 's', beside: allowed(2) },
      { name: 'a city: snapshot and cover, processor', value: computed.cpu, unit: 's', beside: allowed(2) },
      { name: 'a city: snapshot and cover, heap', value: megabytes, unit: 'MB', beside: allowed(300) },
      {
        name: 'a city: published from nothing, to files',
        value: cold.seconds,
        unit: 's',
        beside: allowed(60),
      },
      { name: 'a city: the same, processor', value: cold.cpu, unit: 's', beside: allowed(60) },
      { name: 'a city: one strike more', value: change.seconds, unit: 's', beside: allowed(5) },
      { name: 'a city: the same, processor', value: change.cpu, unit: 's', beside: allowed(5) },
      {
        name: 'a city: files written for one strike more',
        value: change.answer.written.length,
        unit: 'files',
        beside: { name: 'files there are', value: cold.answer.written.length },
      },
      { name: 'a city: first page, gzipped', value: first, unit: 'kB', beside: allowed(60) },
      {
        name: 'a city: heaviest page, gzipped',
        value: Math.max(...weights),
        unit: 'kB',
        beside: allowed(60),
      },
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
