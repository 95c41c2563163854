import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PublicSources } from '../../shared/public/build.ts';
import { slugOf, type Station } from '../../shared/stations/stations.ts';
import { expectAccessible, expectNoSideScroll } from '../support/app.ts';
import { browserScreens } from '../support/browserTest.ts';
import { publicSite, type PublicSite } from '../support/publicSite.ts';
import {
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townHydrants,
  townNow,
  townSources,
} from '../support/town.ts';

const screens = browserScreens();
let city: PublicSite;

const hydrants = townHydrants(1500);
const idAt = (index: number): string => hydrants[index]?.hydrantId ?? '';
const hourAgo = (hours: number): string => new Date(townNow.getTime() - hours * 3_600_000).toISOString();
const station: Station = {
  name: 'Station 1, Harbor',
  slug: slugOf('Station 1, Harbor'),
  polygons: [[[-98.41, 39.19, -98.38, 39.19, -98.38, 39.3, -98.41, 39.3, -98.41, 39.19]]],
};

/** A city's bad week: so many out, some on no map, a hundred and more not re-tested, and work to come. */
function badWeek(out: number, owing: number): PublicSources {
  const town = townSources(hydrants);
  const taken = new Set(town.statuses.map(({ hydrantId }) => hydrantId));
  const free = hydrants.filter(({ hydrantId }) => !taken.has(hydrantId));
  const more = free
    .slice(0, out)
    .map(({ hydrantId }, index) =>
      aStatus(hydrantId, [anOutage(`m-${index}`, { cause: 'main-shut', since: hourAgo(index + 1) })]),
    );
  const back = free.slice(-owing).map(({ hydrantId }, index) =>
    aStatus(
      hydrantId,
      [
        anOutage(`w-${index}`, {
          cause: 'frozen',
          since: hourAgo(900),
          endedAt: hourAgo(20 + index),
          deferred: [{ proof: 'flow-test', reason: 'ice in the street', byWorkerId: 'w-4' }],
        }),
      ],
      {
        planned: [
          {
            submissionId: `p-${index}`,
            work: 'flow-test',
            from: hourAgo(-30 - index),
            to: hourAgo(-31 - index),
            takesOutOfService: index % 2 === 0,
          },
        ],
      },
    ),
  );
  return {
    ...town,
    inventory: inventoryOf(hydrants),
    statuses: [...town.statuses, ...more, ...back],
    strikes: [...town.strikes, aStrike('nowhere', { since: hourAgo(2) })],
    stations: [station],
  };
}

/** Every address of the city's pages, by what kind of page it is. */
const pages = [
  ['the list with its areas', '/'],
  ['the same in Spanish', '/es/'],
  ['an area', '/areas/a1/'],
  ['an area in Spanish', '/es/areas/a1/'],
  ['what is on no map', '/areas/elsewhere/'],
  ['those not re-tested', '/not-retested/'],
  ['their second page, in Spanish', '/es/not-retested/2/'],
  ['a list that is no longer kept', '/not-retested/3/'],
  ['the same in Spanish', '/es/not-retested/3/'],
  ['a hydrant that is out', '/hydrants/H-0058/'],
  ['a hydrant with work to come', `/hydrants/${idAt(1499)}/`],
  ['the same in Spanish', `/es/hydrants/${idAt(1499)}/`],
  ['a hydrant whose records were withdrawn', `/hydrants/${idAt(1300)}/`],
  ['areas that lost cover', '/cover/'],
  ['the map', '/map/'],
  ['all stations', '/stations/'],
  ['a station', `/stations/${station.slug}/`],
  ['the years', '/years/'],
  ['a year', '/years/2026/'],
  ['how to read it', '/how-to-read/'],
  ['the wall', '/wall/'],
  ['no such page', '/404.html'],
] as const;

beforeAll(async () => {
  // First with more on record, so that some pages stand whose matter is gone.
  city = await publicSite(badWeek(130, 230));
  const later = badWeek(130, 130);
  const withdrawn = idAt(1300);
  await city.publish(
    { ...later, statuses: later.statuses.filter(({ hydrantId }) => hydrantId !== withdrawn) },
    1,
  );
}, 240_000);
afterAll(() => city.close());

