import { procedureSteps } from '../../../shared/strikes/procedure.ts';
import type { Subject } from '../../../shared/submissions/envelope.ts';
import { bareStrike, cleanBreak, flowTestOf, gushing, ordinaryRepair, returned, told } from './bodies.ts';
import { declared } from './photos.ts';
import type { Teller } from './teller.ts';

/** Ids that the demo's ending needs: the closed strike whose packet is frozen and sent. */
export interface Told {
  readonly billed: { readonly strikeId: string; readonly partyId: string; readonly claimId: string };
  readonly open: { readonly strikeId: string; readonly partyId: string; readonly claimId: string };
}

const strikeSubject = (strikeId: string): Subject => ({ type: 'strike', strikeId });
const hydrantSubject = (hydrantId: string): Subject => ({ type: 'hydrant', hydrantId });

/** Strikes that are still open: reported, unknown to the inventory, shut off, waiting, under repair, held. */
export function openStrikes(t: Teller): void {
  // Reported minutes ago by one crew: water at full bore, dispatch told, nothing shut yet.
  const fresh = t.id(0.4);
  t.tell('strike', strikeSubject(fresh), 0.4, {
    ...bareStrike,
    hydrantId: 'TH-0117',
    reportedBy: {
      source: 'police',
      name: 'Sgt. Delphine Arrowood',
      phone: '555-0144',
      reportedAt: t.hoursAgo(0.7),
    },
    struckAt: t.hoursAgo(0.75),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(0.42),
    dispatch: told(t.hoursAgo(0.38)),
    found: gushing,
    hazards: ['traffic', 'flooding'],
  });

  // A hydrant that is not in the inventory: shown by its position.
  const unknown = t.id(3.1);
  t.tell(
    'strike',
    strikeSubject(unknown),
    3.1,
    {
      ...bareStrike,
      position: { latitudeDeg: 40.62105, longitudeDeg: -60.40395, accuracyM: 12 },
      placeDescription: 'Green hydrant behind the cannery gate, no number on it',
      reportedBy: {
        source: 'public',
        name: 'Wendeline Prosser',
        phone: '555-0162',
        reportedAt: t.hoursAgo(3.4),
      },
      struckAtBasis: 'unknown',
      arrivedAt: t.hoursAgo(3.1),
      dispatch: told(t.hoursAgo(3.0), 'w-201'),
      found: { ...cleanBreak, stemCouplingParted: 'unknown' },
      hazards: ['traffic'],
    },
    { personId: 'w-201' },
  );

  // Shut off, marked, dispatch told: nobody has judged the damage yet.
  const shut = t.id(9.5);
  t.tell('strike', strikeSubject(shut), 9.5, {
    ...bareStrike,
    hydrantId: 'TH-0203',
    reportedBy: { source: 'fire', name: null, phone: null, reportedAt: t.hoursAgo(9.9) },
    struckAt: t.hoursAgo(10),
    struckAtBasis: 'witnessed',
    arrivedAt: t.hoursAgo(9.6),
    found: gushing,
    hazards: ['traffic', 'ice'],
    photos: [declared('gullpoint-overall', t.hoursAgo(9.55), 'From the kerb, water shut')],
  });
  t.tell('valve-operation', strikeSubject(shut), 9.3, {
    valveId: 'V-0203',
    valve: 'isolation',
    action: 'closed',
    at: t.hoursAgo(9.3),
    byWorkerId: 'w-102',
    waterShut: 'yes',
    turns: 14,
    note: null,
  });
  t.tell('out-of-service-notice', strikeSubject(shut), 9.2, {
    markedOutOfServiceAt: t.hoursAgo(9.25),
    dispatch: told(t.hoursAgo(9.2)),
    note: null,
  });
  t.tell('party', strikeSubject(shut), 9, {
    hitAndRun: 'no',
    vehicles: [
      {
        kind: 'light-truck',
        plate: 'TNS 4471',
        plateRegion: 'Tansy',
        vin: null,
        description: 'White pickup, front bumper torn',
      },
    ],
    driver: { name: 'Barnaby Stroud-Ilić', address: null, phone: '555-0171' },
    owner: null,
    insurer: {
      company: 'Lanternfish Mutual',
      policyNumber: 'LM-559-20418',
      claimNumber: null,
      adjuster: null,
    },
    police: { agency: 'Tansy Harbor Police', reportNumber: 'TP-26-3310', officer: 'D. Arrowood' },
    crashReport: { codeSystem: 'MMUCC 5th ed., C7', code: '40', text: 'Fire hydrant' },
    note: null,
  });

  // Waiting for a kit: none of this model on the shelf.
  const kit = t.id(52);
  t.tell(
    'strike',
    strikeSubject(kit),
    52,
    {
      ...bareStrike,
      hydrantId: 'TH-0288',
      reportedBy: { source: 'crew', name: null, phone: null, reportedAt: t.hoursAgo(52.3) },
      struckAtBasis: 'bounded',
      lastSeenSoundAt: t.hoursAgo(70),
      arrivedAt: t.hoursAgo(52),
      waterShutAt: t.hoursAgo(51.8),
      markedOutOfServiceAt: t.hoursAgo(51.7),
      dispatch: told(t.hoursAgo(51.7), 'w-201'),
      found: cleanBreak,
    },
    { personId: 'w-201' },
  );
  t.tell(
    'valve-operation',
    strikeSubject(kit),
    51.8,
    {
      valveId: 'V-0288',
      valve: 'isolation',
      action: 'closed',
      at: t.hoursAgo(51.8),
      byWorkerId: 'w-202',
      waterShut: 'yes',
      turns: 13,
      note: null,
    },
    { personId: 'w-202' },
  );
  t.tell('expected-return', strikeSubject(kit), 50, {
    outageId: null,
    expectedAt: t.hoursAgo(-44),
    waitingFor: 'kit',
    note: 'Kit for the D-45 is on order',
  });

  // Waiting for the utility locate: the ground is wet round the barrel, so it is a dig.
  const dig = t.id(30);
  t.tell('strike', strikeSubject(dig), 30, {
    ...bareStrike,
    hydrantId: 'TH-0331',
    reportedBy: { source: 'public', name: null, phone: null, reportedAt: t.hoursAgo(30.5) },
    struckAt: t.hoursAgo(30.6),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(30),
    waterShutAt: t.hoursAgo(29.4),
    markedOutOfServiceAt: t.hoursAgo(29.3),
    dispatch: told(t.hoursAgo(29.3)),
    found: { ...gushing, belowGrade: 'found', lowerBarrel: 'damaged' },
    hazards: ['undermined-ground'],
  });
  t.tell('expected-return', strikeSubject(dig), 28, {
    outageId: null,
    expectedAt: t.hoursAgo(-70),
    waitingFor: 'utility-locate',
    note: null,
  });

  // Under repair now.
  const under = t.id(6);
  t.tell('strike', strikeSubject(under), 6, {
    ...bareStrike,
    hydrantId: 'TH-0042',
    reportedBy: { source: 'police', name: null, phone: null, reportedAt: t.hoursAgo(6.4) },
    struckAt: t.hoursAgo(6.5),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(6),
    waterShutAt: t.hoursAgo(5.8),
    markedOutOfServiceAt: t.hoursAgo(5.7),
    dispatch: told(t.hoursAgo(5.7)),
    found: cleanBreak,
    hazards: ['traffic'],
  });
  t.tell(
    'repair',
    strikeSubject(under),
    1,
    ordinaryRepair(t, {
      hydrantId: 'TH-0042',
      from: 2.5,
      to: 1,
      crew: ['w-101', 'w-102'],
      kit: 'BW-D51-BK',
      done: procedureSteps.slice(0, 7),
      finished: false,
    }),
  );

  // Repaired, and returned on paper; the valve is not recorded reopened, so it does not count.
  const held = t.id(27);
  t.tell('strike', strikeSubject(held), 27, {
    ...bareStrike,
    hydrantId: 'TH-0160',
    reportedBy: {
      source: 'driver',
      name: 'Hollis Undergrove',
      phone: '555-0155',
      reportedAt: t.hoursAgo(27.2),
    },
    struckAt: t.hoursAgo(27.3),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(26.8),
    waterShutAt: t.hoursAgo(26.5),
    markedOutOfServiceAt: t.hoursAgo(26.4),
    dispatch: told(t.hoursAgo(26.4)),
    found: cleanBreak,
  });
  t.tell('valve-operation', strikeSubject(held), 26.5, {
    valveId: 'V-0160',
    valve: 'isolation',
    action: 'closed',
    at: t.hoursAgo(26.5),
    byWorkerId: 'w-102',
    waterShut: 'yes',
    turns: 14,
    note: null,
  });
  t.tell(
    'repair',
    strikeSubject(held),
    21,
    ordinaryRepair(t, {
      hydrantId: 'TH-0160',
      from: 24,
      to: 21,
      crew: ['w-101', 'w-102'],
      kit: 'BW-D51-BK',
      done: procedureSteps,
      finished: true,
    }),
  );
  t.tell(
    'flow-test',
    strikeSubject(held),
    20.5,
    flowTestOf(t, {
      rated: 'TH-0160',
      flowed: 'TH-0161',
      hoursAgo: 20.5,
      staticPsi: 68,
      residualPsi: 46,
      pitotPsi: 22,
      purpose: 'after-repair',
    }),
  );
  t.tell(
    'return-to-service',
    strikeSubject(held),
    20,
    returned(t, {
      closes: [held],
      hoursAgo: 20,
      proofs: {
        'no-leaks': 'passed',
        'opens-and-closes-fully': 'passed',
        'drains-down': 'passed',
        'flow-test': 'passed',
      },
      valve: null,
    }),
  );

  // Two crews reported the same strike; the office joined the reports.
  const first = t.id(15);
  const second = t.id(14.6);
  t.tell('strike', strikeSubject(first), 15, {
    ...bareStrike,
    hydrantId: 'TH-0251',
    reportedBy: { source: 'police', name: null, phone: null, reportedAt: t.hoursAgo(15.2) },
    struckAt: t.hoursAgo(15.3),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(15),
    dispatch: told(t.hoursAgo(14.9)),
    found: cleanBreak,
  });
  t.tell(
    'strike',
    strikeSubject(second),
    14.6,
    {
      ...bareStrike,
      hydrantId: 'TH-0251',
      reportedBy: { source: 'public', name: null, phone: null, reportedAt: t.hoursAgo(14.8) },
      arrivedAt: t.hoursAgo(14.6),
      waterShutAt: t.hoursAgo(14.5),
      markedOutOfServiceAt: t.hoursAgo(14.4),
      found: cleanBreak,
    },
    { personId: 'w-201' },
  );
  t.tell(
    'link',
    strikeSubject(second),
    12,
    { sameAsStrikeId: first, reason: 'two-reports', note: null },
    { role: 'clerk' },
  );
}

