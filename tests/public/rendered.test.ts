import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LogEntry } from '../../functions/log/log.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { nearestIndex } from '../../shared/nearest/nearest.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import { project } from '../../shared/projections/project.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { allKinds, bodyWithCanary } from '../support/canaries.ts';
import { sampleSubjectTypes } from '../support/sampleBodies.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility, recorded } from '../support/submissions.ts';
import { aHydrant, inventoryOf, townNow, townSettings, townSources } from '../support/town.ts';

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

async function publishedFrom(
  sources: PublicSources,
  settings = townSettings,
): Promise<{ texts: Map<string, string>; lines: LogEntry[] }> {
  const store = memoryPublished();
  const lines: LogEntry[] = [];
  await publishAndReport(
    { settings, store, renderer, readSources: async () => sources, stillRecorded: async () => true },
    townNow,
    (entry) => lines.push(entry),
  );
  const texts = new Map(
    [...store.objects]
      .filter(([key]) => !key.endsWith('.woff2'))
      .map(([key, { bytes }]) => [key, new TextDecoder().decode(bytes)]),
  );
  return { texts, lines };
}
const pagesIn = (texts: ReadonlyMap<string, string>): [string, string][] =>
  [...texts].filter(([key]) => key.endsWith('.html'));
/** What a reader reads: markup and drawings away, entities back. */
const wordsOf = (html: string): string =>
  html
    .replace(/<(script|style|svg)[\s\S]*?<\/\1>/g, '')
    .replace(/<[^>]+>/g, '')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

