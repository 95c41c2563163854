import { hydrant, type Hydrant } from '../../shared/inventory/hydrant.ts';
import type { HydrantStatus, Outage } from '../../shared/outages/hydrantStatus.ts';
import { nearestIndex } from '../../shared/nearest/nearest.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { FlowTestFact } from '../../shared/public/ratings.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';

/** Alder Reach: an invented town of 412 hydrants on a bent grid of streets, for tests of the public pages. */

export const townSettings: UtilitySettings = {
  name: 'Alder Reach Water',
  timeZone: 'America/Chicago',
  locale: 'en',
  units: 'us',
  emergencyPhone: '555-0142',
  dispatch: { name: 'Alder County Fire Dispatch', phone: '555-0199' },
  letterhead: {
    addressLines: ['1 Works Road', 'Alder Reach'],
    email: null,
    phone: '555-0140',
    remitTo: ['Alder Reach Water', '1 Works Road'],
  },
  people: [],
  publishing: {
    everyMinutes: 5,
    relyForMinutes: 20,
    positionDecimals: 5,
    showFlow: true,
    license: { name: 'CC0 1.0', url: 'https://creativecommons.org/publicdomain/zero/1.0/' },
  },
  publicUrl: null,
};

const across = [
  'First',
  'Second',
  'Third',
  'Fourth',
  'Fifth',
  'Sixth',
  'Seventh',
  'Eighth',
  'Ninth',
  'Tenth',
];
const along = [
  'Alder',
  'Birch',
  'Cedar',
  'Dogwood',
  'Elm',
  'Fir',
  'Hazel',
  'Juniper',
  'Larch',
  'Maple',
  'Oak',
];

