import { flowTestOf, returned, told } from '../bodies.ts';
import type { Teller } from '../teller.ts';
import { hydrantSubject } from './subjects.ts';

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
