import { describe, expect, test } from 'vitest';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import { placesInService } from '../../shared/public/mapCells.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import {
  aFlowTest,
  aHydrant,
  anOutage,
  aStatus,
  aStrike,
  inventoryOf,
  townSettings,
} from '../support/town.ts';

const now = '2026-03-04T20:05:00.000Z';

/** Ten-thousandths of a degree north of the first hydrant: each is 36.48 ft (2πR/360 with R = 6 371 008.8 m, IUGG). */
const north = (tenThousandths: number): Partial<Hydrant> => ({ latitudeDeg: 39.2 + tenThousandths / 10_000 });
const FEET_PER_TEN_THOUSANDTH = (2 * Math.PI * 6_371_008.8) / 0.3048 / 360 / 10_000;

const street = [
  aHydrant('A', { place: 'Alder St', ratedFlowGpm: 1200 }),
  aHydrant('B', { ...north(10), ratedFlowGpm: 1600 }),
  aHydrant('C', { ...north(20), ratedFlowGpm: 400 }),
  aHydrant('D', { ...north(35) }),
  aHydrant('E', { ...north(50) }),
];

const given = (more: Partial<PublicSources>, hydrants: readonly Hydrant[] = street): PublicSources => ({
  inventory: inventoryOf(hydrants),
  statuses: [],
  strikes: [],
  flowTests: new Map(),
  ...more,
});
const build = (sources: PublicSources, settings: Partial<UtilitySettings['publishing']> = {}) =>
  buildEdition(sources, { ...townSettings, publishing: { ...townSettings.publishing, ...settings } }, now);
const struck = (hydrantId: string, outageId = 's-1') => ({
  statuses: [aStatus(hydrantId, [anOutage(outageId)])],
  strikes: [aStrike(outageId, { hydrantId })],
});

describe('given a hydrant that was struck', () => {
  const { snapshot, cells } = build(given(struck('A')));

  test('then it is counted among those that should serve, and the page has both its times', () => {
    expect(snapshot.inventory).toMatchObject({ hydrants: 5, outOfService: 1 });
    expect(snapshot.checkedAt).toBe(now);
    // Twenty minutes by the settings of the town.
    expect(snapshot.relyUntil).toBe('2026-03-04T20:25:00.000Z');
    expect([...placesInService(cells)]).toHaveLength(4);
  });

  test('then it is listed with its place, cause and class before the strike', () => {
    expect(snapshot.outOfService).toMatchObject([
      {
        hydrantId: 'A',
        inInventory: true,
        place: 'Alder St',
        outages: [{ outageId: 's-1', cause: 'strike' }],
      },
    ]);
    // 1,200 gpm is class A: NFPA 291 as quoted (second-hand), 1,000 to 1,499 gpm.
    expect(snapshot.outOfService[0]).toMatchObject({ hydrantClass: 'A', ratedFlowGpm: 1200, testedOn: null });
  });

  test('then three neighbours are named however far, and more only within a hose lay of 1,000 ft', () => {
    const nearest = snapshot.outOfService[0]!.nearest;
    expect(nearest.map(({ hydrantId }) => hydrantId)).toEqual(['B', 'C', 'D']);
    const expected = [10, 20, 35].map((steps) => Math.round(steps * FEET_PER_TEN_THOUSANDTH));
    expect(nearest.map(({ distanceFt }) => distanceFt)).toEqual(expected);
    expect(nearest.map(({ bearing }) => bearing)).toEqual(['N', 'N', 'N']);
    // 1,600 gpm is AA, 400 gpm is C; the third has no rating.
    expect(nearest.map(({ hydrantClass }) => hydrantClass)).toEqual(['AA', 'C', null]);
  });
});

describe('given a utility of two towns, 111 km apart', () => {
  // A degree of latitude is 111.2 km, more than any town reaches.
  const other = (index: number) =>
    aHydrant(`Z${index}`, { latitudeDeg: 40.2 + index / 10_000, ratedFlowGpm: null });
  const towns = (inTheOther: number) => [
    ...Array.from({ length: 30 }, (_, index) => aHydrant(`N${index}`, north(index * 2))),
    ...Array.from({ length: inTheOther }, (_, index) => other(index)),
  ];
  const nearestTo = (hydrantId: string, inTheOther: number) =>
    build(given(struck(hydrantId), towns(inTheOther))).snapshot.outOfService[0]!.nearest.map(
      (near) => near.hydrantId,
    );

  test('when one is out in the smaller town, then its neighbours are named', () => {
    expect(nearestTo('Z0', 5)).toEqual(['Z1', 'Z2', 'Z3', 'Z4']);
    expect(nearestTo('N0', 5)).toEqual(['N1', 'N2', 'N3', 'N4', 'N5']);
  });

  test('when so few stand there that it may be a slip in the inventory, then none is', () => {
    expect(nearestTo('Z0', 3)).toEqual([]);
  });
});

