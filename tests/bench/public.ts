import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { gzipSync } from 'node:zlib';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { loadRenderer } from '../../functions/publish/renderer.ts';
import { filePublished } from '../../functions/stores/published/filePublished.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { buildEdition } from '../../shared/public/build.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { anOutage, aStatus, townHydrants, townNow, townSettings, townSources } from '../support/town.ts';
import type { BenchRow } from './row.ts';

const root = join(import.meta.dirname, '..', '..');
const ROUNDS = 200;

/** Milliseconds of one round, the median of many. */
async function medianMs(work: () => Promise<unknown>, rounds = ROUNDS): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    await work();
    times.push(performance.now() - started);
  }
  return times.toSorted((a, b) => a - b)[Math.floor(rounds / 2)] ?? Number.NaN;
}

/** A page with nothing on it, built with the very configuration of the site: what Astro itself costs. */
async function emptySite(folder: string): Promise<SiteRenderer> {
  await mkdir(join(folder, 'src', 'pages'), { recursive: true });
  await writeFile(
    join(folder, 'src', 'pages', 'index.astro'),
    '<html lang="en"><head><title>Empty</title></head><body><p>Nothing</p></body></html>\n',
  );
  const config = pathToFileURL(join(root, 'site', 'astro.config.ts')).href;
  await writeFile(join(folder, 'astro.config.mjs'), `export { default } from ${JSON.stringify(config)};\n`);
  const astro = join(
    dirname(createRequire(import.meta.url).resolve('astro/package.json')),
    'bin',
    'astro.mjs',
  );
  await promisify(execFile)(process.execPath, [astro, 'build', '--root', folder, '--silent'], {
    cwd: root,
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
  });
  return loadRenderer(join(folder, 'dist'));
}

/** Weight of the first page, time of a page and of a publication, each beside the plainest thing that does the same. */
export async function bench(): Promise<readonly BenchRow[]> {
  const renderer = await builtRenderer();
  // Below the project, because the build looks for its packages from there.
  const emptyFolder = join(root, '.cache', 'bench-empty-page');
  const publishedFolder = await mkdtemp(join(tmpdir(), 'bench-publish-'));
  try {
    const empty = await emptySite(emptyFolder);
    const sources = townSources();
    const edition = buildEdition(sources, townSettings, townNow.toISOString());
    const hydrant = edition.hydrants.find(({ hydrantId }) => hydrantId === 'H-0058') ?? null;
    const page = await renderer.render('/', { edition });
    const emptyPage = await empty.render('/', { edition });

    const store = memoryPublished();
    const deps = {
      settings: townSettings,
      renderer,
      readSources: async () => sources,
      stillRecorded: async () => true,
    };
    await publishOnce({ ...deps, store }, townNow);
    const assets = [...store.objects].filter(([key]) => key.startsWith('_assets/'));
    const transferred = ([key, { bytes }]: (typeof assets)[number]): number =>
      // Fonts are compressed already.
      key.endsWith('.woff2') ? bytes.length : gzipSync(bytes).length;

    // A town in which every hydrant has an event and so a page in each language.
    const all = townHydrants(400);
    const busy = {
      ...townSources(all),
      strikes: [],
      flowTests: new Map(),
      statuses: all.map(({ hydrantId }) =>
        aStatus(hydrantId, [anOutage(`o-${hydrantId}`, { endedAt: '2026-01-01T00:00:00Z' })]),
      ),
    };
    let minute = 0;
    const publishTo = (target: ReturnType<typeof memoryPublished> | ReturnType<typeof filePublished>) => () =>
      publishOnce(
        { ...deps, readSources: async () => busy, store: target },
        new Date(townNow.getTime() + ++minute * 60_000),
      );
    const emptyAsOften = async (): Promise<void> => {
      for (let count = 0; count < 805; count++) await empty.render('/', { edition });
    };

    const kB = (bytes: number): number => bytes / 1000;
    const besideEmpty = (value: number): NonNullable<BenchRow['beside']> => ({
      name: 'empty Astro page',
      value,
    });
    const renderEmptyMs = await medianMs(() => empty.render('/', { edition }));
    const withList = { name: '805 empty pages, not stored', value: await medianMs(emptyAsOften, 3) };
    return [
      {
        name: 'public list, 412 hydrants',
        value: kB(page.length),
        unit: 'kB',
        beside: besideEmpty(kB(emptyPage.length)),
      },
      {
        name: 'public list, gzipped',
        value: kB(gzipSync(page).length),
        unit: 'kB',
        beside: besideEmpty(kB(gzipSync(emptyPage).length)),
      },
      {
        name: 'first visit: list, styles, script, letters',
        value: kB(gzipSync(page).length + assets.reduce((sum, asset) => sum + transferred(asset), 0)),
        unit: 'kB gzip',
      },
      {
        name: 'render the list',
        value: await medianMs(() => renderer.render('/', { edition })),
        unit: 'ms',
        beside: besideEmpty(renderEmptyMs),
      },
      {
        name: 'render a hydrant’s page',
        value: await medianMs(() => renderer.render('/hydrants/H-0058/', { edition, hydrant })),
        unit: 'ms',
        beside: besideEmpty(renderEmptyMs),
      },
      {
        name: 'publish 400 hydrants, 805 pages, memory',
        value: await medianMs(publishTo(memoryPublished()), 3),
        unit: 'ms',
        beside: withList,
      },
      {
        name: 'publish 400 hydrants, 805 pages, files',
        value: await medianMs(publishTo(filePublished(publishedFolder)), 3),
        unit: 'ms',
        beside: withList,
      },
    ];
  } finally {
    await rm(emptyFolder, { recursive: true, force: true });
    await rm(publishedFolder, { recursive: true, force: true });
  }
}
