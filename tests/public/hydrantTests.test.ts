import { beforeAll, describe, expect, it } from 'vitest';
import { publishAndReport } from '../../functions/publish/report.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import { publicHydrantPage, type PublicHydrantPage } from '../../shared/public/hydrantPage.ts';
import type { FlowTestFact } from '../../shared/public/ratings.ts';
import { publicSnapshot } from '../../shared/public/snapshot.ts';
import { builtRenderer } from '../support/builtSite.ts';
import {
  aFlowTest,
  aHydrant,
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townNow,
  townSettings,
} from '../support/town.ts';

/** Static 78, residual 52 and a metered flow: the capacity then moves as the flow does. */
const metered = (id: string, testedAt: string, measuredFlowGpm: number, residualPsi = 52): FlowTestFact =>
  aFlowTest(id, {
    residualHydrantId: 'A',
    testedAt,
    staticPsi: 78,
    residualPsi,
    flowHydrants: [],
    measuredFlowGpm,
  });

const first = metered('t-1', '2019-05-14T15:00:00Z', 900);
const second = metered('t-2', '2022-05-03T15:00:00Z', 890);
const afterRepair = metered('t-3', '2025-09-02T15:00:00Z', 700);
const tooSmall = metered('t-4', '2026-01-14T15:00:00Z', 300, 75);

/** Struck in August 2025, repaired on the second of September before noon, a fifth weaker since. */
export const weakened = (tests = [first, second, afterRepair]): PublicSources => ({
  inventory: inventoryOf([aHydrant('A', { place: 'Alder St at First Ave' }), aHydrant('B')]),
  statuses: [
    aStatus('A', [anOutage('s-1', { since: '2025-08-28T03:00:00Z', endedAt: '2025-09-02T20:00:00Z' })], {
      flowTestIds: tests.map(({ submissionId }) => submissionId),
    }),
  ],
  strikes: [
    aStrike('s-1', {
      hydrantId: 'A',
      since: '2025-08-28T03:00:00Z',
      repairedAt: '2025-09-02T14:00:00Z',
      returnedAt: '2025-09-02T20:00:00Z',
    }),
  ],
  flowTests: new Map([['A', tests]]),
});
const settingsWith = (showFlow: boolean): typeof townSettings => ({
  ...townSettings,
  publishing: { ...townSettings.publishing, showFlow },
});
const pageOf = (sources: PublicSources, showFlow = true): PublicHydrantPage =>
  buildEdition(sources, settingsWith(showFlow), townNow.toISOString()).hydrants.find(
    ({ hydrantId }) => hydrantId === 'A',
  )!;

