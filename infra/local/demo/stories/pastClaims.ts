import type { PayerKind } from '../../../../shared/submissions/forms/claimOpened.ts';
import { procedureSteps } from '../../../../shared/strikes/procedure.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import type { FactKind } from '../../../../shared/submissions/kinds.ts';
import { bareStrike, cleanBreak, flowTestOf, ordinaryRepair, returned, told } from '../bodies.ts';
import type { Teller } from '../teller.ts';
import { noneLost } from '../waterLost.ts';
import { strikeSubject } from './subjects.ts';

const DAY = 24;
type Party = BodyOf<'party'>;

/** A claim of the past year, and what became of it. Everybody and everything in it is invented. */
export interface PastClaim {
  readonly claimNumber: string;
  readonly hydrantId: string;
  /** How long ago the hydrant was struck, days. */
  readonly daysAgo: number;
  readonly payerKind: PayerKind;
  readonly payer: string | null;
  readonly cause: NonNullable<Party['cause']>;
  readonly hitAndRun?: Party['hitAndRun'];
  readonly plate: string | null;
  /** What happened after the demand, and how many days after the strike. */
  readonly later: readonly Later[];
}

/** What is known when the events of a claim are told: what its packet demands, and the line of labor in it. */
export interface Known {
  readonly demandCents: number;
  readonly laborLineId: string | null;
  /** Tells how many days ago a day after the strike was, as `YYYY-MM-DD`. */
  readonly day: (afterStrike: number) => string;
  /** The id of the event told before of that kind. */
  readonly idOf: (kind: FactKind) => string;
}
export type Later = {
  readonly [K in FactKind]: {
    readonly kind: K;
    readonly after: number;
    readonly body: (known: Known) => BodyOf<K>;
  };
}[FactKind];

const nothing: { note: null; exhibits: BodyOf<'claim-acknowledged'>['exhibits'] } = {
  note: null,
  exhibits: [],
};
const event = <K extends FactKind>(kind: K, after: number, body: (known: Known) => BodyOf<K>): Later =>
  ({ kind, after, body }) as unknown as Later;

const acknowledged = (after: number, reference: string | null): Later =>
  event('claim-acknowledged', after, ({ day }) => ({
    receivedOn: day(after),
    by: 'Property damage intake',
    reference,
    ...nothing,
  }));
const paid = (after: number, share: number, more: Partial<BodyOf<'payment-received'>> = {}): Later =>
  event('payment-received', after, ({ demandCents, day }) => ({
    receivedOn: day(after),
    amountCents: Math.round(demandCents * share),
    how: 'cheque',
    from: null,
    reference: null,
    marked: 'not-marked',
    deposited: 'deposited',
    jointPayee: null,
    lines: [],
    ...nothing,
    ...more,
  }));
/** The hours of the crew are cut. */
const shortOnHours = (after: number, share: number, words: string): Later =>
  event('payment-received', after, ({ demandCents, laborLineId, day }) => ({
    receivedOn: day(after),
    amountCents: Math.round(demandCents * share),
    how: 'cheque',
    from: null,
    reference: null,
    marked: 'part',
    deposited: 'deposited',
    jointPayee: null,
    lines: [
      {
        lineId: laborLineId,
        paidCents: 0,
        shortCents: demandCents - Math.round(demandCents * share),
        reason: 'hours',
        words,
      },
    ],
    ...nothing,
  }));
const disputed = (after: number, reason: 'hours' | 'depreciation' | 'overhead', words: string): Later =>
  event('line-disputed', after, ({ demandCents, laborLineId, day }) => ({
    saidOn: day(after),
    revision: 1,
    lines: [
      {
        lineId: reason === 'hours' ? laborLineId : null,
        reason,
        disputedCents: Math.round(demandCents * 0.12),
        words,
      },
    ],
    ...nothing,
  }));
const closed = (after: number, how: BodyOf<'claim-closed'>['how'], reason: string): Later =>
  event('claim-closed', after, ({ day }) => ({ closedOn: day(after), how, reason, ...nothing }));

