import { beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { builtRenderer } from '../support/builtSite.ts';
import {
  aHydrant,
  anOutage,
  aStatus,
  inventoryOf,
  townNow,
  townSettings,
  townSources,
} from '../support/town.ts';

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

async function pages(sources: PublicSources, more: Partial<UtilitySettings> = {}) {
  const store = memoryPublished();
  const settings = { ...townSettings, ...more };
  await publishOnce(
    { settings, store, renderer, readSources: async () => sources, stillRecorded: async () => true },
    townNow,
  );
  const html = (key: string): string => new TextDecoder().decode(store.objects.get(key)!.bytes);
  /** What a reader reads, on one line. */
  const words = (key: string): string =>
    html(key)
      .replace(/<(script|style|svg)[\s\S]*?<\/\1>/g, '')
      .replace(/<[^>]+>/g, ' ')
      .replaceAll('&#39;', "'")
      .replace(/\s+/g, ' ')
      .replace(/ ([.,)])/g, '$1');
  return { html, words };
}

/** A at the place, B 730 ft north of it (0.002° of 364,811 ft); each alone with its kind. */
const street = [
  aHydrant('A', { place: 'Alder St', ratedFlowGpm: 1200 }),
  aHydrant('B', { latitudeDeg: 39.202, ratedFlowGpm: 1600 }),
];
const out = (...ids: string[]): PublicSources => ({
  inventory: inventoryOf(street),
  statuses: ids.map((id) => aStatus(id, [anOutage(`o-${id}`, { since: '2026-03-01T12:00:00Z' })])),
  strikes: [],
  flowTests: new Map(),
});

describe('a hydrant’s page', () => {
  test('answers which can be used, what is left around it, whether hose reaches, and how sure that is', async () => {
    const { words } = await pages(out('A'));
    const page = words('hydrants/A/index.html');
    expect(page).toContain('B 730 ft (223 m) north');
    expect(page).toContain('1,200 ft (366 m) of hose may reach from each of these.');
    expect(page).toMatch(/Within 300 ft \(91 m\) 600 ft \(183 m\) 1,000 ft \(305 m\) Now 0 0 1 Before 1 1 2/);
    // By hand: before 1,000 + 250, left 250; 250 gpm is 946 L/min, 1,250 is 4,732 (3.785411784 L a gallon).
    expect(page).toContain(
      'Credit for distance: at most 250 gpm (946 L/min) now, at most 1,250 gpm (4,732 L/min) before.',
    );
    expect(page).toContain('Distances are straight lines. Hose along streets is longer');
  });

  test('when every hydrant within 1,000 ft is out says that first', async () => {
    const { words } = await pages(out('A', 'B'));
    expect(words('hydrants/A/index.html')).toContain('Every hydrant within 1,000 ft (305 m) is out.');
    expect(words('es/hydrants/A/index.html')).toContain(
      'Todos los hidrantes a menos de 1,000 pies (305 m) están fuera.',
    );
  });

  test('along streets says so, and what the hose reaches', async () => {
    const streets = { walkFt: () => 800 };
    const { words } = await pages({ ...out('A'), streets });
    expect(words('hydrants/A/index.html')).toContain('1,200 ft (366 m) of hose reaches from each of these.');
    expect(words('hydrants/A/index.html')).toContain('Distances are along streets.');
    expect(words('index.html')).not.toContain('straight line');
    expect(words('how-to-read/index.html')).toContain('Distances are along streets as far as');
  });

  test('in a metric utility has meters first', async () => {
    const { words } = await pages(out('A'), { units: 'metric' });
    expect(words('hydrants/A/index.html')).toContain(
      'Within 91 m (300 ft) 183 m (600 ft) 305 m (1,000 ft) Now 0 0 1',
    );
  });
});

describe('the page of lost cover', () => {
  test('names each area by its place, and what was looked at, as a checked fact', async () => {
    const { words, html } = await pages(out('A', 'B'));
    const page = words('cover/index.html');
    expect(page).toContain('1 area lost its cover.');
    expect(page).toMatch(/\d+ points were looked at: a grid of 250 ft \(76 m\)/);
    expect(page).toContain('Around Alder St (A)');
    expect(page).toContain('Because these hydrants are out:');
    expect(page).toContain('Do not rely on this page after Wed, Mar 4, 14:25 CST');
    expect(html('cover/index.html')).toMatch(/<path class="lost-none" d="M/);
    expect(words('index.html')).toContain('Lost cover 1 area lost its cover');
    expect(words('es/index.html')).toContain('1 zona perdió su cobertura');
  });

  test('says that nothing was lost only with what was looked at', async () => {
    const { words } = await pages({ ...out('A'), inventory: inventoryOf(denseTown) });
    expect(words('cover/index.html')).toMatch(
      /No area was found to have lost its cover\..*\d+ points were looked at.*At this check, none of them had lost its cover\./,
    );
    const nothing = await pages(out());
    expect(nothing.words('cover/index.html')).toContain(
      'Nothing was looked at, because no hydrant of the inventory is out.',
    );
  });

  test('with no inventory says that nothing can be said', async () => {
    const { words } = await pages({ ...out('A'), inventory: null });
    expect(words('cover/index.html')).toContain('No list of hydrants has been loaded');
    expect(words('cover/index.html')).not.toContain('lost its cover');
  });

  /** Nine hydrants 180 ft apart around A: one of them can go. */
  const denseTown = Array.from({ length: 9 }, (_, index) =>
    aHydrant(index === 4 ? 'A' : `N${index}`, {
      latitudeDeg: 39.2 + (Math.floor(index / 3) - 1) * 0.0005,
      longitudeDeg: -98.4 + ((index % 3) - 1) * 0.0006,
      ratedFlowGpm: 1500,
    }),
  );
});

describe('the list at a glance', () => {
  test('has the oldest outage and the time to return, or that there is none yet', async () => {
    const { words } = await pages(townSources());
    // H-0341 since February 27; one outage ended in the year before: February 20, 03:00 to 25, 21:00, 5 days 18 hours.
    expect(words('index.html')).toContain('Out longest H-0341');
    expect(words('index.html')).toContain(
      'Time to return 6 days, by the only one that came back in the 365 days before this check.',
    );
    const { words: none } = await pages(out('A'));
    expect(none('index.html')).toContain('No return yet in the 365 days before this check');
    expect(none('es/index.html')).toContain('Ninguno ha vuelto aún en los 365 días');
  });

  test('hydrants that the inventory itself says are not in use are counted apart', async () => {
    const unused = [...street, aHydrant('C', { latitudeDeg: 39.2005, service: 'inactive' })];
    const { words } = await pages({ ...out('A'), inventory: inventoryOf(unused) });
    expect(words('index.html')).toContain('1 of 2 hydrants is out of service');
    expect(words('index.html')).toContain('1 more hydrant is marked as not in use in the inventory.');
    expect(words('index.html')).not.toMatch(/\bC \d+ ft/);
  });
});