describe('every public page', () => {
  let texts: Map<string, string>;
  beforeAll(async () => {
    ({ texts } = await publishedFrom(townSources()));
  });

  test('there are pages in both languages, for each hydrant with an event', () => {
    const keys = pagesIn(texts).map(([key]) => key);
    for (const key of [
      'index.html',
      'es/index.html',
      'how-to-read/index.html',
      '404.html',
      'hydrants/H-0058/index.html',
    ])
      expect(keys).toContain(key);
    expect(keys.filter((key) => key.startsWith('hydrants/'))).toHaveLength(6);
    expect(keys.filter((key) => key.startsWith('es/hydrants/'))).toHaveLength(6);
  });

  test('has the number to call, the time of the check and the time until which it may be relied on', () => {
    for (const [key, html] of pagesIn(texts)) {
      expect(html, key).toContain('href="tel:5550142"');
      expect(html, key).toContain('<time datetime="2026-03-04T20:05:00.000Z">');
      expect(html, key).toContain('<time datetime="2026-03-04T20:25:00.000Z">');
      // 20:05 UTC is 14:05 Central standard time.
      expect(wordsOf(html), key).toMatch(/14:05 CST/);
      expect(wordsOf(html), key).toMatch(/14:25 CST/);
    }
  });

  test('is in one language, and every word of it is in the catalogue', () => {
    for (const [key, html] of pagesIn(texts)) {
      expect(html, key).toMatch(key.startsWith('es/') ? /<html lang="es"/ : /<html lang="en"/);
      expect(wordsOf(html), key).not.toMatch(
        /\[(public|hydraulics|problem)\.[^\]]+\]|undefined|NaN|\[object/,
      );
    }
    expect(wordsOf(texts.get('es/index.html')!)).not.toMatch(/out of service|Checked|Nearest|Struck/);
  });

  test('has one first heading, and no level left out below it', () => {
    for (const [key, html] of pagesIn(texts)) {
      const levels = [...html.matchAll(/<h([1-6])[ >]/g)].map(([, level]) => Number(level));
      expect(
        levels.filter((level) => level === 1),
        key,
      ).toHaveLength(1);
      levels.forEach((level, index) => expect(level - (levels[index - 1] ?? 0), key).toBeLessThanOrEqual(1));
    }
  });

  test('carries no script and no style of its own, and asks nothing of anybody else', () => {
    for (const [key, html] of texts) {
      if (!key.endsWith('.html') && !key.endsWith('.css')) continue;
      expect(html, key).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=/);
      expect(html, key).not.toMatch(/(?:src|href)="(?:https?:)?\/\/(?!creativecommons\.org)/);
      expect(html, key).not.toMatch(/url\((?!['"]?(?:\/_assets\/|#))/);
    }
  });

  test('leads only to pages that stand', () => {
    for (const [key, html] of pagesIn(texts))
      for (const [, path] of html.matchAll(/href="(\/[^"#]*)"/g)) {
        const target = path!.endsWith('/') ? `${path!}index.html`.slice(1) : path!.slice(1);
        // The page that checks packets comes with the build, not with an edition.
        const built = ['icon.svg', 'verify/index.html', 'verify/es/index.html'];
        expect([...texts.keys(), ...built], `${key} links ${path!}`).toContain(target);
      }
  });

  test('has no id twice, and every label leads to something', () => {
    for (const [key, html] of pagesIn(texts)) {
      const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id!);
      expect(new Set(ids).size, key).toBe(ids.length);
      for (const [, list] of html.matchAll(/(?:aria-labelledby|aria-describedby)="([^"]+)"/g))
        for (const id of list!.split(' ')) expect(ids, `${key} ${id}`).toContain(id);
    }
  });
});

describe('a report that is in nothing published yet', () => {
  test('is said to be missing on every page, with the number to call', async () => {
    const { texts } = await publishedFrom({ ...townSources(), unprojected: ['2026-03-04T20:03:00.000Z'] });
    const pages = pagesIn(texts);
    for (const name of ['index', 'map/index', 'wall/index', 'cover/index', 'years/index', '404'])
      expect(pages.map(([key]) => key)).toContain(`${name}.html`);
    for (const [key, html] of pages)
      expect(wordsOf(html).replaceAll(/\s+/g, ' '), key).toMatch(
        key.startsWith('es/')
          ? /Un aviso recibido desde el mié, 4 de mar, 14:03 CST aún no está en esta (página|pantalla)\..* 555-0142\./
          : /One report received since Wed, Mar 4, 14:03 CST is not on this (page|screen) yet\..* 555-0142\./,
      );
  });
});

describe('the list', () => {
  test('states the count as a checked fact, with what is not in the inventory beside it', async () => {
    const { texts } = await publishedFrom(townSources());
    const words = wordsOf(texts.get('index.html')!);
    expect(words).toContain('5 of 412 hydrants are out of service');
    expect(words).toContain('1 more was reported that is not in the inventory.');
    expect(words).toContain('Struck by a vehicle');
    expect(words).toContain('Water main shut off');
    expect(words).toContain('Waiting for a repair kit.');
    expect(words).toContain('that time has passed');
    expect(words).toMatch(/\d+ ft \(\d+ m\) (north|south|east|west)/);
    expect(wordsOf(texts.get('es/index.html')!)).toContain('5 de 412 hidrantes están fuera de servicio');
  });

  test('with nothing out states that as a checked fact, and never as an empty list', async () => {
    const { texts } = await publishedFrom({ ...townSources(), statuses: [], strikes: [] });
    const words = wordsOf(texts.get('index.html')!);
    expect(words).toContain('0 of 412 hydrants are out of service');
    expect(words).toContain('No hydrant in the inventory was recorded as out of service at this check.');
  });

  test('with one out speaks in the singular', async () => {
    const { statuses, strikes } = townSources();
    const { texts } = await publishedFrom({
      ...townSources(),
      statuses: statuses.slice(0, 1),
      strikes: strikes.slice(0, 1),
    });
    expect(wordsOf(texts.get('index.html')!)).toContain('1 of 412 hydrants is out of service');
  });

  test('with no inventory says that it is not set up, whom to call, and what was reported', async () => {
    const { texts } = await publishedFrom({ ...townSources(), inventory: null });
    const words = wordsOf(texts.get('index.html')!);
    expect(words).toContain('This page is not set up yet');
    expect(words).toContain('555-0142');
    expect(words).toContain('Reported out of service so far');
    expect(words).not.toMatch(/\d+ of \d+/);
  });

  test('in a Spanish, metric utility stands at the root in Spanish, metric first', async () => {
    const { texts } = await publishedFrom(townSources(), { ...townSettings, locale: 'es', units: 'metric' });
    expect(texts.get('index.html')).toContain('<html lang="es"');
    expect(texts.get('en/index.html')).toContain('<html lang="en"');
    expect(wordsOf(texts.get('en/index.html')!)).toMatch(/\d+ m \(\d+ ft\)/);
  });

  test('shows words of the inventory as words, whatever they are', async () => {
    const nasty = '<img src=x onerror=alert(1)> & "St"';
    const hydrants = [aHydrant('A<B', { place: nasty }), aHydrant('C', { latitudeDeg: 39.201 })];
    const sources = { ...townSources(hydrants), statuses: townSources(hydrants).statuses.slice(0, 1) };
    const { texts } = await publishedFrom({
      ...sources,
      statuses: [{ ...sources.statuses[0]!, hydrantId: 'A<B' }],
      strikes: [],
      flowTests: new Map(),
    });
    const html = texts.get('index.html')!;
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img');
    expect(texts.has('hydrants/A_3cB/index.html')).toBe(true);
  });
});

describe('a hydrant’s page', () => {
  test('has its state, its history and the curve of its last test with its figures', async () => {
    const { texts } = await publishedFrom(townSources());
    const html = texts.get('hydrants/H-0058/index.html')!;
    expect(html).toContain('class="supply-curve"');
    // By hand from NFPA 291's equations (second-hand): 789.5 gpm measured, 982.7 gpm at 20 psi; see build.test.ts.
    expect(wordsOf(html)).toContain('residual 42 psi (290 kPa) at 789 gpm');
    expect(wordsOf(html)).toContain('Rated capacity 983 gpm');
    expect(wordsOf(texts.get('hydrants/H-0059/index.html')!)).toContain('In service, not re-tested');
    expect(wordsOf(texts.get('hydrants/H-0131/index.html')!)).toContain('Sat, Nov 2, 2024');
  });

  test('keeps flows and readings to itself where the utility does', async () => {
    const publishing = { ...townSettings.publishing, showFlow: false };
    const { texts } = await publishedFrom(townSources(), { ...townSettings, publishing });
    const html = texts.get('hydrants/H-0058/index.html')!;
    expect(html).not.toContain('supply-curve');
    expect(wordsOf(html)).toContain('class B, orange');
    // Only the help page speaks of flows, those of the classes, and what is counted from classes alone: the credit for
    // distance (tests/public/cover.test.ts holds that no flow shows through it) and the credit that is needed.
    for (const [key, page] of pagesIn(texts)) {
      if (/how-to-read|cover/.test(key)) continue;
      const words = wordsOf(page).replace(/(Credit for distance|Crédito por distancia): .*?\.(?=\s)/g, '');
      // A figure of a flow; the map's script is handed the unit's name alone.
      expect(words, key).not.toMatch(/\d\s*(gpm|L\/min)/);
    }
  });
});

describe('what is private', () => {
  const subjects = {
    strike: onStrike(1),
    hydrant: onHydrant('H-0012'),
    claim: onClaim(2),
    utility: onUtility,
  };
  const canary = fc.stringMatching(/^QX[a-z0-9]{10}$/);

  function sourcesOf(kinds: readonly FactKind[], word: string): PublicSources {
    const submissions = kinds.map((kind, index) => {
      const body = bodyWithCanary(kind, word) as BodyOf<FactKind>;
      const person = { person: { personId: word }, device: { deviceId: word } };
      return fact(kind, index + 1, subjects[sampleSubjectTypes[kind]], body, person);
    });
    const all = submissions.map((submission) => recorded(submission));
    const { hydrants, strikes } = project(all, () => 'dry-barrel');
    const town = [
      aHydrant('H-12'),
      aHydrant('H-0012', { latitudeDeg: 39.2012 }),
      aHydrant('H-13', { latitudeDeg: 39.2023 }),
    ];
    const flowTests = submissions.filter((submission) => submission.kind === 'flow-test');
    return {
      inventory: { ...inventoryOf(town), index: nearestIndex(town) },
      statuses: hydrants,
      strikes,
      flowTests: new Map(flowTests.map((test) => [test.body.residualHydrantId, [test]])),
    };
  }

  test('is in no page, snapshot, pointer or log line, whatever was typed into any field of any form', async () => {
    await fc.assert(
      fc.asyncProperty(fc.subarray([...allKinds], { minLength: 1 }), canary, async (kinds, word) => {
        const sources = sourcesOf(kinds, word);
        // The canary is alive: it is in what the publisher read, wherever a kind with free text is among them.
        if (kinds.includes('strike')) expect(JSON.stringify(sources)).toContain(word);
        const { texts, lines } = await publishedFrom(sources);
        for (const [key, text] of texts) expect(text.includes(word), key).toBe(false);
        expect(JSON.stringify(lines)).not.toContain(word);
      }),
      { numRuns: 40 },
    );
  });
});
