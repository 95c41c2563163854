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
import { lostBy } from '../waterLost.ts';
import { closedWithParty, type ClaimedStrike } from './claimed.ts';
import { strikeSubject } from './subjects.ts';

/** Strikes that are over: back with a proof put off, billed, claim open, hit and run. */
export function closedStrikes(t: Teller): { readonly billed: ClaimedStrike; readonly open: ClaimedStrike } {
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
      done: breakawaySteps,
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
    mainValveHeld: false,
  });
  const open = closedWithParty(t, {
    hydrantId: 'TH-0138',
    neighbour: 'TH-0139',
    hours: 190,
    photos: 'quince',
    payer: 'Lanternfish Mutual',
    mainValveHeld: true,
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
  // Nobody saw it go: the water ran for an hour at the least, and since it was last seen sound at the most.
  t.tell(
    'water-lost',
    strikeSubject(ran),
    259.4,
    lostBy(gushing, {
      lastSeenSoundAt: t.hoursAgo(268),
      firstCallAt: t.hoursAgo(260.6),
      waterShutAt: t.hoursAgo(259.6),
    }),
    { personId: 'w-201' },
  );
  t.tell('party', strikeSubject(ran), 259, {
    hitAndRun: 'yes',
    vehicles: [
      {
        kind: 'unknown',
        plate: null,
        plateRegion: null,
        vin: null,
        description: 'Dark paint on the bonnet, glass at the roadside',
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
      done: breakawaySteps,
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
