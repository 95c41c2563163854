import { hydrantPath, pagePath } from '../../shared/public/address.ts';
import { areaPath, partOf, partsOf, type PublicArea } from '../../shared/public/areas.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import { notRetestedPart, notRetestedParts, notRetestedPath } from '../../shared/public/notRetestedList.ts';
import type { PublicOutOfService } from '../../shared/public/snapshot.ts';
import { stationPath } from '../../shared/stations/stations.ts';
import { locales, say } from '../../shared/words/index.ts';
import { contentTypeOf, type PublishedObject } from '../stores/published/published.ts';
import type { PageContent, SiteRenderer } from './renderer.ts';

export interface PublishedFile extends PublishedObject {
  readonly key: string;
}

/** How long a reader or a cache may keep a page, seconds. A minute is the most; half of that leaves room on the way. */
export const PAGE_CACHE = 'public, max-age=30, must-revalidate';
/** An asset's name changes with its content. */
const ASSET_CACHE = 'public, max-age=31536000, immutable';
const PLAIN_ASSET_CACHE = 'public, max-age=3600';

export const SNAPSHOT_KEY = 'v1/snapshot.json';

export interface PageToRender {
  readonly key: string;
  readonly path: string;
  readonly content: PageContent;
  /**
   * Everything that the page shows, its times apart. While it stays the same, a page that is young enough is left as it
   * stands, with the check that it shows. Left out: the page is made anew at every check.
   */
  readonly shows?: unknown;
}

/**
 * While what a page shows stays the same it is left as it stands. What every page says is missing from it is shown, too:
 * it goes onto each at once, and from each as soon as nothing is (decision 0208).
 */
function keptWhile({ snapshot }: PublicEdition, shows: unknown): Pick<PageToRender, 'shows'> {
  const { utility, notYetShown = null } = snapshot;
  return shows === undefined ? {} : { shows: { utility, notYetShown, shows } };
}

/** Every page of an edition. The lists are written last, so that their links lead somewhere by the time they stand. */
export function pagesOf(
  edition: PublicEdition,
  withdrawn: readonly string[],
): { readonly others: readonly PageToRender[]; readonly lists: readonly PageToRender[] } {
  const { utility } = edition.snapshot;
  const page = (name: string, locale: string, content: PageContent, shows?: unknown): PageToRender => {
    const path = pagePath(name, locale, utility.locale);
    return { key: `${path.slice(1)}index.html`, path, content, ...keptWhile(edition, shows) };
  };
  const linked = new Set(edition.hydrants.map(({ hydrantId }) => hydrantId));
  const { fireCover, inventory, notRetested, outOfService } = edition.snapshot;
  const by = fireCover?.by;
  /** Entries name hydrants and link those that have a page, and say some words by what holds everywhere. */
  const shownWith = (given: readonly (PublicOutOfService | undefined | null)[]): unknown => {
    const entries = given.filter((entry) => entry !== undefined && entry !== null);
    if (entries.length === 0) return null;
    return {
      links: entries
        .flatMap((entry) => [entry, ...entry.nearest])
        .map(({ hydrantId }) => hydrantId !== null && linked.has(hydrantId)),
      ...(entries.some(({ nearest }) => nearest.length > 0)
        ? { hose: { hoseFt: fireCover?.hoseFt, by } }
        : {}),
      anyLeft: inventory && inventory.hydrants > inventory.outOfService,
    };
  };
  const areaPages = (area: PublicArea, locale: string): readonly PageToRender[] =>
    Array.from({ length: partsOf(area) }, (_, index) => {
      const part = index + 1;
      const entries = partOf(area, part).map((place) => outOfService[place]);
      // Where its entries stand in the list of all is not shown, only how many they are.
      const shows = {
        ...area,
        out: area.out.length,
        entries,
        by: entries.length > 0 && by,
        with: shownWith(entries),
      };
      return page(areaPath(area.code, part), locale, { edition, area: { area, part } }, shows);
    });
  const notRetestedPages = (locale: string): readonly PageToRender[] =>
    Array.from({ length: notRetestedParts(notRetested) }, (_, index) => {
      const part = index + 1;
      const shows = { entries: notRetestedPart(notRetested, part), of: notRetested.length };
      return page(notRetestedPath(part), locale, { edition, notRetestedPart: part }, shows);
    });
  const unplaced = outOfService.filter(({ position }) => position === null).length;
  const stationPages = (locale: string): readonly PageToRender[] => [
    ...edition.stations.map((station) => {
      const entries = station.out.map((place) => outOfService[place]);
      return page(
        stationPath(station.slug),
        locale,
        { edition, station },
        { station, entries, unplaced, with: shownWith(entries) },
      );
    }),
    ...(edition.stations.length > 0 ? [page('stations/', locale, { edition }, edition.stations)] : []),
  ];
  const others = locales.flatMap((locale) => [
    ...edition.hydrants.map((hydrant) =>
      page(
        hydrantPath(hydrant.hydrantId),
        locale,
        { edition, hydrant },
        { hydrant, with: shownWith([hydrant.outOfService]) },
      ),
    ),
    ...withdrawn.map((hydrantId) =>
      page(hydrantPath(hydrantId), locale, { edition, hydrant: null }, 'withdrawn'),
    ),
    page('how-to-read/', locale, { edition }, { by }),
    ...(edition.listAreas?.areas ?? []).flatMap((area) => areaPages(area, locale)),
    ...notRetestedPages(locale),
    ...edition.yearly.years.map((year) =>
      page(`years/${String(year.year)}/`, locale, { edition, year }, { year, since: edition.yearly.since }),
    ),
    page('years/', locale, { edition }, edition.yearly),
    ...stationPages(locale),
  ]);
  return {
    others: [
      ...others,
      { key: '404.html', path: '/404', content: { edition }, ...keptWhile(edition, 'missing') },
    ],
    // What the list names first links to the page of lost cover.
    lists: ['cover/', 'map/', 'wall/', ''].flatMap((name) =>
      locales.map((locale) => page(name, locale, { edition })),
    ),
  };
}

