import { describe, expect, it } from 'vitest';
import type { AuditCase } from '../../../shared/audit/case.ts';
import { objectionsTo, rules, withAnswers } from '../../../shared/audit/objections.ts';
import { statementOfCosts } from '../../../shared/costs/statement.ts';
import type { RateBookEdition } from '../../../shared/costs/rateBook.ts';
import { project } from '../../../shared/projections/project.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Submission } from '../../../shared/submissions/submission.ts';
import type { WaterLostInput } from '../../../shared/water/input.ts';
import { recordWaterLost } from '../../../shared/water/record.ts';
import { hasWords, say } from '../../../shared/words/index.ts';
import { labor, machine, noRates, stock } from '../../support/rates.ts';
import { at, fact, onClaim, onHydrant, onStrike, recorded } from '../../support/submissions.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

/**
 * Each rule, raised by the one thing that it is about and silent without it. What an adjuster asks is common practice,
 * with the cases named in the reference of costs; amounts are by hand.
 */

type Bodies = Partial<{ [K in FactKind]: Partial<BodyOf<K>> | readonly Partial<BodyOf<K>>[] | null }>;
const sample = <K extends FactKind>(kind: K): BodyOf<K> => sampleBodies[kind];
const hour = (from: number, to: number) => ({ from: at(from), to: at(to) });

const photo = (view: 'overall' | 'scale', takenAt: string | null, sha: string) => ({
  sha256: sha.repeat(32),
  bytes: 1000,
  mediaType: 'image/jpeg' as const,
  takenAt,
  view,
  caption: null,
});

const crew = (workerId: string, laborClass = 'mechanic', work = [hour(60, 180)]) => ({
  workerId,
  laborClass,
  work,
  breaks: [],
});

const edition: RateBookEdition = {
  ...noRates,
  labor: [labor('mechanic', '40.00')],
  machines: [machine('truck', 'hour', '25.00')],
  stock: [stock('KIT', '400.00')],
  water: { per1000GalUsd: '6.00', authorityId: 'a' },
};

/** A case with nothing to object to: seen, photographed, on paper, priced and within its hours. */
function caseOf(bodies: Bodies = {}, more: Partial<AuditCase> = {}, rates: Partial<RateBookEdition> = {}) {
  const clean: Bodies = {
    strike: {
      struckAt: at(0),
      struckAtBasis: 'witnessed',
      calledOutAt: at(10),
      arrivedAt: at(30),
      waterShutAt: at(40),
      found: {
        ...sample('strike').found!,
        flow: 'none',
        jetHeightIn: null,
        throwDistanceIn: null,
        mainValve: 'holds',
        lowerBarrel: 'sound',
        belowGrade: 'no-sign',
      },
      photos: [photo('overall', at(35), 'a1'), photo('scale', at(36), 'b2')],
    },
    party: { hitAndRun: 'no' },
    repair: {
      damage: 'breakaway-kit',
      crew: [crew('w-1')],
      machines: [
        {
          machineCode: 'truck',
          description: 'Truck',
          operatorWorkerId: 'w-1',
          inUse: [hour(60, 180)],
          standingBy: [],
          drivenMiles: null,
        },
      ],
      parts: [
        { partNumber: 'KIT', description: 'Kit', quantity: 1, source: { from: 'stock', issueSlip: 'S-1' } },
      ],
      contractors: [],
      steps: [],
      photos: [],
      reassembledAt: at(170),
      completedAt: at(180),
      premiumTimeReason: null,
    },
    inspection: { inspectedAt: '2025-09-01T12:00:00Z' },
    'flow-test': { testedAt: '2024-05-01T12:00:00Z', photos: [] },
  };
  const wanted = { ...clean, ...bodies };
  let number = 100;
  const submissions: Submission[] = Object.entries(wanted).flatMap(([kind, value]) => {
    const list = value === null ? [] : Array.isArray(value) ? value : [value];
    const subject =
      kind === 'inspection' || kind === 'flow-test'
        ? onHydrant(sample('strike').hydrantId ?? 'H-1')
        : onStrike(1);
    return list.map(
      (body) =>
        fact(kind as 'strike', (number += 1), subject, body as Partial<BodyOf<'strike'>>) as Submission,
    );
  });
  const records = submissions.map((submission) => recorded(submission));
  const { facts } = effectiveFacts(records);
  const strike = project(records, () => 'dry-barrel').strikes[0]!;
  const editions = [{ ...edition, ...rates }];
  const audited: AuditCase = {
    now: at(60 * 24 * 5),
    timeZone: 'America/Chicago',
    claim: { ...sample('claim-opened'), payerKind: 'drivers-insurer' },
    party:
      wanted.party === null ? null : { ...sample('party'), ...(wanted.party as Partial<BodyOf<'party'>>) },
    strike: { ...strike, breaches: [] },
    facts,
    hydrant: null,
    model: null,
    statement: statementOfCosts({
      facts: facts.filter(({ fact: { subject } }) => subject.type === 'strike'),
      editions,
      timeZone: 'America/Chicago',
    }),
    editions: editions.map((each) => ({ edition: each, recordedAt: '2020-01-01T00:00:00Z' })),
    photos: facts.flatMap(({ fact: { submissionId, body }, recordedAt }) =>
      'photos' in body
        ? body.photos.map((exhibit) => ({
            exhibit,
            submissionId,
            recordedAt,
            arrived: true,
            cameraTime: null,
          }))
        : [],
    ),
    elsewhere: [],
    pastRepairs: [],
    limitation: { lastDay: '2030-01-01', citation: 'Code 1' },
    ...more,
  };
  return audited;
}