describe('given hydrants close together', () => {
  test('when one is out, then five neighbours within a hose lay are named and no sixth', () => {
    const close = Array.from({ length: 9 }, (_, index) => aHydrant(`N${index}`, north(index * 2)));
    const { snapshot } = build(given(struck('N0'), close));
    expect(snapshot.outOfService[0]!.nearest.map(({ hydrantId }) => hydrantId)).toEqual([
      'N1',
      'N2',
      'N3',
      'N4',
      'N5',
    ]);
  });

  test('when the next one is out as well, abandoned or planned, then it is not offered', () => {
    const hydrants = [
      aHydrant('A'),
      aHydrant('B', north(1)),
      aHydrant('C', { ...north(2), service: 'abandoned' }),
      aHydrant('D', { ...north(3), service: 'planned' }),
      aHydrant('E', { ...north(4), private: true }),
    ];
    const { snapshot } = build(
      given(
        {
          statuses: [
            aStatus('A', [anOutage('s-1')]),
            aStatus('B', [anOutage('o-1', { cause: 'main-break' })]),
          ],
        },
        hydrants,
      ),
    );
    expect(snapshot.outOfService.find(({ hydrantId }) => hydrantId === 'A')!.nearest).toMatchObject([
      { hydrantId: 'E', private: true },
    ]);
    // Abandoned and planned hydrants serve nobody and are not counted.
    expect(snapshot.inventory).toMatchObject({ hydrants: 3, outOfService: 2 });
  });
});

describe('given outages of other causes', () => {
  test('then they stand beside strikes, newest first, each hydrant once with all its outages', () => {
    const { snapshot } = build(
      given({
        strikes: [aStrike('s-1', { hydrantId: 'A', stage: 'under-repair' })],
        statuses: [
          aStatus('A', [
            anOutage('s-1', { since: '2026-03-01T00:00:00Z' }),
            anOutage('o-1', { cause: 'main-shut', since: '2026-03-02T00:00:00Z' }),
          ]),
          aStatus('B', [
            anOutage('o-2', { cause: 'frozen', since: '2026-03-03T00:00:00Z', waitingFor: 'weather' }),
          ]),
        ],
      }),
    );
    expect(snapshot.outOfService.map(({ hydrantId }) => hydrantId)).toEqual(['B', 'A']);
    expect(snapshot.outOfService[1]!.outages).toMatchObject([
      { outageId: 's-1', cause: 'strike', stage: 'under-repair' },
      { outageId: 'o-1', cause: 'main-shut', stage: 'other' },
    ]);
    expect(snapshot.outOfService[0]!.outages).toMatchObject([{ stage: 'waiting', waitingFor: 'weather' }]);
    expect(snapshot.inventory).toMatchObject({ outOfService: 2 });
  });

  test('when a cause is not one that the public may be told, then nothing is published', () => {
    const statuses = [aStatus('A', [anOutage('o-1', { cause: 'the driver of the red car' })])];
    expect(() => build(given({ statuses }))).toThrow();
  });
});

describe('given reports that the inventory cannot place', () => {
  test('when no hydrant is named, then it is shown by its position, rounded, with neighbours', () => {
    const strikes = [aStrike('s-1', { position: { latitudeDeg: 39.20001234, longitudeDeg: -98.40001234 } })];
    const { snapshot } = build(given({ strikes }), { positionDecimals: 4 });
    expect(snapshot.outOfService).toMatchObject([
      {
        hydrantId: null,
        inInventory: false,
        place: null,
        position: { latitudeDeg: 39.2, longitudeDeg: -98.4 },
      },
    ]);
    expect(snapshot.outOfService[0]!.nearest[0]).toMatchObject({ hydrantId: 'A' });
    // It is not one of the inventory's, so it does not count among them.
    expect(snapshot.inventory).toMatchObject({ hydrants: 5, outOfService: 0 });
  });

  test('when the number is not in the inventory, then it is listed as reported', () => {
    const { snapshot } = build(given(struck('Z-9')));
    expect(snapshot.outOfService).toMatchObject([
      { hydrantId: 'Z-9', inInventory: false, place: null, nearest: [] },
    ]);
  });

  test('when a strike is in no status at all, then it is listed all the same', () => {
    const { snapshot } = build(given({ strikes: [aStrike('s-1', { hydrantId: 'A' })] }));
    expect(snapshot.outOfService).toMatchObject([{ hydrantId: 'A', outages: [{ outageId: 's-1' }] }]);
    expect(snapshot.inventory).toMatchObject({ outOfService: 1 });
  });

  test('what was typed as a description is nowhere', () => {
    const strikes = [aStrike('s-1', { placeDescription: 'by the house of somebody' })];
    expect(JSON.stringify(build(given({ strikes })))).not.toContain('somebody');
  });
});