/** Strikes that are over: back with a proof put off, billed, claim open, hit and run. */
export function closedStrikes(t: Teller): Told {
  // Back, but the flow test was put off by name: fire crews are told.
  const notRetested = t.id(80);
  t.tell('strike', strikeSubject(notRetested), 80, {
    ...bareStrike,
    hydrantId: 'TH-0019',
    reportedBy: { source: 'public', name: null, phone: null, reportedAt: t.hoursAgo(80.4) },
    struckAt: t.hoursAgo(80.5),
    struckAtBasis: 'reported',
    arrivedAt: t.hoursAgo(80),
    waterShutAt: t.hoursAgo(79.8),
    markedOutOfServiceAt: t.hoursAgo(79.7),
    dispatch: told(t.hoursAgo(79.7)),
    found: cleanBreak,
    hazards: ['ice'],
  });
  t.tell(
    'repair',
    strikeSubject(notRetested),
    74,
    ordinaryRepair(t, {
      hydrantId: 'TH-0019',
      from: 77,
      to: 74,
      crew: ['w-201', 'w-202'],
      kit: 'BW-D51-BK',
      done: procedureSteps,
      finished: true,
    }),
    { personId: 'w-201' },
  );
  t.tell(
    'return-to-service',
    strikeSubject(notRetested),
    73.5,
    returned(t, {
      closes: [notRetested],
      hoursAgo: 73.5,
      proofs: {
        'no-leaks': 'passed',
        'opens-and-closes-fully': 'passed',
        'drains-down': 'passed',
        'flow-test': 'deferred',
      },
      valve: null,
      deferredReason: 'Freezing: flowing water would ice the street',
    }),
    { personId: 'w-201' },
  );

  const billed = closedWithParty(t, {
    hydrantId: 'TH-0071',
    neighbour: 'TH-0072',
    hours: 410,
    photos: 'sailmaker',
    payer: 'Harrowgate Casualty',
    gallons: 26_600,
  });
  const open = closedWithParty(t, {
    hydrantId: 'TH-0138',
    neighbour: 'TH-0139',
    hours: 190,
    photos: 'quince',
    payer: 'Lanternfish Mutual',
    gallons: null,
  });

  // A hit and run at night: nobody to bill yet.
  const ran = t.id(260);
  t.tell('strike', strikeSubject(ran), 260, {
    ...bareStrike,
    hydrantId: 'TH-0345',
    reportedBy: { source: 'alarm', name: null, phone: null, reportedAt: t.hoursAgo(260.6) },
    struckAtBasis: 'unknown',
    lastSeenSoundAt: t.hoursAgo(268),
    arrivedAt: t.hoursAgo(260),
    waterShutAt: t.hoursAgo(259.6),
    markedOutOfServiceAt: t.hoursAgo(259.5),
    dispatch: told(t.hoursAgo(259.5)),
    found: gushing,
    hazards: ['traffic'],
    photos: [
      declared('millpond-overall', t.hoursAgo(259.9), 'From the road'),
      declared('millpond-scale', t.hoursAgo(259.8), 'Parted flange with rule'),
    ],
  });
  t.tell('party', strikeSubject(ran), 259, {
    hitAndRun: 'yes',
    vehicles: [
      {
        kind: 'unknown',
        plate: null,
        plateRegion: null,
        vin: null,
        description: 'Dark paint on the bonnet, glass in the verge',
      },
    ],
    driver: null,
    owner: null,
    insurer: null,
    police: { agency: 'Tansy Harbor Police', reportNumber: 'TP-26-3188', officer: null },
    crashReport: { codeSystem: 'MMUCC 5th ed., V22', code: null, text: 'Hit and run' },
    note: null,
  });
  t.tell(
    'repair',
    strikeSubject(ran),
    250,
    ordinaryRepair(t, {
      hydrantId: 'TH-0345',
      from: 254,
      to: 250,
      crew: ['w-201', 'w-202'],
      kit: 'BW-D51-BK',
      done: procedureSteps,
      finished: true,
    }),
    { personId: 'w-201' },
  );
  t.tell(
    'flow-test',
    strikeSubject(ran),
    249.5,
    flowTestOf(t, {
      rated: 'TH-0345',
      flowed: 'TH-0346',
      hoursAgo: 249.5,
      staticPsi: 58,
      residualPsi: 34,
      pitotPsi: 14,
      purpose: 'after-repair',
    }),
    { personId: 'w-201' },
  );
  t.tell(
    'return-to-service',
    strikeSubject(ran),
    249,
    returned(t, {
      closes: [ran],
      hoursAgo: 249,
      proofs: {
        'no-leaks': 'passed',
        'opens-and-closes-fully': 'passed',
        'drains-down': 'passed',
        'flow-test': 'passed',
      },
      valve: null,
    }),
    { personId: 'w-201' },
  );
  return { billed, open };
}