const raised = (audited: AuditCase): string[] => objectionsTo(audited).map(({ rule }) => rule);
const body = <K extends FactKind>(kind: K, change: Partial<BodyOf<K>>): Bodies => {
  const found = caseOf().facts.find(({ fact: each }) => each.kind === kind)?.fact.body ?? sample(kind);
  return { [kind]: { ...found, ...change } };
};
const withStatement = (
  change: (statement: AuditCase['statement']) => Partial<AuditCase['statement']>,
): AuditCase => {
  const audited = caseOf();
  return { ...audited, statement: { ...audited.statement, ...change(audited.statement) } };
};
const premium = {
  payRulesId: 'p',
  title: 'Pay rules',
  workingHours: [],
  workingMinimumHours: null,
  otherHours: { multiplier: '1.5', minimumHours: null, minimumWhenAdjoining: false },
  holiday: null,
  holidays: [],
  week: null,
  increment: null,
  authorityId: 'a',
};
const oldHydrant = (installedOn: string | null) =>
  ({ hydrantId: 'H-1', installedOn }) as unknown as NonNullable<AuditCase['hydrant']>;
const model = { modelId: 'M', kitContents: [{ partNumber: 'OTHER', description: 'x', quantity: 1 }] };
const repair = () =>
  caseOf().facts.find(({ fact: each }) => each.kind === 'repair')!.fact.body as BodyOf<'repair'>;
const party = (change: Partial<BodyOf<'party'>>): Bodies => body('party', { ...sample('party'), ...change });
const nobody = { driver: null, vehicles: [] };

const flowing = (): Bodies =>
  body('strike', { found: { ...sample('strike').found!, flow: 'full-bore', mainValve: 'does-not-hold' } });
/** A record of before has a figure and a sentence alone. */
const ofBefore = { question: null, estimate: null, challengeAnswer: null } as const;
/** A jet of 36 in from a 4 in opening for an hour: low 25,800 gal, best 30,100 gal (tests/shared/water). */
const bestFigure = (): Partial<BodyOf<'water-lost'>> => {
  const question: WaterLostInput = {
    found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 },
    times: { struckAt: at(0), struckAtBasis: 'witnessed', waterShutAt: at(60) },
    choice: { figure: 'best', reason: 'measured twice' },
  };
  return { ...recordWaterLost(question, { system: 'us', locale: 'en' }), question };
};