/** A claim for each way in which one may stand, so that every screen has something to show. */
export const pastClaims: readonly PastClaim[] = [
  {
    claimNumber: '2026-0010',
    hydrantId: 'TH-0023',
    daysAgo: 210,
    payerKind: 'drivers-insurer',
    payer: 'Harrowgate Casualty',
    cause: 'left-the-road',
    plate: 'TNS 2214',
    later: [acknowledged(20, 'HC-26-0881'), paid(48, 1), closed(50, 'paid', 'Paid as demanded.')],
  },
  {
    claimNumber: '2026-0011',
    hydrantId: 'TH-0040',
    daysAgo: 150,
    payerKind: 'drivers-insurer',
    payer: 'Lanternfish Mutual',
    cause: 'turning-or-reversing',
    plate: 'TNS 6031',
    later: [
      acknowledged(22, 'LM-77120'),
      event('adjuster-assigned', 25, ({ day }) => ({
        assignedOn: day(25),
        company: 'Lanternfish Mutual',
        adjuster: {
          name: 'Hollis Braintree-Oduya',
          email: 'h.braintree@lanternfish.example',
          phone: '555-0177',
          reference: 'LM-77120',
        },
        ...nothing,
      })),
      shortOnHours(60, 0.88, 'Two workers would have sufficed for a breakaway repair.'),
    ],
  },
  {
    claimNumber: '2026-0012',
    hydrantId: 'TH-0055',
    daysAgo: 95,
    payerKind: 'drivers-insurer',
    payer: 'Quillback Insurance',
    cause: 'avoiding-another',
    plate: 'TNS 9910',
    later: [
      acknowledged(18, 'Q-31877'),
      disputed(45, 'depreciation', 'Your hydrant was old; we pay its value and not a new one.'),
    ],
  },
  {
    claimNumber: '2026-0013',
    hydrantId: 'TH-0088',
    daysAgo: 62,
    payerKind: 'self-insured',
    payer: 'Corncrake Haulage',
    cause: 'turning-or-reversing',
    plate: 'TNS 4402',
    later: [
      acknowledged(16, null),
      event('information-asked', 30, ({ day }) => ({
        askedOn: day(30),
        what: 'Time sheets of the crew and the issue slip of the kit.',
        answerBy: day(75),
        ...nothing,
      })),
    ],
  },
  {
    claimNumber: '2026-0014',
    hydrantId: 'TH-0101',
    daysAgo: 80,
    payerKind: 'drivers-insurer',
    payer: 'Harrowgate Casualty',
    cause: 'road-or-weather',
    plate: 'TNS 3390',
    later: [
      acknowledged(19, 'HC-26-1402'),
      event('offer-made', 60, ({ demandCents, day }) => ({
        offeredOn: day(60),
        amountCents: Math.round(demandCents * 0.7),
        inFull: true,
        releaseAsked: true,
        expiresOn: day(95),
        terms: 'Against a release of all claims.',
        ...nothing,
      })),
    ],
  },
  {
    claimNumber: '2026-0015',
    hydrantId: 'TH-0119',
    daysAgo: 120,
    payerKind: 'drivers-insurer',
    payer: 'Quillback Insurance',
    cause: 'pushed-by-another',
    plate: 'TNS 7718',
    later: [
      acknowledged(20, 'Q-30020'),
      event('claim-denied', 52, ({ day }) => ({
        deniedOn: day(52),
        reasons: ['liability'],
        words: 'Our insured was pushed by a vehicle that left.',
        ...nothing,
      })),
    ],
  },
  {
    claimNumber: '2026-0016',
    hydrantId: 'TH-0147',
    daysAgo: 170,
    payerKind: 'driver',
    payer: null,
    cause: 'left-the-road',
    plate: 'TNS 0158',
    later: [
      event('payment-plan', 60, ({ demandCents, day }) => ({
        agreedOn: day(60),
        instalments: [80, 110, 140, 200].map((due, index, all) => ({
          dueOn: day(due),
          amountCents:
            index < all.length - 1
              ? Math.floor(demandCents / all.length)
              : demandCents - (all.length - 1) * Math.floor(demandCents / all.length),
        })),
        authority: 'Director’s delegation 2024-3',
        ...nothing,
      })),
      paid(81, 0.25, { how: 'transfer', marked: 'part' }),
    ],
  },
  {
    claimNumber: '2026-0017',
    hydrantId: 'TH-0163',
    daysAgo: 240,
    payerKind: 'drivers-insurer',
    payer: 'Lanternfish Mutual',
    cause: 'vehicle-failure',
    plate: 'TNS 5540',
    later: [
      acknowledged(21, 'LM-70011'),
      disputed(50, 'overhead', 'We do not pay overhead.'),
      event('dispute-answered', 58, ({ day, idOf }) => ({
        answeredOn: day(58),
        answers: idOf('line-disputed'),
        outcome: 'stands',
        reason: 'The rate is adopted, and its base is stated with its page.',
        ...nothing,
      })),
      event('claim-referred', 120, ({ day }) => ({
        referredOn: day(120),
        to: 'counsel',
        name: 'Office of the town’s counsel',
        caseNumber: null,
        ...nothing,
      })),
    ],
  },
  {
    claimNumber: '2026-0018',
    hydrantId: 'TH-0180',
    daysAgo: 300,
    payerKind: 'restitution',
    payer: null,
    cause: 'deliberate',
    plate: 'TNS 8003',
    later: [
      event('restitution-ordered', 110, ({ demandCents, day }) => ({
        orderedOn: day(110),
        court: 'District Court of Tansy County',
        caseNumber: 'CR-26-0412',
        amountCents: demandCents,
        payBy: day(360),
        ...nothing,
      })),
      paid(150, 0.3, { how: 'court', marked: 'part' }),
    ],
  },
  {
    claimNumber: '2026-0019',
    hydrantId: 'TH-0202',
    daysAgo: 260,
    payerKind: 'drivers-insurer',
    payer: 'Harrowgate Casualty',
    cause: 'left-the-road',
    plate: 'TNS 1290',
    later: [
      acknowledged(17, 'HC-26-0090'),
      shortOnHours(70, 0.9, 'Hours of travel are not paid.'),
      event('written-off', 130, ({ demandCents, day }) => ({
        writtenOffOn: day(130),
        amountCents: demandCents - Math.round(demandCents * 0.9),
        reason: 'cost-of-pursuit',
        lostTo: 'hours',
        decidedByWorkerId: 'm-401',
        authority: 'Director’s delegation 2024-3, up to $500',
        ...nothing,
      })),
    ],
  },
  {
    claimNumber: '2026-0020',
    hydrantId: 'TH-0219',
    daysAgo: 130,
    payerKind: 'government',
    payer: 'Tansy County Highway Department',
    cause: 'work-nearby',
    plate: null,
    later: [acknowledged(25, 'TC-26-77'), paid(100, 1.08)],
  },
  {
    claimNumber: '2026-0021',
    hydrantId: 'TH-0236',
    daysAgo: 70,
    payerKind: 'drivers-insurer',
    payer: 'Quillback Insurance',
    cause: 'left-the-road',
    plate: 'TNS 6676',
    later: [
      acknowledged(15, 'Q-32990'),
      disputed(40, 'hours', 'We allow three hours for such a repair.'),
      paid(58, 0.75, { marked: 'full', deposited: 'held' }),
    ],
  },
  {
    claimNumber: '2026-0022',
    hydrantId: 'TH-0262',
    daysAgo: 190,
    payerKind: 'own-policy',
    payer: 'Pool of the Harbor Towns',
    cause: 'unknown',
    hitAndRun: 'yes',
    plate: null,
    later: [
      acknowledged(30, 'PHT-9'),
      paid(90, 0.8),
      event('written-off', 95, ({ demandCents, day }) => ({
        writtenOffOn: day(95),
        amountCents: demandCents - Math.round(demandCents * 0.8),
        reason: 'settled',
        lostTo: null,
        decidedByWorkerId: 'm-401',
        authority: 'Deductible of the policy',
        ...nothing,
      })),
      closed(95, 'settled', 'Paid less the deductible.'),
    ],
  },
];