/** A fixed stream of numbers from 0 to 1, so that the town is the same every time. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return state / 4_294_967_296;
  };
}

export function aHydrant(hydrantId: string, more: Partial<Hydrant> = {}): Hydrant {
  return hydrant.parse({
    hydrantId,
    latitudeDeg: 39.2,
    longitudeDeg: -98.4,
    place: null,
    type: 'dry-barrel',
    service: 'active',
    modelId: null,
    installedOn: null,
    outlets: [],
    mainSizeIn: null,
    lateralSizeIn: null,
    lateralLengthFt: null,
    buryDepthFt: null,
    isolationValveId: null,
    owner: null,
    private: null,
    lastInspectedOn: null,
    ratedFlowGpm: null,
    source: { file: 'town.csv', row: 1 },
    ...more,
  });
}

export function townHydrants(count = 412): Hydrant[] {
  const next = numbers(7);
  const columns = Math.ceil(Math.sqrt(count * 1.5));
  return Array.from({ length: count }, (_, index) => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    // The river bends the town; blocks of about 400 ft.
    const bend = Math.sin(column / 4) * 0.0012;
    const flow = next();
    return aHydrant(`H-${String(index + 1).padStart(4, '0')}`, {
      latitudeDeg: 39.2 + row * 0.00115 + bend + (next() - 0.5) * 0.0003,
      longitudeDeg: -98.4 + column * 0.00142 + (next() - 0.5) * 0.0003,
      place: `${along[row % along.length] ?? ''} St at ${across[column % across.length] ?? ''} Ave`,
      ratedFlowGpm: flow < 0.15 ? null : Math.round(300 + flow * 1700),
      source: { file: 'town.csv', row: index + 2 },
    });
  });
}

export const inventoryOf = (hydrants: readonly Hydrant[]): NonNullable<PublicSources['inventory']> => ({
  hydrants,
  loadedAt: '2026-02-01T12:00:00.000Z',
  sha256: 'ab'.repeat(32),
  index: nearestIndex(hydrants),
});

export function anOutage(outageId: string, more: Partial<Outage> = {}): Outage {
  return {
    outageId,
    cause: 'strike',
    since: '2026-03-04T12:00:00Z',
    expectedAt: null,
    waitingFor: null,
    endedAt: null,
    heldReturns: [],
    deferred: [],
    dispatchToldAt: null,
    ...more,
  };
}

export function aStatus(
  hydrantId: string,
  outages: readonly Outage[],
  more: Partial<HydrantStatus> = {},
): HydrantStatus {
  const open = outages.filter(({ endedAt }) => endedAt === null);
  return {
    hydrantId,
    inService: open.length === 0,
    open,
    past: outages.filter(({ endedAt }) => endedAt !== null),
    lastInspectedAt: null,
    flowTestIds: [],
    planned: [],
    ...more,
  };
}

export function aStrike(strikeId: string, more: Partial<StrikeState> = {}): StrikeState {
  return {
    strikeId,
    memberIds: [strikeId],
    reported: true,
    hydrantId: null,
    hydrantIds: [],
    position: null,
    placeDescription: null,
    stage: 'reported',
    since: '2026-03-04T12:00:00Z',
    struckAt: null,
    arrivedAt: null,
    waterShutAt: null,
    markedOutOfServiceAt: null,
    dispatchToldAt: null,
    expectedAt: null,
    waitingFor: null,
    repairedAt: null,
    returns: [],
    returnedAt: null,
    deferred: [],
    breaches: [],
    exhibits: [],
    partyIds: [],
    flowTestIds: [],
    submissionIds: [strikeId],
    lastRecordedAt: '2026-03-04T12:05:00Z',
    ...more,
  };
}

export function aFlowTest(submissionId: string, body: Partial<FlowTestFact['body']> = {}): FlowTestFact {
  return {
    submissionId,
    body: {
      residualHydrantId: 'H-0001',
      testedAt: '2025-05-14T15:00:00Z',
      staticPsi: 86,
      residualPsi: 42,
      flowHydrants: [
        {
          hydrantId: 'H-0002',
          outlets: [{ kind: 'hose', diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
        },
      ],
      measuredFlowGpm: null,
      targetResidualPsi: 20,
      gauges: [],
      flowedMinutes: 5,
      testedByWorkerIds: ['w-1'],
      purpose: 'routine',
      photos: [],
      note: null,
      ...body,
    },
  };
}

/** The town on a winter afternoon: struck, struck twice, waiting, repaired, main broken, back without a flow test. */
export function townSources(hydrants: readonly Hydrant[] = townHydrants()): PublicSources {
  const id = (index: number): string => hydrants[index]?.hydrantId ?? 'none';
  const strikes = [
    aStrike('s-1', { hydrantId: id(130), stage: 'reported', since: '2026-03-04T18:40:00Z' }),
    aStrike('s-2', {
      hydrantId: id(57),
      stage: 'waiting',
      waitingFor: 'kit',
      since: '2026-03-02T04:12:00Z',
      expectedAt: '2026-03-06T22:00:00Z',
    }),
    aStrike('s-3', {
      hydrantId: id(222),
      stage: 'under-repair',
      since: '2026-03-03T23:30:00Z',
      expectedAt: '2026-03-04T18:00:00Z',
    }),
    aStrike('s-4', { hydrantId: id(340), stage: 'repaired', since: '2026-02-27T14:05:00Z' }),
    aStrike('s-5', {
      hydrantId: null,
      position: { latitudeDeg: 39.2081234, longitudeDeg: -98.3914321 },
      since: '2026-03-04T16:20:00Z',
    }),
  ];
  const open = (strike: StrikeState | undefined, more: Partial<Outage> = {}): Outage =>
    anOutage(strike?.strikeId ?? '', {
      since: strike?.since ?? '',
      expectedAt: strike?.expectedAt ?? null,
      waitingFor: strike?.waitingFor ?? null,
      ...more,
    });
  const statuses = [
    aStatus(id(130), [
      open(strikes[0]),
      anOutage('p-1', { since: '2024-11-02T05:00:00Z', endedAt: '2024-11-09T20:30:00Z' }),
    ]),
    aStatus(id(57), [open(strikes[1])], { flowTestIds: ['t-0', 't-1'] }),
    aStatus(id(222), [
      open(strikes[2]),
      anOutage('o-2', { cause: 'main-shut', since: '2026-03-04T09:00:00Z' }),
    ]),
    aStatus(id(340), [open(strikes[3])]),
    aStatus(id(131), [anOutage('o-1', { cause: 'main-break', since: '2026-03-04T17:05:00Z' })]),
    aStatus(id(58), [
      anOutage('s-9', {
        since: '2026-02-20T03:00:00Z',
        endedAt: '2026-02-25T21:00:00Z',
        deferred: [{ proof: 'flow-test', reason: 'ice in the street', byWorkerId: 'w-4' }],
      }),
    ]),
  ];
  const outlet = { kind: 'hose', diameterIn: 2.5, coefficient: 0.8 } as const;
  const flowTests = new Map([
    [
      id(57),
      [
        aFlowTest('t-1', { residualHydrantId: id(57) }),
        // Four years before it gave a fifth more.
        aFlowTest('t-0', {
          residualHydrantId: id(57),
          testedAt: '2021-05-11T15:00:00Z',
          flowHydrants: [{ hydrantId: 'H-0002', outlets: [{ ...outlet, pitotPsi: 40 }] }],
        }),
      ],
    ],
  ]);
  return { inventory: inventoryOf(hydrants), statuses, strikes, flowTests };
}

/** The instant at which the tests look at the town: 14:05 in its own time zone. */
export const townNow = new Date('2026-03-04T20:05:00.000Z');