function closedWithParty(
  t: Teller,
  job: {
    readonly hydrantId: string;
    readonly neighbour: string;
    readonly hours: number;
    readonly photos: 'sailmaker' | 'quince';
    readonly payer: string;
    /** Water lost; null where the main valve held. */
    readonly gallons: number | null;
  },
): Told['billed'] {
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
  t.tell(
    'flow-test',
    hydrantSubject(job.hydrantId),
    h + 1699,
    flowTestOf(t, {
      rated: job.hydrantId,
      flowed: job.neighbour,
      hoursAgo: h + 1699,
      staticPsi: 74,
      residualPsi: 48,
      pitotPsi: 26,
      purpose: 'routine',
    }),
  );
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
    found: job.gallons === null ? cleanBreak : gushing,
    hazards: ['traffic'],
    photos: [
      declared(`${job.photos}-overall`, t.hoursAgo(h - 0.05), 'Hydrant and vehicle path from the kerb'),
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
  if (job.gallons !== null)
    t.tell('water-lost', subject, h - 0.24, {
      waterLostGal: job.gallons,
      method: 'flow-times-duration',
      basis: 'Full bore at about 700 gpm for 38 minutes, from the call to the isolation valve closed',
      flowingFrom: t.hoursAgo(h + 0.45),
      flowingTo: t.hoursAgo(h - 0.2),
      byWorkerId: 'w-101',
      note: null,
    });
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
        description: 'Grey saloon, offside front',
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
      done: procedureSteps,
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
      proofs: {
        'no-leaks': 'passed',
        'opens-and-closes-fully': 'passed',
        'drains-down': 'passed',
        'flow-test': 'passed',
      },
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

/** Outages of other causes, and the quiet work between strikes. */
export function otherCauses(t: Teller): void {
  const shut = t.tell('outage', hydrantSubject('TH-0188'), 20, {
    cause: 'main-shut',
    since: t.hoursAgo(20),
    markedOutOfServiceAt: t.hoursAgo(19.5),
    dispatch: told(t.hoursAgo(19.4)),
    foundByWorkerId: 'w-203',
    note: 'Main shut for the service connection on Fifth',
  });
  t.tell('expected-return', hydrantSubject('TH-0188'), 19, {
    outageId: shut,
    expectedAt: t.hoursAgo(-6),
    waitingFor: 'contractor',
    note: null,
  });
  const frozen = t.tell(
    'outage',
    hydrantSubject('TH-0365'),
    96,
    {
      cause: 'frozen',
      since: t.hoursAgo(96),
      markedOutOfServiceAt: null,
      dispatch: told(t.hoursAgo(95.8), 'w-201'),
      foundByWorkerId: 'w-202',
      note: null,
    },
    { personId: 'w-201' },
  );
  t.tell(
    'return-to-service',
    hydrantSubject('TH-0365'),
    70,
    returned(t, {
      closes: [frozen],
      hoursAgo: 70,
      proofs: { 'opens-and-closes-fully': 'passed' },
      valve: null,
    }),
    { personId: 'w-201' },
  );
  t.tell(
    'planned-work',
    hydrantSubject('TH-0209'),
    60,
    { work: 'painting', from: t.hoursAgo(-120), to: t.hoursAgo(-123), takesOutOfService: false, note: null },
    { role: 'manager' },
  );
  t.tell(
    'inspection',
    hydrantSubject('TH-0103'),
    40,
    {
      inspectedAt: t.hoursAgo(40),
      byWorkerId: 'w-203',
      result: 'sound-with-findings',
      findings: ['cap-missing'],
      photos: [],
      note: null,
    },
    { personId: 'w-203' },
  );
  // Routine tests, so that the neighbours of an outage have a class.
  const tested: readonly [string, string, number, number, number][] = [
    ['TH-0116', 'TH-0115', 71, 55, 26],
    ['TH-0118', 'TH-0119', 70, 49, 30],
    ['TH-0120', 'TH-0121', 72, 60, 28],
    ['TH-0202', 'TH-0201', 64, 44, 22],
    ['TH-0204', 'TH-0205', 63, 47, 25],
    ['TH-0287', 'TH-0286', 60, 38, 17],
    ['TH-0289', 'TH-0290', 61, 41, 18],
    ['TH-0330', 'TH-0329', 52, 31, 11],
    ['TH-0332', 'TH-0333', 52, 30, 10],
    ['TH-0041', 'TH-0040', 78, 64, 28],
    ['TH-0043', 'TH-0044', 78, 62, 30],
    ['TH-0159', 'TH-0158', 68, 53, 29],
    ['TH-0187', 'TH-0186', 66, 50, 27],
    ['TH-0189', 'TH-0190', 66, 48, 26],
    ['TH-0250', 'TH-0249', 62, 45, 23],
  ];
  tested.forEach(([rated, flowed, staticPsi, residualPsi, pitotPsi], index) => {
    t.tell(
      'flow-test',
      hydrantSubject(rated),
      2200 + index * 3,
      flowTestOf(t, {
        rated,
        flowed,
        hoursAgo: 2200 + index * 3,
        staticPsi,
        residualPsi,
        pitotPsi,
        purpose: 'routine',
      }),
    );
  });
}