/** What raises each rule. Every rule must be here. */
const cases: Record<string, () => AuditCase> = {
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

/** What issue 4 of the work lists as the least, in its words, and the rules that are it. */
const listed: readonly (readonly [phrase: string, ...rules: readonly string[]])[] = [
  ['no crash-report number', 'no-crash-report'],
  ['liability not shown', 'liability-not-shown'],
  ['hit and run with no other payer', 'hit-and-run-no-payer'],
  ['driver’s insurer unknown', 'insurer-unknown'],
  ['no photo before repair', 'no-photo-before-repair'],
  ['or no scale', 'no-scale-in-photos'],
  ['photo time far from the event', 'photo-far-from-event'],
  ['or camera clock wrong', 'camera-clock-differs'],
  ['last inspection or flow test missing or old', 'no-inspection-before', 'no-flow-test-before'],
  ['hours overlap for one person across jobs', 'hours-overlap-elsewhere'],
  ['machine hours above crew hours', 'machine-above-crew'],
  ['machine billed by the day', 'machine-by-day'],
  ['standby billed', 'standby-billed'],
  ['overtime with no reason', 'premium-without-reason'],
  ['crew size out of line with the utility’s own past repairs of the kind', 'crew-out-of-line'],
  ['call-out minimum without a call time', 'minimum-without-call'],
  ['part with no invoice or issue slip', 'part-without-paper'],
  ['part not of the hydrant’s model', 'part-not-of-model'],
  ['hydrant near the end of its service life with no counter-calculation', 'old-without-counter-calculation'],
  ['upgrade billed without its reason', 'upgrade-without-reason'],
  ['overhead with no authority', 'overhead-without-authority'],
  ['percentage on a rate that holds it', 'share-on-schedule-rate'],
  ['rate edition not in force on the date', 'edition-not-in-force'],
  ['water figure above what the hydrant can deliver', 'water-above-hydrant'],
  ['work after return to service', 'work-after-return'],
  ['repair before isolation', 'repair-before-isolation'],
  ['duplicate line', 'duplicate-line'],
  ['bill that does not foot', 'bill-does-not-foot'],
  ['estimate where an actual exists', 'water-estimate-though-metered'],
  ['water billed though the main valve held', 'water-though-valve-held', 'water-seen-though-valve-held'],
  ['limitation date near', 'limitation-near'],
];

describe('what the work lists as the least', () => {
  it.each(listed)('%s', (_phrase, ...wanted) => {
    for (const each of wanted) {
      expect(raised(cases[each]!())).toContain(each);
      expect(raised(caseOf())).not.toContain(each);
    }
  });
});

describe('likely objections', () => {
  it('are none to a case that has everything but a paper with a page', () => {
    expect(raised(caseOf())).toEqual([]);
  });

  it('have at least 25 rules, each with its words, and each is tried here', () => {
    expect(rules.length).toBeGreaterThanOrEqual(25);
    expect(Object.keys(cases).sort()).toEqual(rules.map(({ rule }) => rule).sort());
    for (const { rule } of rules)
      expect([rule, hasWords(`objection.${rule}`), hasWords(`objection.${rule}.answer`)]).toEqual([
        rule,
        true,
        true,
      ]);
  });

  it.each(Object.entries(cases))('%s', (rule, make) => {
    expect(raised(make())).toContain(rule);
  });

  it.each(Object.entries(cases))('%s is said in both languages with what it is about', (rule, make) => {
    const found = objectionsTo(make()).find((each) => each.rule === rule);
    for (const locale of ['en', 'es'] as const)
      for (const key of [`objection.${rule}`, `objection.${rule}.answer`]) {
        const sentence = say(locale, key, found?.params ?? {});
        expect(sentence).toMatch(/^[A-ZÁÉÍÓÚÑ0-9].*[.]$/u);
        // Nothing left empty, no code in place of a word.
        expect(sentence).not.toMatch(/undefined|NaN|\{|\}|“”|«»|\(\)|  /u);
      }
  });

  it('takes no photo of after the work began for one of before, though it came with the strike report', () => {
    const withPhoto = (takenAt: string | null): boolean =>
      raised(caseOf(body('strike', { photos: [photo('scale', takenAt, 'a1')] }))).includes(
        'no-photo-before-repair',
      );
    // Work begins at minute 60.
    expect([withPhoto(at(35)), withPhoto(null), withPhoto(at(90))]).toEqual([false, false, true]);
  });

  it('asks no call for hours that were rounded to steps and not brought to a minimum', () => {
    const inSteps = (minutes: number, minimumHours: string | null) =>
      raised(
        caseOf(
          {
            ...body('strike', { calledOutAt: null }),
            ...body('repair', { crew: [crew('w-1', 'mechanic', [hour(60, 60 + minutes)])] }),
          },
          {},
          {
            payRules: [
              {
                ...premium,
                otherHours: { ...premium.otherHours, minimumHours },
                increment: { minutes: 15, toward: 'up', of: 'call' },
              },
            ],
            labor: [{ ...labor('mechanic', '40.00'), payRulesId: 'p' }],
          },
        ),
      ).includes('minimum-without-call');
    expect([inSteps(115, null), inSteps(115, '1'), inSteps(115, '3')]).toEqual([false, false, true]);
  });

  it('puts of a best figure no more at stake than what it is above the low one', () => {
    const [found] = objectionsTo(cases['water-best-figure-chosen']!()).filter(
      ({ rule }) => rule === 'water-best-figure-chosen',
    );
    // 30.1 thousand gallons at $6.00 are $180.60; (1 - 25.8 / 30.1) of it is $25.80.
    expect(found).toMatchObject({ atStakeCents: 25_80, params: { figure: 'best', percent: 117 } });
  });

  it('rank by the money at stake, never more than the demand', () => {
    const audited = caseOf({
      ...party({ police: null }),
      ...body('repair', {
        parts: repair().parts.map((each) => ({ ...each, source: { from: 'stock', issueSlip: null } })),
      }),
    });
    // 2 h × 40 + 2 h × 25 + 400: all of it without a crash report, 400 without the slip.
    expect(objectionsTo(audited).map(({ rule, atStakeCents }) => [rule, atStakeCents])).toEqual([
      ['no-crash-report', 530_00],
      ['part-without-paper', 400_00],
    ]);
  });

  it('those with no money at stake come last, in the order in which a reader meets them', () => {
    const audited = caseOf({
      ...party({ police: null }),
      ...body('strike', { photos: [photo('overall', at(35), 'a1')] }),
      'flow-test': null,
      ...body('repair', {
        parts: repair().parts.map((each) => ({ ...each, source: { from: 'stock', issueSlip: null } })),
      }),
    });
    expect(objectionsTo(audited).map(({ rule, atStakeCents }) => [rule, atStakeCents])).toEqual([
      ['no-crash-report', 530_00],
      ['part-without-paper', 400_00],
      ['no-scale-in-photos', 0],
      ['no-flow-test-before', 0],
    ]);
  });

  it('ask for a correction of the record that they are about, and for a new one where there is none', () => {
    const of = (audited: AuditCase, wanted: string) =>
      objectionsTo(audited).find(({ rule }) => rule === wanted)?.corrects;
    const ids = ({ facts }: AuditCase, kind: FactKind) =>
      facts.flatMap(({ fact: each }) => (each.kind === kind ? [each.submissionId] : []));
    // The first of two repairs has the machine that nobody ran, the second the hours.
    const machineAlone = { ...repair(), crew: [], parts: [] };
    const two = caseOf({
      repair: [
        {
          ...machineAlone,
          machines: machineAlone.machines.map((each) => ({ ...each, operatorWorkerId: null })),
        },
        { ...repair(), machines: [] },
      ],
    });
    const [first, second] = ids(two, 'repair');
    expect(of(two, 'machine-without-operator')).toEqual([first]);
    const late = { ...two, strike: { ...two.strike, returnedAt: at(120) } };
    expect(of(late, 'work-after-return')).toEqual([second]);
    const noFinding = cases['no-findings-recorded']!();
    expect(of(noFinding, 'no-findings-recorded')).toEqual(ids(noFinding, 'strike'));
    // Papers are added beside each other, and with no party there is none to correct.
    expect(of(cases['no-scale-in-photos']!(), 'no-scale-in-photos')).toEqual([]);
    expect(of(cases['nobody-known']!(), 'nobody-known')).toEqual([]);
  });

  it('ask nobody who ran a machine that the rate book says works alone', () => {
    const board = (unattended: boolean) =>
      caseOf(
        body('repair', {
          machines: repair().machines.map((each) => ({
            ...each,
            operatorWorkerId: null,
            inUse: [hour(60, 420)],
          })),
        }),
        {},
        { machines: [{ ...machine('truck', 'hour', '6.80'), unattended }] },
      );
    expect(raised(board(false))).toEqual(['machine-without-operator', 'machine-above-crew']);
    // Its hours past those of the crew are still asked about, as what they are.
    expect(objectionsTo(board(true)).map(({ rule, params }) => [rule, params['unattended']])).toEqual([
      ['machine-above-crew', 'yes'],
    ]);
  });

  it('two clocks of a photo are told as two times alike', () => {
    const found = objectionsTo(cases['camera-clock-differs']!()).find(
      ({ rule }) => rule === 'camera-clock-differs',
    );
    const { cameraTime, takenAt } = found?.params ?? {};
    expect([cameraTime, takenAt]).toEqual([
      expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
      expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
    ]);
  });

  it('a police report among the papers answers only with its number', () => {
    const paper = (number: string | null) =>
      caseOf({
        ...party({ police: null }),
        documents: {
          documents: [
            {
              ...photo('overall', null, 'd4'),
              view: 'document' as const,
              mediaType: 'application/pdf' as const,
              what: 'police-report' as const,
              title: 'Crash report',
              number,
            },
          ],
        },
      });
    expect(raised(paper(null))).toContain('no-crash-report');
    expect(raised(paper('2026-04711'))).not.toContain('no-crash-report');
  });

  it('keep the last answer to each, by name', () => {
    const audited = caseOf(party({ police: null }));
    const answers = [
      fact('objection-answer', 900, onClaim(4), { objection: 'no-crash-report', answer: 'accepted' }),
      fact('objection-answer', 901, onClaim(4), {
        objection: 'no-crash-report',
        answer: 'answered',
        reason: 'It came by post.',
      }),
    ];
    const { facts } = effectiveFacts(answers.map((each) => recorded(each)));
    expect(withAnswers(objectionsTo(audited), facts)[0]?.answered).toMatchObject({
      answer: 'answered',
      reason: 'It came by post.',
      personId: 'w-7',
    });
  });
});