describe('what a public page may know of its hydrant’s tests', () => {
  it('rates by the newest test that can, with the interval of its readings', () => {
    const { tests } = pageOf(weakened());
    expect(tests.map(({ testedAt }) => testedAt)).toEqual([
      '2025-09-02T15:00:00Z',
      '2022-05-03T15:00:00Z',
      '2019-05-14T15:00:00Z',
    ]);
    const { readings, hydrantClass } = tests[0]!;
    // NFPA 291's relation worked by hand: 700 × (58 / 26)^0.54 = 700 × 2.23077^0.54 = 700 × 1.5424 = 1,079.7 gpm (second-hand).
    expect(readings!.ratedFlowGpm).toBe(1080);
    expect(hydrantClass).toBe('A');
    const { lowGpm, highGpm, classChance } = readings!.interval!;
    expect(lowGpm).toBeLessThan(1080);
    expect(highGpm).toBeGreaterThan(1080);
    expect(classChance).toBeGreaterThan(0.5);
  });

  it('flags a loss against the test before and against the first', () => {
    const { changes } = pageOf(weakened());
    expect(changes.map(({ verdict, fromTestedAt }) => [verdict, fromTestedAt])).toEqual([
      ['loss', '2022-05-03T15:00:00Z'],
      ['loss', '2019-05-14T15:00:00Z'],
    ]);
    // The same pressures, so the shares are those of the flows: 700 of 890, 700 of 900.
    expect(changes[0]!.figures!.fraction).toBeCloseTo(700 / 890 - 1, 9);
    expect(changes[1]!.figures!.fraction).toBeCloseTo(700 / 900 - 1, 9);
  });

  it('puts the tests before and after the repair side by side', () => {
    const { repairs } = pageOf(weakened());
    expect(repairs).toHaveLength(1);
    expect(repairs[0]).toMatchObject({
      struckAt: '2025-08-28T03:00:00Z',
      before: { testedAt: '2022-05-03T15:00:00Z' },
      after: { testedAt: '2025-09-02T15:00:00Z' },
      change: { verdict: 'loss' },
    });
    expect(pageOf(weakened([second])).repairs).toEqual([]);
  });

  it('counts a test made because of the repair, also when its end was written down later', () => {
    const early: FlowTestFact = {
      ...afterRepair,
      body: { ...afterRepair.body, purpose: 'after-repair', testedAt: '2025-09-02T13:00:00Z' },
    };
    expect(pageOf(weakened([first, second, early])).repairs).toMatchObject([
      { after: { testedAt: '2025-09-02T13:00:00Z' } },
    ]);
    const routine: FlowTestFact = { ...early, body: { ...early.body, purpose: 'routine' } };
    expect(pageOf(weakened([first, second, routine])).repairs).toEqual([]);
  });

  it('with too small a drop: no class, no figure, and the older rating stands', () => {
    const { tests, changes } = pageOf(weakened([first, tooSmall]));
    expect(tests[0]).toMatchObject({
      hydrantClass: null,
      readings: { ratedFlowGpm: null, interval: null },
    });
    expect(changes).toEqual([]);
  });

  it('names no gauge, no person and nothing that the tester noted', () => {
    const noted: FlowTestFact = {
      ...first,
      body: {
        ...first.body,
        gauges: [{ gaugeId: 'CANARY-G', reads: ['static'], rangePsi: 160, calibratedOn: null }],
        testedByWorkerIds: ['CANARY-W'],
        note: 'CANARY note',
      },
    };
    expect(JSON.stringify(pageOf(weakened([noted, second])))).not.toMatch(/CANARY|t-1|t-2/);
  });
});

describe('where the utility keeps flows to itself', () => {
  it('nothing from which a flow follows leaves: no reading, interval, spread, chance or share', () => {
    const page = pageOf(weakened(), false);
    expect(page.tests.map(({ readings }) => readings)).toEqual([null, null, null]);
    expect(page.changes.map(({ figures }) => figures)).toEqual([null, null]);
    const numbers = JSON.stringify({ ...page, past: [], position: null }).match(/:-?\d+(\.\d+)?[,}\]]/g);
    expect(numbers).toBeNull();
    // Classes, days and that it lost capacity are told: a fire crew must know.
    expect(page.tests.map(({ hydrantClass }) => hydrantClass)).toEqual(['A', 'A', 'A']);
    expect(page.changes[0]!.verdict).toBe('loss');
  });
});

describe('the allow-list of the page', () => {
  const objects = (
    value: unknown,
    path: readonly (string | number)[] = [],
  ): (readonly (string | number)[])[] =>
    typeof value !== 'object' || value === null
      ? []
      : [
          ...(Array.isArray(value) ? [] : [path]),
          ...Object.entries(value).flatMap(([key, inner]) =>
            objects(inner, [...path, Array.isArray(value) ? Number(key) : key]),
          ),
        ];

  it('refuses a field that it does not name, in every object', () => {
    const page = pageOf(weakened());
    const paths = objects(page);
    expect(paths.length).toBeGreaterThan(20);
    for (const path of paths) {
      const copy = structuredClone(page) as unknown as Record<string, unknown>;
      const at = path.reduce<Record<string, unknown>>(
        (inner, key) => inner[key] as Record<string, unknown>,
        copy,
      );
      at['canary'] = 1;
      expect(publicHydrantPage.safeParse(copy).success, path.join('.')).toBe(false);
    }
  });
});