describe('given a hydrant that came back without a flow test', () => {
  const deferred = [{ proof: 'flow-test' as const, reason: 'frozen curb', byWorkerId: 'w-77' }];
  const statuses = [
    aStatus('B', [anOutage('s-1', { endedAt: '2026-03-04T18:00:00Z', deferred })]),
    aStatus('A', [anOutage('s-2')]),
  ];

  test('then it is listed as not re-tested, and marked so where it is offered as a neighbour', () => {
    const { snapshot, hydrants } = build(given({ statuses }));
    expect(snapshot.notRetested).toEqual([
      { hydrantId: 'B', place: null, returnedAt: '2026-03-04T18:00:00Z', proofs: ['flow-test'] },
    ]);
    expect(snapshot.outOfService[0]!.nearest[0]).toMatchObject({ hydrantId: 'B', notRetested: true });
    expect(hydrants.find(({ hydrantId }) => hydrantId === 'B')).toMatchObject({ notRetested: ['flow-test'] });
    // Who put it off, and why, stays inside.
    expect(JSON.stringify(snapshot)).not.toMatch(/curb|w-77/);
  });

  test('when a flow test is recorded since, then it is no longer listed', () => {
    const test = aFlowTest('t-1', { residualHydrantId: 'B', testedAt: '2026-03-04T19:00:00Z' });
    expect(build(given({ statuses, flowTests: new Map([['B', [test]]]) })).snapshot.notRetested).toEqual([]);
  });
});

describe('given flow tests', () => {
  // NFPA 291's equations worked by hand: Q = 29.84 × 0.80 × 2.5² × √28 = 789.5 gpm (4.10.1); at 20 psi
  // 789.5 × (86 − 20)^0.54 / (86 − 42)^0.54 = 789.5 × 1.5^0.54 = 789.5 × 1.2447 = 982.7 gpm: class B. Second-hand.
  const old = aFlowTest('t-1', { residualHydrantId: 'A' });
  const tiny = aFlowTest('t-2', {
    residualHydrantId: 'A',
    testedAt: '2026-01-05T03:00:00Z',
    residualPsi: 84,
  });
  const tested = (tests: ReturnType<typeof aFlowTest>[]) =>
    given({ ...struck('A'), flowTests: new Map([['A', tests]]) });

  test('then the last one that rates the hydrant overrides what came with the inventory, dated in its time zone', () => {
    const { snapshot } = build(tested([old]));
    expect(snapshot.outOfService[0]).toMatchObject({
      hydrantClass: 'B',
      ratedFlowGpm: 983,
      testedOn: '2025-05-14',
    });
  });

  test('when a later test has too small a drop, then the older rating stands with its own date', () => {
    const { snapshot } = build(tested([old, tiny]));
    expect(snapshot.outOfService[0]).toMatchObject({ hydrantClass: 'B', testedOn: '2025-05-14' });
  });

  test('when the utility keeps flows to itself, then the class is shown and no figure', () => {
    const { hydrants, snapshot } = build(tested([old]), { showFlow: false });
    expect(snapshot.outOfService[0]).toMatchObject({ hydrantClass: 'B', ratedFlowGpm: null });
    expect(hydrants[0]!.tests).toMatchObject([{ hydrantClass: 'B', readings: null }]);
  });

  test('then the page of the hydrant has the readings, newest first', () => {
    const { hydrants } = build(tested([old, tiny]));
    expect(hydrants[0]!.tests.map(({ testedAt }) => testedAt)).toEqual([
      '2026-01-05T03:00:00Z',
      '2025-05-14T15:00:00Z',
    ]);
    expect(hydrants[0]!.tests[1]!.readings).toMatchObject({
      staticPsi: 86,
      residualPsi: 42,
      ratedFlowGpm: 983,
    });
    expect(hydrants[0]!.tests[1]!.readings!.measuredFlowGpm).toBeCloseTo(789.5, 1);
  });

  test('when flow and pressure were read at one hydrant, then it says so', () => {
    const alone = aFlowTest('t-3', {
      residualHydrantId: 'A',
      flowHydrants: [
        { hydrantId: 'A', outlets: [{ kind: 'hose', diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }] },
      ],
    });
    expect(build(tested([alone])).hydrants[0]!.tests[0]).toMatchObject({ oneHydrant: true });
  });
});

describe('given no inventory', () => {
  test('then the snapshot says so, and what was reported is listed without neighbours', () => {
    const { snapshot, cells } = build({ ...given(struck('A-1')), inventory: null });
    expect(snapshot.inventory).toBeNull();
    expect(cells).toEqual([]);
    expect(snapshot.outOfService).toMatchObject([{ hydrantId: 'A-1', inInventory: false, nearest: [] }]);
  });
});

