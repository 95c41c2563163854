import type { Exhibit } from '../../../shared/submissions/fields.ts';
import type { BodyOf } from '../../../shared/submissions/submission.ts';
import type { Proof } from '../../../shared/outages/proofs.ts';
import { procedureFor } from '../../../shared/procedure/procedureFor.ts';
import { recordedElsewhere, type ProcedureStep } from '../../../shared/procedure/steps.ts';
import type { Teller } from './teller.ts';

type Strike = BodyOf<'strike'>;
type Tightened = NonNullable<BodyOf<'repair'>['tightened']>[number];
type Found = NonNullable<Strike['found']>;

/** What a crew finds at a cleanly parted breakaway hydrant whose main valve held. */
export const cleanBreak: Found = {
  flow: 'none',
  jetHeightIn: null,
  throwDistanceIn: null,
  openingDiameterIn: null,
  breakawayFlangeParted: 'yes',
  stemCouplingParted: 'yes',
  nozzleSection: 'sound',
  lowerBarrel: 'sound',
  belowGrade: 'no-sign',
  isolationValve: 'not-tried',
  mainValve: 'holds',
};

export const gushing: Found = {
  ...cleanBreak,
  flow: 'full-bore',
  mainValve: 'does-not-hold',
  isolationValve: 'holds',
  jetHeightIn: 66,
  openingDiameterIn: 5,
};

/** A strike report with nothing said; spread what is known over it. */
export const bareStrike: Strike = {
  hydrantId: null,
  position: null,
  placeDescription: null,
  reportedBy: { source: 'unknown', name: null, phone: null, reportedAt: null },
  struckAt: null,
  struckAtBasis: 'unknown',
  lastSeenSoundAt: null,
  calledOutAt: null,
  arrivedAt: null,
  waterShutAt: null,
  markedOutOfServiceAt: null,
  dispatch: null,
  found: null,
  hazards: [],
  hazardNote: null,
  photos: [],
  note: null,
};

export const told = (
  at: string,
  toldByWorkerId = 'w-101',
  takenBy: string | null = 'Dispatcher Halloran-Ibe',
): NonNullable<Strike['dispatch']> => ({ at, toldByWorkerId, takenBy });

/** What a crew ticks of an ordinary breakaway repair of a dry barrel. */
export const breakawaySteps: readonly ProcedureStep[] = procedureFor('dry-barrel', 'breakaway')
  .filter(({ step, ifNeeded }) => !ifNeeded && recordedElsewhere[step] === undefined)
  .map(({ step }) => step);

/** The steps of a breakaway repair spread evenly over the given hours. */
export function steps(
  teller: Teller,
  fromHoursAgo: number,
  toHoursAgo: number,
  byWorkerId: string,
  done: readonly ProcedureStep[],
): BodyOf<'repair'>['steps'] {
  return done.map((step, index) => ({
    step,
    doneAt: teller.hoursAgo(fromHoursAgo - ((fromHoursAgo - toHoursAgo) * (index + 1)) / (done.length + 1)),
    byWorkerId,
    note: null,
  }));
}

/** The joints of the invented D-51 as its invented manual has them, closed within the last part of the work. */
function tightenedD51(
  teller: Teller,
  fromHoursAgo: number,
  toHoursAgo: number,
  byWorkerId: string,
): NonNullable<BodyOf<'repair'>['tightened']> {
  const manual = 'Brindlewater D-51 field manual, invented';
  const late = (share: number): string => teller.hoursAgo(fromHoursAgo - (fromHoursAgo - toHoursAgo) * share);
  const bolts = {
    kind: 'bolts',
    manual,
    passes: ['30', '60', '100', 'round'],
    wrenchId: 'TW-3',
    wrenchCalibratedOn: '2026-02-19',
    byWorkerId,
  } satisfies Partial<Tightened>;
  return [
    { ...bolts, joint: 'Breakaway flange', bolts: 8, torqueLbfFt: 72, page: '18', doneAt: late(0.55) },
    {
      kind: 'back-off',
      joint: 'Thrust nut',
      manual,
      page: '20',
      turns: 0.25,
      lockLinedUp: true,
      doneAt: late(0.6),
      byWorkerId,
    },
    { ...bolts, joint: 'Bonnet', bolts: 6, torqueLbfFt: 60, page: '21', doneAt: late(0.64) },
  ];
}

