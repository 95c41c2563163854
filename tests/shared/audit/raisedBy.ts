import type { AuditCase } from '../../../shared/audit/case.ts';
import { labor, machine } from '../../support/rates.ts';
import { at } from '../../support/submissions.ts';
import {
  sample,
  hour,
  photo,
  caseOf,
  body,
  withStatement,
  premium,
  oldHydrant,
  model,
  repair,
  party,
  nobody,
  flowing,
  ofBefore,
  bestFigure,
} from './caseOf.ts';

/** What raises each rule. Every rule must be here. */
export const cases: Record<string, () => AuditCase> = {
  'no-crash-report': () => caseOf(party({ police: null })),
  'liability-not-shown': () => caseOf(party(nobody)),
  'nobody-known': () => caseOf({ party: null }),
  'hit-and-run-no-payer': () => caseOf(party({ ...nobody, hitAndRun: 'yes' })),
  'insurer-unknown': () =>
    caseOf(party({ insurer: null }), {
      claim: {
        ...sample('claim-opened'),
        payerKind: 'drivers-insurer',
        payer: { name: null, address: null, attention: null, reference: null },
      },
    }),
  'no-policy-number': () =>
    caseOf(
      party({ insurer: { company: 'An insurer', policyNumber: null, claimNumber: null, adjuster: null } }),
      {
        claim: {
          ...sample('claim-opened'),
          payerKind: 'drivers-insurer',
          payer: { name: 'An insurer', address: null, attention: null, reference: null },
        },
      },
    ),
  'time-of-strike-unknown': () => caseOf(body('strike', { struckAt: null, struckAtBasis: 'unknown' })),
  'limitation-near': () => caseOf({}, { limitation: { lastDay: '2026-06-01', citation: 'Code 1' } }),
  'no-photo-before-repair': () => caseOf(body('strike', { photos: [] })),
  'no-scale-in-photos': () => caseOf(body('strike', { photos: [photo('overall', at(35), 'a1')] })),
  'photo-far-from-event': () =>
    caseOf(body('strike', { photos: [photo('scale', '2025-01-01T00:00:00Z', 'a1')] })),
  'camera-clock-differs': () => {
    const audited = caseOf();
    // 20:35 in Chicago is 02:35 UTC; the camera is three hours behind.
    return {
      ...audited,
      photos: audited.photos.map((each) => ({ ...each, cameraTime: '2026-03-03 17:35:00' })),
    };
  },
  'photo-not-arrived': () => {
    const audited = caseOf();
    return { ...audited, photos: audited.photos.map((each) => ({ ...each, arrived: false })) };
  },
  'no-inspection-before': () => caseOf(body('inspection', { inspectedAt: '2024-01-01T12:00:00Z' })),
  'no-flow-test-before': () => caseOf({ 'flow-test': null }),
  'no-findings-recorded': () => caseOf(body('strike', { found: null })),
  'hours-overlap-elsewhere': () =>
    caseOf({}, { elsewhere: [{ strikeId: 'other', workerId: 'w-1', from: at(90), to: at(120) }] }),
  'hours-recorded-twice': () => caseOf({ repair: [repair(), { ...repair(), parts: [], machines: [] }] }),
  'premium-without-reason': () =>
    caseOf({}, {}, { payRules: [premium], labor: [{ ...labor('mechanic', '40.00'), payRulesId: 'p' }] }),
  'minimum-without-call': () =>
    caseOf(
      body('strike', { calledOutAt: null }),
      {},
      {
        payRules: [{ ...premium, otherHours: { ...premium.otherHours, minimumHours: '4' } }],
        labor: [{ ...labor('mechanic', '40.00'), payRulesId: 'p' }],
      },
    ),
  'crew-out-of-line': () =>
    caseOf({}, { pastRepairs: [1, 1, 1.2].map((laborHours) => ({ people: 1, laborHours })) }),
  'work-after-return': () => {
    const audited = caseOf();
    return { ...audited, strike: { ...audited.strike, returnedAt: at(120) } };
  },
  'work-before-strike': () => {
    const audited = caseOf();
    return { ...audited, strike: { ...audited.strike, since: at(90) } };
  },
  'repair-before-isolation': () => {
    const audited = caseOf();
    const breach = { at: at(60) } as unknown as AuditCase['strike']['breaches'][number];
    return { ...audited, strike: { ...audited.strike, breaches: [breach] } };
  },
  'dig-before-locate': () => {
    const audited = caseOf();
    const breach = {
      code: 'dug-before-locate',
      at: at(60),
    } as unknown as AuditCase['strike']['breaches'][number];
    return { ...audited, strike: { ...audited.strike, breaches: [breach] } };
  },
  'no-hours-billed': () => caseOf(body('repair', { crew: [], machines: [] })),
  'machine-above-crew': () =>
    caseOf(
      body('repair', {
        machines: repair().machines.map((each) => ({ ...each, inUse: [hour(60, 420)] })),
      }),
    ),
  'machine-by-day': () =>
    caseOf({}, {}, { machines: [{ ...machine('truck', 'hour', '200.00'), unit: 'day' }] }),
  'standby-billed': () =>
    caseOf(
      body('repair', {
        machines: repair().machines.map((each) => ({ ...each, standingBy: [hour(200, 230)] })),
      }),
      {},
      { machines: [machine('truck', 'hour', '25.00', '10.00')] },
    ),
  'machine-without-operator': () =>
    caseOf(
      body('repair', { machines: repair().machines.map((each) => ({ ...each, operatorWorkerId: null })) }),
    ),
  'part-without-paper': () =>
    caseOf(
      body('repair', {
        parts: repair().parts.map((each) => ({ ...each, source: { from: 'stock', issueSlip: null } })),
      }),
    ),
  'contractor-without-invoice': () =>
    caseOf(
      body('repair', {
        contractors: [
          {
            contractor: 'Paver',
            invoiceNumber: '7',
            invoicedOn: '2026-03-09',
            work: 'Paving',
            amountCents: 100_00,
            invoiceSha256: null,
          },
        ],
      }),
    ),
  'part-not-of-model': () => caseOf({}, { model: model as unknown as NonNullable<AuditCase['model']> }),
  'extent-without-finding': () => caseOf(body('repair', { damage: 'replace-whole' })),
  'upgrade-without-reason': () =>
    caseOf(body('repair', { parts: repair().parts.map((each) => ({ ...each, upgrade: true })) })),
  'old-without-counter-calculation': () => caseOf({}, { hydrant: oldHydrant('1980-01-01') }),
  'install-date-unknown': () => caseOf({}, { hydrant: oldHydrant(null) }),
  'overhead-without-authority': () =>
    caseOf({}, {}, { materialHandling: { fraction: '0.05', authorityId: 'a' } }),
  'share-on-schedule-rate': () =>
    caseOf(
      {},
      {},
      {
        authorities: [
          { authorityId: 'a', kind: 'resolution', title: 'Resolution', edition: null, page: '1' },
          { authorityId: 's', kind: 'schedule', title: 'Schedule', edition: null, page: '1' },
        ],
        machines: [{ ...machine('truck', 'hour', '25.00'), authorityId: 's' }],
        overheads: [
          {
            overheadId: 'o',
            title: 'General',
            fraction: '0.10',
            on: ['machines'],
            onOverheads: [],
            limitUsd: null,
            authorityId: 'a',
          },
        ],
      },
    ),
  'edition-not-in-force': () => caseOf({}, {}, { effectiveFrom: '2027-01-01' }),
  'edition-recorded-after-strike': () => {
    const audited = caseOf();
    return { ...audited, editions: audited.editions.map((each) => ({ ...each, recordedAt: at(500) })) };
  },
  'line-without-amount': () => caseOf({}, {}, { labor: [] }),
  'duplicate-line': () =>
    withStatement(({ lines, sections, totalCents }) => {
      const [first] = lines;
      return {
        lines: [...lines, { ...first!, lineId: 'labor-9' }],
        sections: sections.map((each) =>
          each.section === first!.section
            ? { ...each, subtotalCents: each.subtotalCents + (first!.amountCents ?? 0) }
            : each,
        ),
        totalCents: totalCents + (first!.amountCents ?? 0),
      };
    }),
  'bill-does-not-foot': () => withStatement(({ totalCents }) => ({ totalCents: totalCents + 1 })),
  'flat-prices-together': () =>
    withStatement(({ lines }) => ({
      lines: [
        ...lines,
        { ...lines[0]!, lineId: 'flat-price-1', section: 'flat-price', item: 'kit', amountCents: 100_000 },
        { ...lines[0]!, lineId: 'flat-price-2', section: 'flat-price', item: 'whole', amountCents: 750_000 },
      ],
    })),
  'flat-price-above-cost': () =>
    caseOf(
      {},
      {},
      {
        flatTariffs: [
          {
            tariffId: 'kit',
            title: 'Kit',
            damage: ['breakaway-kit'],
            usd: '1000',
            covers: ['labor', 'machines', 'materials'],
            extras: { laborClasses: [], machineCodes: [], partNumbers: [] },
            authorityId: 'a',
          },
        ],
      },
    ),
  'minimum-charge-billed': () => caseOf({}, {}, { minimumCharge: { usd: '5000', authorityId: 'a' } }),
  'claim-handling-billed': () =>
    caseOf(
      {
        'claim-handling': {
          workerId: 'w-9',
          laborClass: 'mechanic',
          work: [hour(2000, 2060)],
          what: 'Letters',
        },
      },
      {},
      { claimHandling: { authorityId: 'a' } },
    ),
  'water-though-valve-held': () => caseOf({ 'water-lost': { waterLostGal: 1000 } }),
  'water-seen-though-valve-held': () =>
    caseOf({ ...body('strike', { found: { ...sample('strike').found!, flow: 'jet', mainValve: 'holds' } }) }),
  'water-without-times': () =>
    caseOf({
      ...body('strike', {
        found: { ...sample('strike').found!, flow: 'full-bore', mainValve: 'does-not-hold' },
      }),
      'water-lost': {
        ...ofBefore,
        waterLostGal: 1000,
        method: 'flow-times-duration',
        flowingFrom: null,
        flowingTo: null,
      },
    }),
  'water-estimate-though-metered': () =>
    caseOf({
      'water-lost': [
        { waterLostGal: 900, method: 'metered' },
        { waterLostGal: 1000, method: 'flow-times-duration', flowingFrom: at(0), flowingTo: at(40) },
      ],
    }),
  'evidence-for-payer': () => caseOf({}, { claim: { ...sample('claim-opened'), payerKind: 'own-policy' } }),
  // 1,000,000 gal in 40 min is 25,000 gpm; no 6 in lateral gives 10,742 (shared/water tests).
  'water-above-hydrant': () =>
    caseOf({
      ...flowing(),
      'water-lost': {
        ...ofBefore,
        waterLostGal: 1_000_000,
        method: 'flow-times-duration',
        flowingFrom: at(0),
        flowingTo: at(40),
      },
    }),
  'water-best-figure-chosen': () => caseOf({ ...flowing(), 'water-lost': bestFigure() }),
};
