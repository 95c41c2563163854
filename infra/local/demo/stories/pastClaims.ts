import type { PayerKind } from '../../../../shared/submissions/forms/claimOpened.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import {
  acknowledged,
  closed,
  disputed,
  event,
  nothing,
  paid,
  shortOnHours,
  type Later,
} from './laterEvents.ts';

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
  /** What happened after the demand, and how many days after the strike; null: the packet is issued and not sent yet. */
  readonly later: readonly Later[] | null;
}

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
      shortOnHours(60, 0.88, 'We allow two and a half hours for a breakaway repair.'),
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
  {
    claimNumber: '2026-0023',
    hydrantId: 'TH-0277',
    daysAgo: 40,
    payerKind: 'self-insured',
    payer: 'Corncrake Haulage',
    cause: 'turning-or-reversing',
    plate: 'TNS 4419',
    later: [acknowledged(24, 'CH-26-5')],
  },
  {
    claimNumber: '2026-0024',
    hydrantId: 'TH-0291',
    daysAgo: 12,
    payerKind: 'drivers-insurer',
    payer: 'Lanternfish Mutual',
    cause: 'road-or-weather',
    plate: 'TNS 8120',
    later: null,
  },
];