/** A crew of two with a truck and the kit of the model: the ordinary breakaway repair. */
export function ordinaryRepair(
  teller: Teller,
  job: {
    readonly hydrantId: string;
    readonly from: number;
    readonly to: number;
    readonly crew: readonly [string, string];
    readonly kit: string;
    readonly photos?: Exhibit[];
    readonly done: readonly ProcedureStep[];
    readonly finished: boolean;
  },
): BodyOf<'repair'> {
  const work = { from: teller.hoursAgo(job.from), to: teller.hoursAgo(job.to) };
  const middle = (job.from + job.to) / 2;
  const done = steps(teller, job.from, job.to, job.crew[0], job.done);
  const closedUp = done.find(({ step }) => step === 'top-closed')?.doneAt ?? teller.hoursAgo(job.to + 0.2);
  return {
    hydrantId: job.hydrantId,
    damage: 'breakaway-kit',
    crew: [
      { workerId: job.crew[0], laborClass: 'crew-lead', work: [work], breaks: [] },
      {
        workerId: job.crew[1],
        laborClass: 'utility-worker',
        work: [work],
        breaks: [{ from: teller.hoursAgo(middle), to: teller.hoursAgo(middle - 0.25) }],
      },
    ],
    machines: [
      {
        machineCode: 'TRK-1',
        description: 'Service truck, 1 ton',
        operatorWorkerId: job.crew[0],
        inUse: [work],
        standingBy: [],
        drivenMiles: null,
      },
      {
        machineCode: 'ARW-1',
        description: 'Arrow board trailer',
        operatorWorkerId: null,
        inUse: [work],
        standingBy: [],
        drivenMiles: null,
      },
    ],
    parts: [
      {
        partNumber: job.kit,
        description: 'Breakaway repair kit',
        quantity: 1,
        source: { from: 'stock', issueSlip: `S-${job.hydrantId.slice(-4)}`, location: 'Truck 1' },
      },
      {
        partNumber: 'BW-GSK',
        description: 'Nozzle section gasket set',
        quantity: 1,
        source: { from: 'stock', issueSlip: `S-${job.hydrantId.slice(-4)}`, location: 'Truck 1' },
      },
      {
        partNumber: 'GRS-FG',
        description: 'Food-grade grease, 14 oz',
        quantity: 1,
        source: { from: 'stock', issueSlip: null },
      },
    ],
    contractors: [],
    steps: done,
    ...(job.finished ? { hiddenDamage: ['nothing'], needsDig: false } : {}),
    ...(job.finished && job.kit.startsWith('BW-D51')
      ? { tightened: tightenedD51(teller, job.from, job.to, job.crew[0]) }
      : {}),
    reassembledAt: job.finished ? closedUp : null,
    completedAt: job.finished ? teller.hoursAgo(job.to) : null,
    photos: job.photos ?? [],
    note: null,
  };
}

/** A two-hydrant test: static and residual at the rated one, pitot at a neighbour. */
export function flowTestOf(
  teller: Teller,
  test: {
    readonly rated: string;
    readonly flowed: string;
    readonly hoursAgo: number;
    readonly staticPsi: number;
    readonly residualPsi: number;
    readonly pitotPsi: number;
    readonly purpose: BodyOf<'flow-test'>['purpose'];
  },
): BodyOf<'flow-test'> {
  return {
    residualHydrantId: test.rated,
    testedAt: teller.hoursAgo(test.hoursAgo),
    staticPsi: test.staticPsi,
    residualPsi: test.residualPsi,
    flowHydrants: [
      {
        hydrantId: test.flowed,
        outlets: [{ kind: 'hose', diameterIn: 2.5, coefficient: 0.9, pitotPsi: test.pitotPsi }],
      },
    ],
    measuredFlowGpm: null,
    targetResidualPsi: 20,
    gauges: [{ gaugeId: 'G-07', rangePsi: 200, calibratedOn: '2026-02-11' }],
    flowedMinutes: 4,
    testedByWorkerIds: ['w-101', 'w-102'],
    purpose: test.purpose,
    photos: [],
    note: null,
  };
}

/** Every proof of a dry barrel that is back as it was. */
export const allPassed = {
  'no-leaks': 'passed',
  'opens-and-closes-fully': 'passed',
  'drains-down': 'passed',
  'flow-test': 'passed',
} as const;

/** A return to service with the given results; the times follow the return. */
export function returned(
  teller: Teller,
  back: {
    readonly closes: readonly string[];
    readonly hoursAgo: number;
    readonly proofs: Partial<Record<Proof, 'passed' | 'failed' | 'deferred'>>;
    readonly valve: string | null;
    readonly deferredReason?: string;
    readonly photos?: Exhibit[];
  },
): BodyOf<'return-to-service'> {
  const at = teller.hoursAgo(back.hoursAgo + 0.05);
  return {
    returnedAt: teller.hoursAgo(back.hoursAgo),
    closes: [...back.closes],
    proofs: (Object.entries(back.proofs) as [Proof, 'passed' | 'failed' | 'deferred'][]).map(
      ([proof, result]) => ({
        proof,
        result,
        at,
        byWorkerId: 'w-101',
        deferredReason: result === 'deferred' ? (back.deferredReason ?? 'Put off') : null,
        deferredByWorkerId: result === 'deferred' ? 'm-401' : null,
      }),
    ),
    valvesReopened: back.valve === null ? [] : [{ valveId: back.valve, at, byWorkerId: 'w-102' }],
    markRemovedAt: teller.hoursAgo(back.hoursAgo),
    dispatch: told(teller.hoursAgo(back.hoursAgo - 0.03)),
    photos: back.photos ?? [],
    note: null,
  };
}
