import {
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
import { strikeSubject } from './subjects.ts';

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
    photos: [declared('gullpoint-overall', t.hoursAgo(9.55), 'From the curb, water shut')],
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
      done: breakawaySteps.slice(0, 8),
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
      done: breakawaySteps,
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
