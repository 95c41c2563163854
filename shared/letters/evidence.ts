import type { AuditCase } from '../audit/case.ts';
import { ofKind } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import { letterKindFor, type LetterKind } from './kind.ts';

export type EvidenceCase = Pick<AuditCase, 'claim' | 'party' | 'strike' | 'facts' | 'statement'>;

/** What somebody who is asked to pay may ask to see. Words: `letter.evidence.<code>`. */
interface EvidenceItem {
  /** Where it is added; null where no form adds it. */
  readonly add: FactKind | null;
  /** What asks for it already: a rule of the adjuster's eye, or what stands in the way of freezing. */
  readonly askedBy: string | null;
  readonly there: (audited: EvidenceCase) => boolean;
}

const said = (text: string | null | undefined): boolean => (text ?? '').trim() !== '';

const photosOf = ({ facts }: EvidenceCase) =>
  facts.flatMap(({ fact: { body } }) => ('photos' in body ? body.photos : []));

const papers = ({ facts }: EvidenceCase) =>
  ofKind(facts, 'documents').flatMap(({ fact }) => fact.body.documents);

const repairs = ({ facts }: EvidenceCase) => ofKind(facts, 'repair').map(({ fact }) => fact.body);

/** Each invoice that the bill names, and the file that its record holds. */
const invoices = (audited: EvidenceCase) =>
  repairs(audited).flatMap(({ parts, contractors }) => [
    ...parts.flatMap(({ source }) => (source.from === 'invoice' ? [source] : [])),
    ...contractors,
  ]);

const items = {
  'report-number': {
    add: 'party',
    askedBy: 'no-crash-report',
    there: ({ party }) => said(party?.police?.reportNumber),
  },
  'police-report': {
    add: 'documents',
    askedBy: null,
    there: (audited) => papers(audited).some(({ what }) => what === 'police-report'),
  },
  'photos-of-damage': {
    add: 'documents',
    askedBy: 'no-photo-before-repair',
    there: (audited) => photosOf(audited).length > 0,
  },
  'time-and-place': {
    add: 'strike',
    askedBy: 'time-of-strike-unknown',
    there: ({ strike }) =>
      strike.struckAt !== null && (strike.hydrantId !== null || said(strike.placeDescription)),
  },
  'crew-hours': {
    add: 'repair',
    askedBy: 'names-of-time-missing',
    there: (audited) => repairs(audited).some(({ crew }) => crew.length > 0),
  },
  invoices: {
    add: 'documents',
    askedBy: 'contractor-without-invoice',
    there: (audited) => {
      const kept = new Set(papers(audited).flatMap(({ what, number }) => (what === 'invoice' ? number : [])));
      return invoices(audited).every(
        ({ invoiceNumber, invoiceSha256 }) => invoiceSha256 !== null || kept.has(invoiceNumber),
      );
    },
  },
  'condition-before': {
    add: 'inspection',
    askedBy: 'no-inspection-before',
    there: ({ facts, strike }) =>
      [
        ...ofKind(facts, 'inspection').map(({ fact }) => fact.body.inspectedAt),
        ...ofKind(facts, 'flow-test').map(({ fact }) => fact.body.testedAt),
      ].some((at) => Date.parse(at) < Date.parse(strike.since)),
  },
  'return-to-service': {
    add: 'return-to-service',
    askedBy: 'strike-not-closed',
    there: ({ strike }) => strike.returnedAt !== null,
  },
  'policy-or-claim-number': {
    add: 'party',
    askedBy: 'no-policy-number',
    there: ({ claim, party }) =>
      said(claim.payer.reference) || said(party?.insurer?.policyNumber) || said(party?.insurer?.claimNumber),
  },
  vehicle: {
    add: 'party',
    askedBy: null,
    there: ({ party }) => (party?.vehicles ?? []).some(({ plate, vin }) => said(plate) || said(vin)),
  },
  'payer-address': {
    add: 'claim-opened',
    askedBy: null,
    there: ({ claim }) => said(claim.payer.name) && said(claim.payer.address),
  },
  'driver-named': { add: 'party', askedBy: null, there: ({ party }) => said(party?.driver?.name) },
  'own-policy-number': {
    add: 'claim-opened',
    askedBy: null,
    there: ({ claim }) => said(claim.payer.reference),
  },
  'case-number': { add: 'claim-opened', askedBy: null, there: ({ claim }) => said(claim.payer.reference) },
  'complete-statement': {
    add: null,
    askedBy: 'line-without-amount',
    there: ({ statement }) => statement.complete && statement.totalCents > 0,
  },
} as const satisfies Readonly<Record<string, EvidenceItem>>;

export type EvidenceCode = keyof typeof items;
export const evidenceCodes = Object.keys(items) as EvidenceCode[];

const always = ['time-and-place', 'photos-of-damage', 'complete-statement', 'return-to-service'] as const;

/**
 * What each payer asks for (common practice, no source, but for the contents of a notice to a government body, which
 * names claimant, time, place, what happened and the amount in most statutes: have counsel confirm).
 */
const asked: Readonly<Record<LetterKind, readonly EvidenceCode[]>> = {
  'demand-insurer': [
    'report-number',
    'policy-or-claim-number',
    'payer-address',
    ...always,
    'crew-hours',
    'invoices',
    'condition-before',
  ],
  'demand-driver': ['report-number', 'driver-named', 'payer-address', ...always, 'crew-hours', 'invoices'],
  'demand-self-insured': [
    'report-number',
    'vehicle',
    'payer-address',
    ...always,
    'crew-hours',
    'invoices',
    'condition-before',
  ],
  'notice-government': ['report-number', 'vehicle', 'payer-address', ...always, 'invoices'],
  'claim-own-policy': [
    'own-policy-number',
    'payer-address',
    'report-number',
    'police-report',
    ...always,
    'crew-hours',
    'invoices',
    'condition-before',
  ],
  'restitution-statement': ['case-number', 'payer-address', 'report-number', ...always, 'invoices'],
  'cover-unknown-payer': ['report-number', 'police-report', ...always],
};

export interface EvidenceAsked {
  readonly code: EvidenceCode;
  readonly there: boolean;
  readonly add: FactKind | null;
  /** What asks for it by itself, so that nobody is asked twice. */
  readonly askedBy: string | null;
}

/** What the claim's payer asks for, and whether it is there. Pure. */
export function evidenceFor(audited: EvidenceCase): EvidenceAsked[] {
  const letter = letterKindFor({
    payerKind: audited.claim.payerKind,
    payerName: audited.claim.payer.name,
    hitAndRun: audited.party?.hitAndRun ?? 'unknown',
  });
  return asked[letter].map((code) => {
    const { add, askedBy, there }: EvidenceItem = items[code];
    return { code, there: there(audited), add, askedBy };
  });
}