/** The next along the street: `TH-0040` for `TH-0039`. */
const nextHydrant = (hydrantId: string): string =>
  `TH-${String(Number(hydrantId.slice(3)) + 1).padStart(4, '0')}`;

/** Tells a strike that is long over, short and whole: enough for a statement, without photos. Answers its claim's ids. */
export function tellPastStrike(
  t: Teller,
  past: PastClaim,
): { readonly strikeId: string; readonly claimId: string } {
  const h = past.daysAgo * DAY;
  const strikeId = t.id(h);
  const subject = strikeSubject(strikeId);
  t.tell('strike', subject, h, {
    ...bareStrike,
    hydrantId: past.hydrantId,
    reportedBy: { source: 'police', name: null, phone: null, reportedAt: t.hoursAgo(h + 0.5) },
    struckAt: t.hoursAgo(h + 0.6),
    struckAtBasis: 'reported',
    calledOutAt: t.hoursAgo(h + 0.45),
    arrivedAt: t.hoursAgo(h),
    dispatch: told(t.hoursAgo(h - 0.1)),
    found: cleanBreak,
    hazards: ['traffic'],
  });
  t.tell('valve-operation', subject, h - 0.2, {
    valveId: past.hydrantId.replace('TH', 'V'),
    valve: 'isolation',
    action: 'closed',
    at: t.hoursAgo(h - 0.2),
    byWorkerId: 'w-202',
    waterShut: 'yes',
    turns: 14,
    note: null,
  });
  t.tell('water-lost', subject, h - 0.3, noneLost());
  t.tell('out-of-service-notice', subject, h - 0.3, {
    markedOutOfServiceAt: t.hoursAgo(h - 0.25),
    dispatch: null,
    note: null,
  });
  const partyId = t.tell('party', subject, h - 0.5, {
    hitAndRun: past.hitAndRun ?? 'no',
    cause: past.cause,
    vehicles: [
      { kind: 'car', plate: past.plate, plateRegion: past.plate && 'Tansy', vin: null, description: null },
    ],
    driver: null,
    owner: null,
    insurer:
      past.payer === null
        ? null
        : { company: past.payer, policyNumber: null, claimNumber: null, adjuster: null },
    police: { agency: 'Tansy Harbor Police', reportNumber: `TP-${past.claimNumber.slice(2)}`, officer: null },
    crashReport: null,
    note: null,
  });
  t.tell(
    'repair',
    subject,
    h - 6,
    ordinaryRepair(t, {
      hydrantId: past.hydrantId,
      from: h - 2,
      to: h - 5,
      crew: ['w-201', 'w-202'],
      kit: 'BW-D51-BK',
      done: procedureSteps,
      finished: true,
    }),
    { personId: 'w-201' },
  );
  t.tell(
    'flow-test',
    subject,
    h - 6.5,
    flowTestOf(t, {
      rated: past.hydrantId,
      flowed: nextHydrant(past.hydrantId),
      hoursAgo: h - 6.5,
      staticPsi: 72,
      residualPsi: 49,
      pitotPsi: 24,
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
      valve: past.hydrantId.replace('TH', 'V'),
    }),
    { personId: 'w-201' },
  );
  const claimId = t.id(h - 5 * DAY);
  t.tell(
    'claim-opened',
    { type: 'claim', claimId },
    h - 5 * DAY,
    {
      strikeId,
      partyId,
      claimNumber: past.claimNumber,
      payerKind: past.payerKind,
      payer: { name: past.payer ?? 'The driver', address: null, attention: null, reference: null },
      note: null,
    },
    { role: 'clerk' },
  );
  return { strikeId, claimId };
}