describe('as people read it', () => {
  const rendered = async (sources: PublicSources, showFlow: boolean): Promise<(key: string) => string> => {
    const store = memoryPublished();
    await publishAndReport(
      {
        settings: settingsWith(showFlow),
        store,
        renderer: await builtRenderer(),
        readSources: async () => sources,
        stillRecorded: async () => true,
      },
      townNow,
      () => undefined,
    );
    return (key) => new TextDecoder().decode(store.objects.get(key)!.bytes);
  };
  const wordsOf = (html: string): string =>
    html
      .replaceAll(/<(script|style|svg)[\s\S]*?<\/\1>/g, '')
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll('&#39;', "'")
      .replaceAll(/\s+/g, ' ');

  let html: string;
  let spanish: string;
  let kept: string;
  beforeAll(async () => {
    const open = await rendered(weakened(), true);
    [html, spanish] = [open('hydrants/A/index.html'), open('es/hydrants/A/index.html')];
    kept = (await rendered(weakened(), false))('hydrants/A/index.html');
  }, 120_000);

  it('capacity, interval, how sure the class is, loss, repair and table', () => {
    const words = wordsOf(html);
    expect(words).toMatch(/Rated capacity 1,080 gpm \(4,088 L\/min\) at a residual of 20 psi \(138 kPa\)/);
    expect(words).toMatch(
      /The readings of that test allow (9\d0|1,0\d0) to 1,1\d0 gpm \([\d,]+ to [\d,]+ L\/min\) \(95%\)\. Class A is \d\d% sure\./,
    );
    expect(words).toContain('Less water than before');
    expect(words).toContain('It gives 21% less than on May 3, 2022');
    expect(words).toContain('Before and after the repair of Aug 27, 2025');
    expect(words).toContain('All tests');
    expect(words).not.toMatch(/\[(public|hydraulics)\.|undefined|NaN/);
    expect(wordsOf(spanish)).toContain('Menos agua que antes');
    expect(wordsOf(spanish)).not.toMatch(/\[(public|hydraulics)\.|Rated|before the/);
  });

  it('curve and chart each have a title and a description, and the curve its band', () => {
    expect(html.match(/<svg[^>]* role="img"[^>]*class="(supply-curve|capacity-history)"/g)).toHaveLength(2);
    expect(html).toContain('<title id="curve-title">Water supply curve of A</title>');
    expect(html).toMatch(/<desc id="history-desc">May 14, 2019: 1,388 gpm, class A\./);
    expect(html).toContain('<polygon');
  });

  it('keeps flows to itself where it is set so: no figure, no curve, no chart', () => {
    const words = wordsOf(kept);
    expect(words).not.toMatch(/gpm|L\/min|\d psi|kPa|95%|9\d%/);
    expect(kept).not.toMatch(/supply-curve|capacity-history/);
    expect(words).toContain('It gave clearly less on Sep 2, 2025 than on May 3, 2022.');
    expect(words).toContain('class A');
  });
});

describe('the utility’s own classes', () => {
  const settings = {
    ...townSettings,
    flowTest: {
      classBands: [
        { hydrantClass: 'A' as const, name: '1', fromGpm: 1050, color: 'white' as const },
        { hydrantClass: 'C' as const, fromGpm: 0, color: 'black' as const },
      ],
    },
  };

  it('class the hydrant, and are published with their colors', () => {
    const { snapshot, hydrants } = buildEdition(weakened(), settings, townNow.toISOString());
    expect(snapshot.utility.classes).toEqual(settings.flowTest.classBands);
    expect(hydrants[0]!.tests[0]!.hydrantClass).toBe('A');
  });

  it('a snapshot of before, which names none, reads as the standard ones', () => {
    const { snapshot } = buildEdition(weakened(), townSettings, townNow.toISOString());
    const { classes, ratingResidualPsi, ...utility } = snapshot.utility;
    const read = publicSnapshot.parse({ ...snapshot, utility });
    expect(read.utility).toMatchObject({ classes, ratingResidualPsi });
    expect(classes.map(({ hydrantClass, color }) => `${hydrantClass} ${color}`)).toEqual([
      'AA light-blue',
      'A green',
      'B orange',
      'C red',
    ]);
  });
});