async function open(path: string, options: BrowserContextOptions = {}): Promise<Page> {
  const { page } = await screens.open({ viewport: { width: 1280, height: 900 }, ...options });
  await page.clock.install({ time: new Date(townNow.getTime() + 2 * 60_000) });
  await page.goto(city.url + path);
  return page;
}

/** Pages whose looks no other file asks axe about (public, cover, stations, public.map, public.wall). */
const onlyHere = pages.filter(([, path]) => /areas|not-retested|^\/(es\/)?hydrants\/H-1/.test(path));

const looks = [
  ['light', {}],
  ['dark', { colorScheme: 'dark' }],
  ['forced colors', { forcedColors: 'active' }],
  ['a phone of 320 px', { viewport: { width: 320, height: 640 } }],
] as const satisfies readonly (readonly [string, BrowserContextOptions])[];

describe.each(onlyHere)('%s', (_, path) => {
  // WCAG 2.2 AA by the rules of axe-core.
  test.each(looks)('has nothing that axe objects to: %s', async (__, look) => {
    const page = await open(path, look);
    await expectAccessible(page);
    await expectNoSideScroll(page);
  });
});

test('the squares and the table of a city’s areas have nothing that axe objects to', async () => {
  const page = await open('/');
  // Its entries are those of the short list, and a hundred of them are half a minute of asking.
  await page.evaluate(() => {
    for (const entry of document.querySelectorAll('.entry')) entry.remove();
  });
  await expectAccessible(page);
});

describe.each(pages)('%s', (_, path) => {
  // WCAG 2.2, 1.4.4: text can be made twice as large without loss.
  test('fits at twice the letter size', async () => {
    const page = await open(path, { viewport: { width: 640, height: 900 } });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await expectNoSideScroll(page);
  });

  // WCAG 2.2, 2.1.1, 2.1.2, 2.4.3, 2.4.7, 2.4.11: all by keyboard, no trap, in order, seen and not hidden.
  test('is walked by keyboard from end to end, each stop once, in order, seen', async () => {
    const page = await open(path, { reducedMotion: 'reduce' });
    const { expected, stops } = await walk(page);
    expect(stops.map(({ name }) => name)).toEqual(expected);
    expect(
      stops.filter(({ marked }) => !marked).map(({ name }) => name),
      'focus not seen',
    ).toEqual([]);
    expect(
      stops.filter(({ within }) => !within).map(({ name }) => name),
      'off the screen',
    ).toEqual([]);
  });
});

interface Stop {
  readonly name: string;
  /** Whether it looks other than without focus. */
  readonly marked: boolean;
  /** Whether some of it is on the screen. */
  readonly within: boolean;
}

/** Presses Tab until the page is left, and says where the focus went, and where it had to go. */
async function walk(page: Page): Promise<{ expected: readonly string[]; stops: readonly Stop[] }> {
  const expected = await page.evaluate(() => {
    const stops = [
      ...document.querySelectorAll<HTMLElement>('a[href], button, input, [tabindex="0"]'),
    ].filter(
      (element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest('[hidden]'),
    );
    stops.forEach((element, index) => element.setAttribute('data-stop', String(index)));
    return stops.map((_element, index) => String(index));
  });
  const stops: Stop[] = [];
  // Two more than there are: a walk that goes round in circles ends, and is seen.
  while (stops.length < expected.length + 2) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate((): Stop | null => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const looks = (): string =>
        [element, ...element.querySelectorAll('*')]
          .map((part) => {
            const { outline, stroke, strokeWidth, backgroundColor, transform } = getComputedStyle(part);
            return [outline, stroke, strokeWidth, backgroundColor, transform].join();
          })
          .join();
      const focused = looks();
      const box = element.getBoundingClientRect();
      const within = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
      if (element instanceof HTMLElement || element instanceof SVGElement) {
        element.blur();
        const plain = looks();
        element.focus();
        return {
          name: element.getAttribute('data-stop') ?? element.outerHTML,
          marked: plain !== focused,
          within,
        };
      }
      return null;
    });
    if (stop === null) break;
    stops.push(stop);
  }
  return { expected, stops };
}
