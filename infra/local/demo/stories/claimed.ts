import {
  allPassed,
  bareStrike,
  breakawaySteps,
  cleanBreak,
  flowTestOf,
  gushing,
  ordinaryRepair,
  returned,
  told,
} from '../bodies.ts';
import { declared } from '../photos.ts';
import type { Teller } from '../teller.ts';
import { lostBy, noneLost, testPoint } from '../waterLost.ts';
import { hydrantSubject, strikeSubject } from './subjects.ts';

/** A strike that is over and can be claimed for. */
export interface ClaimedStrike {
  readonly strikeId: string;
  readonly partyId: string;
  readonly claimId: string;
}

/** From the call to the return, with a known driver and insurer. */
export function closedWithParty(
  t: Teller,
  job: {
    readonly hydrantId: string;
    readonly neighbour: string;
    readonly hours: number;
    readonly photos: 'sailmaker' | 'quince';
    readonly payer: string;
    /** Then no water was lost. */
    readonly mainValveHeld: boolean;
  },
): ClaimedStrike {
  const h = job.hours;
  const strikeId = t.id(h);
  const subject = strikeSubject(strikeId);
  t.tell(
    'inspection',
    hydrantSubject(job.hydrantId),
    h + 1700,
    {
      inspectedAt: t.hoursAgo(h + 1700),
      byWorkerId: 'w-102',
      result: 'sound',
      findings: [],
      photos: [],
      note: null,
    },
    { personId: 'w-102' },
  );
  const before = flowTestOf(t, {
    rated: job.hydrantId,
    flowed: job.neighbour,
    hoursAgo: h + 1699,
    staticPsi: 74,
    residualPsi: 48,
    pitotPsi: 26,
    purpose: 'routine',
  });
  t.tell('flow-test', hydrantSubject(job.hydrantId), h + 1699, before);
  t.tell('strike', subject, h, {
    ...bareStrike,
    hydrantId: job.hydrantId,
    reportedBy: {
      source: 'police',
      name: 'Sgt. Delphine Arrowood',
      phone: '555-0144',
      reportedAt: t.hoursAgo(h + 0.5),
    },
    struckAt: t.hoursAgo(h + 0.6),
    struckAtBasis: 'witnessed',
    calledOutAt: t.hoursAgo(h + 0.45),
    arrivedAt: t.hoursAgo(h),
    dispatch: told(t.hoursAgo(h - 0.1)),
    found: job.mainValveHeld ? cleanBreak : gushing,
    hazards: ['traffic'],
    photos: [
      declared(`${job.photos}-overall`, t.hoursAgo(h - 0.05), 'Hydrant and vehicle path from the curb'),
      declared(`${job.photos}-mid`, t.hoursAgo(h - 0.06), 'Parted breakaway flange'),
      declared(`${job.photos}-scale`, t.hoursAgo(h - 0.07), 'Stem coupling with rule'),
    ],
  });
  t.tell('valve-operation', subject, h - 0.2, {
    valveId: job.hydrantId.replace('TH', 'V'),
    valve: 'isolation',
    action: 'closed',
    at: t.hoursAgo(h - 0.2),
    byWorkerId: 'w-102',
    waterShut: 'yes',
    turns: 14,
    note: null,
  });
  t.tell(
    'water-lost',
    subject,
    h - 0.24,
    job.mainValveHeld
      ? noneLost()
      : lostBy(
          gushing,
          {
            struckAt: t.hoursAgo(h + 0.6),
            struckAtBasis: 'witnessed',
            waterShutAt: t.hoursAgo(h - 0.2),
          },
          { flowTest: testPoint(before) },
        ),
  );
  t.tell('out-of-service-notice', subject, h - 0.25, {
    markedOutOfServiceAt: t.hoursAgo(h - 0.22),
    dispatch: null,
    note: null,
  });
  const partyId = t.tell('party', subject, h - 0.4, {
    hitAndRun: 'no',
    vehicles: [
      {
        kind: 'car',
        plate: job.photos === 'quince' ? 'TNS 7290' : 'TNS 1185',
        plateRegion: 'Tansy',
        vin: null,
        description: 'Gray sedan, right front',
      },
    ],
    driver: {
      name: job.photos === 'quince' ? 'Marguerite Oyelaran-Fitch' : 'Leopold Varga-Quill',
      address: '9 Thimble Ave, Tansy Harbor',
      phone: '555-0190',
    },
    owner: null,
    insurer: {
      company: job.payer,
      policyNumber: job.photos === 'quince' ? 'LM-118-70233' : 'HC-4402-881',
      claimNumber: null,
      adjuster: null,
    },
    police: {
      agency: 'Tansy Harbor Police',
      reportNumber: job.photos === 'quince' ? 'TP-26-3254' : 'TP-26-3012',
      officer: 'D. Arrowood',
    },
    crashReport: { codeSystem: 'MMUCC 5th ed., C7', code: '40', text: 'Fire hydrant' },
    note: null,
  });
  const repairId = t.tell(
    'repair',
    subject,
    h - 6,
    ordinaryRepair(t, {
      hydrantId: job.hydrantId,
      from: h - 2.5,
      to: h - 6,
      crew: ['w-101', 'w-102'],
      kit: 'BW-D51-BK',
      photos: [
        declared(`${job.photos}-repaired`, t.hoursAgo(h - 6), 'Rebuilt, breakaway plane above the ground'),
      ],
      done: breakawaySteps,
      finished: true,
    }),
  );
  t.tell(
    'flow-test',
    subject,
    h - 6.5,
    flowTestOf(t, {
      rated: job.hydrantId,
      flowed: job.neighbour,
      hoursAgo: h - 6.5,
      staticPsi: 74,
      residualPsi: 47,
      pitotPsi: 25,
      purpose: 'after-repair',
    }),
  );
  t.tell(
    'return-to-service',
    subject,
    h - 7,
    returned(t, {
      closes: [strikeId],
      hoursAgo: h - 7,
      proofs: allPassed,
      valve: job.hydrantId.replace('TH', 'V'),
    }),
  );
  // The office found that two bags of concrete had been left off the slip.
  const repair = t.told.find(({ submission }) => submission.submissionId === repairId)?.submission
    .body as ReturnType<typeof ordinaryRepair>;
  t.correct(repairId, 'repair', subject, h - 30, 'Two bags of concrete on slip were not typed in', {
    ...repair,
    parts: [
      ...repair.parts,
      {
        partNumber: 'CONC-60',
        description: 'Concrete, 60 lb bag',
        quantity: 2,
        source: { from: 'stock', issueSlip: `S-${job.hydrantId.slice(-4)}` },
      },
    ],
  });
  return { strikeId, partyId, claimId: t.id(h - 48) };
}