/**
 * Pages that stand and that this edition no longer has: lists that one page holds again, or a part that they lost.
 * Each gets a page that claims nothing, or it would stand there for good with what was true once. Hydrants' own pages
 * are told apart by their ids (`withdrawnPages`).
 */
export function gonePages(
  edition: PublicEdition,
  standing: readonly string[],
  { others, lists }: ReturnType<typeof pagesOf>,
): readonly PageToRender[] {
  const { utility } = edition.snapshot;
  const made = new Set([...others, ...lists].map(({ key }) => key));
  const gone = standing.filter((key) => key.endsWith('/index.html') && !made.has(key));
  return gone.map((key) => {
    const locale = locales.find((other) => key.startsWith(`${other}/`)) ?? utility.locale;
    const path = pagePath('gone/', locale, utility.locale);
    return { key, path, content: { edition }, ...keptWhile(edition, 'gone') };
  });
}

/** What must stand on every page, whatever else does. A page without it is a fault and is not published. */
function assertHonest(html: string, path: string, { snapshot }: PublicEdition): void {
  const { checkedAt, relyUntil, utility } = snapshot;
  for (const [what, text] of [
    ['the time of the check', `datetime="${checkedAt}"`],
    ['the time until which it may be relied on', `datetime="${relyUntil}"`],
    ['the number to call', `href="tel:${utility.emergencyPhone.replace(/[^+\d]/g, '')}"`],
  ] as const)
    if (!html.includes(text)) throw new Error(`${path} lacks ${what}`);
}

const utf8 = new TextEncoder();

/** Renders one page and checks it. */
export async function renderPage(
  renderer: SiteRenderer,
  { key, path, content }: PageToRender,
): Promise<PublishedFile> {
  const html = await renderer.render(path, content);
  assertHonest(html, path, content.edition);
  return {
    key,
    bytes: utf8.encode(html),
    contentType: contentTypeOf(key),
    cacheControl: PAGE_CACHE,
    checkedAt: content.edition.snapshot.checkedAt,
  };
}

/** The snapshot for other systems, with what they must know before they use it. */
export function snapshotFile({ snapshot }: PublicEdition): PublishedFile {
  const note = say(snapshot.utility.locale, 'public.data.note');
  return {
    key: SNAPSHOT_KEY,
    bytes: utf8.encode(`${JSON.stringify({ note, ...snapshot }, null, 1)}\n`),
    contentType: contentTypeOf(SNAPSHOT_KEY),
    cacheControl: PAGE_CACHE,
    checkedAt: snapshot.checkedAt,
  };
}

const assetReferences = /(?:href|src)="(\/(?:_assets\/[^"?#]+|icon\.svg))"|url\((\/_assets\/[^)?#]+)\)/g;

/** The assets that some text refers to. */
export function assetsIn(text: string): readonly string[] {
  return [...text.matchAll(assetReferences)].flatMap(([, attribute, url]) => attribute ?? url ?? []);
}

const utf8Text = new TextDecoder();
const scriptImports = /\b(?:from|import)\s*\(?\s*["'`]\.\/([\w.~@-]+\.js)["'`]/g;

/** The assets that an asset needs: a style sheet its fonts, a script the scripts that it imports. */
export function namedIn({ key, bytes }: PublishedFile): readonly string[] {
  if (key.endsWith('.css')) return assetsIn(utf8Text.decode(bytes));
  if (!key.endsWith('.js')) return [];
  return [...utf8Text.decode(bytes).matchAll(scriptImports)].map(([, name]) => `/_assets/${name ?? ''}`);
}

/** One asset; what it needs in its turn is found by `namedIn`. */
export async function assetFile(renderer: SiteRenderer, path: string): Promise<PublishedFile> {
  const key = path.slice(1);
  return {
    key,
    bytes: await renderer.asset(path),
    contentType: contentTypeOf(key),
    cacheControl: key.startsWith('_assets/') ? ASSET_CACHE : PLAIN_ASSET_CACHE,
    checkedAt: null,
  };
}
