import type { FactKind } from '../../../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import {
  allPassed,
  bareStrike,
  breakawaySteps,
  cleanBreak,
  flowTestOf,
  ordinaryRepair,
  returned,
  told,
} from '../bodies.ts';
import type { Teller } from '../teller.ts';
import { noneLost } from '../waterLost.ts';
import type { Known } from './laterEvents.ts';
import type { PastClaim } from './pastClaims.ts';
import { strikeSubject } from './subjects.ts';

const DAY = 24;

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
      done: breakawaySteps,
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
      proofs: allPassed,
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
  if (past.later === null) return;
  const subject = { type: 'claim' as const, claimId };
  const hoursBefore = (after: number): number => (past.daysAgo - after) * DAY;
  const day = (after: number): string => t.dayAgo(hoursBefore(after));
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