/** Days between the strike and the demand. */
const DEMANDED_AFTER = 14;

/** Tells the demand of a claim and everything after it, now that its packet says what it comes to. */
export function tellLater(
  t: Teller,
  past: PastClaim,
  claimId: string,
  packet: { readonly revision: number; readonly demandCents: number; readonly laborLineId: string | null },
): void {
  const subject = { type: 'claim' as const, claimId };
  const hoursBefore = (after: number): number => (past.daysAgo - after) * DAY;
  const day = (after: number): string => t.hoursAgo(hoursBefore(after)).slice(0, 10);
  const ids = new Map<FactKind, string>();
  const known: Known = { ...packet, day, idOf: (kind) => ids.get(kind) ?? '' };
  t.tell(
    'demand-sent',
    subject,
    hoursBefore(DEMANDED_AFTER),
    {
      revision: packet.revision,
      sentOn: day(DEMANDED_AFTER),
      to: past.payer ?? 'The driver',
      how: 'post',
      amountCents: packet.demandCents,
      note: null,
      what: 'demand',
    },
    { role: 'clerk' },
  );
  for (const later of past.later) {
    const body = (later.body as (known: Known) => BodyOf<FactKind>)(known);
    ids.set(later.kind, t.tell(later.kind, subject, hoursBefore(later.after), body, { role: 'clerk' }));
  }
}