describe('positions', () => {
  test('are rounded to the setting everywhere they leave', () => {
    const hydrants = [
      aHydrant('A', { latitudeDeg: 39.123456789, longitudeDeg: -98.987654321 }),
      aHydrant('B', { latitudeDeg: 39.123556789, longitudeDeg: -98.987654321 }),
    ];
    const edition = build(given(struck('A'), hydrants), { positionDecimals: 3 });
    const text = JSON.stringify(edition);
    expect(text.match(/"l(?:at|ong)itudeDeg":-?\d+\.\d{4,}/g)).toBeNull();
    expect(edition.snapshot.outOfService[0]!.position).toEqual({
      latitudeDeg: 39.123,
      longitudeDeg: -98.988,
    });
  });
});

describe('given a report that names no hydrant of the inventory', () => {
  // 0.00003° of latitude is 3.3 m (111.2 km a degree, IUGG radius); 0.0001° is 11.1 m, 0.0010° 111 m.
  const reported = (latitudeDeg: number, accuracyM: number | null, hydrantId: string | null = null) =>
    build(
      given({
        statuses: [],
        strikes: [
          aStrike('s-1', {
            hydrantId,
            position: { latitudeDeg, longitudeDeg: street[0]!.longitudeDeg, accuracyM } as never,
          }),
        ],
      }),
    ).snapshot.outOfService[0]!;
  const doubted = ({ nearest }: ReturnType<typeof reported>) =>
    nearest.filter(({ maybeStruck }) => maybeStruck).map(({ hydrantId }) => hydrantId);

  test('then a hydrant within the uncertainty of its place is never offered without saying so', () => {
    expect(doubted(reported(39.20003, null))).toEqual(['A']);
    expect(doubted(reported(39.20014, null))).toEqual([]);
    expect(doubted(reported(39.20014, 20))).toEqual(['A']);
    // An id that the inventory does not have may be a slip: the same.
    expect(doubted(reported(39.20003, 5, 'ZZ-9'))).toEqual(['A']);
  });

  test('then three others are offered beside it, as far as there are any', () => {
    expect(reported(39.20003, null).nearest.map(({ hydrantId }) => hydrantId)).toEqual(['A', 'B', 'C', 'D']);
  });

  test('then at a place that cannot be of this town none is named as the nearest', () => {
    expect(reported(0, null).nearest).toEqual([]);
    // 0.3° is 33 km: far, and possible.
    expect(reported(39.5, null).nearest).toHaveLength(3);
  });

  test('then words that somebody typed for an id are kept from every page', () => {
    const hydrantId = 'PLATE KLM-4411 DRIVER ANN OTHER 555-0199';
    const edition = build(
      given({
        statuses: [aStatus(hydrantId, [anOutage('s-1')])],
        strikes: [aStrike('s-1', { hydrantId })],
      }),
    );
    expect(edition.snapshot.outOfService).toMatchObject([{ hydrantId: null, inInventory: false }]);
    expect(JSON.stringify(edition)).not.toContain('OTHER');
    expect(edition.hydrants).toEqual([]);
    // What looks like an id helps a crew, and stays.
    expect(build(given(struck('TH-0999'))).snapshot.outOfService[0]?.hydrantId).toBe('TH-0999');
  });
});

test('a return that does not count is told by what holds it, without naming valves or people', () => {
  const held = (...holds: readonly object[]) =>
    build(
      given({
        ...struck('A'),
        statuses: [
          aStatus('A', [
            anOutage('s-1', {
              heldReturns: [
                { returnId: 'r', returnedAt: now, takesEffect: false, holds: holds as never, deferred: [] },
              ],
            }),
          ]),
        ],
      }),
    ).snapshot.outOfService[0]?.outages[0];
  expect(held({ code: 'valve-still-closed', valveId: 'V-77' })?.heldBy).toEqual(['valve']);
  expect(
    held({ code: 'proof-missing', proof: 'flow-test' }, { code: 'valve-still-closed', valveId: 'V' })?.heldBy,
  ).toEqual(['valve', 'test']);
  expect(build(given(struck('A'))).snapshot.outOfService[0]?.outages[0]).not.toHaveProperty('heldBy');
});

describe('given a hydrant that its own inventory calls inactive', () => {
  test('then it is neither offered as the nearest nor drawn as in service', () => {
    const inactive = street.map((hydrant) =>
      hydrant.hydrantId === 'B' ? { ...hydrant, service: 'inactive' as const } : hydrant,
    );
    const { snapshot, cells } = build(given(struck('A'), inactive));
    expect(snapshot.outOfService[0]!.nearest.map(({ hydrantId }) => hydrantId)).toEqual(['C', 'D', 'E']);
    expect(cells.flatMap(({ inService }) => inService.hydrantId)).toEqual(['C', 'D', 'E']);
  });
});
