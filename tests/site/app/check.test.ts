import { describe, expect, it } from 'vitest';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { locateEntry } from '../../../site/src/app/form/locateEntry.ts';
import { specOf } from '../../../site/src/app/form/specs/index.ts';
import type { FormSpec } from '../../../site/src/app/form/spec.ts';
import type { Values } from '../../../site/src/app/form/nodes.ts';
import { sentenceFor } from '../../../site/src/app/form/view/sentences.ts';
import { wording } from '../../../site/src/app/core/words.ts';

const zone = 'America/New_York';
const spec = (kind: string): FormSpec => specOf(kind)!;
const problems = (kind: string, values: Values): string[] => {
  const checked = checkForm(spec(kind), values, zone);
  return checked.ok ? [] : checked.problems.map(({ path, code }) => `${path} ${code}`).sort();
};
const body = (kind: string, values: Values): Record<string, unknown> => {
  const checked = checkForm(spec(kind), values, zone);
  if (!checked.ok) throw new Error(JSON.stringify(checked.problems));
  return checked.body;
};

describe('a strike in a hurry', () => {
  it('is whole with a hydrant and nothing else', () => {
    const sent = body('strike', { hydrantId: 'TH-0001', 'dispatch.toldByWorkerId': 'w-101' });
    expect(sent).toMatchObject({
      hydrantId: 'TH-0001',
      found: null,
      dispatch: null,
      hazards: [],
      photos: [],
    });
    expect(sent['reportedBy']).toEqual({ source: 'unknown', name: null, phone: null, reportedAt: null });
  });

  it('asks for a hydrant, a position or words', () => {
    expect(problems('strike', {})).toEqual(['hydrantId hydrant-or-place']);
    expect(problems('strike', { placeDescription: 'by the pier' })).toEqual([]);
  });

  it('takes a position with either minus sign, of both of its numbers', () => {
    const typed = { latitude: '−40.5', longitude: '−60.25', accuracyM: null };
    expect(body('strike', { position: typed })['position']).toEqual({
      latitudeDeg: -40.5,
      longitudeDeg: -60.25,
      accuracyM: null,
    });
  });

  it('takes what was seen and leaves the rest unknown', () => {
    const { found } = body('strike', {
      hydrantId: 'A',
      'found.flow': 'jet',
      'found.jetHeightIn': { text: '66', unit: 'in' },
    });
    expect(found).toEqual({
      flow: 'jet',
      jetHeightIn: 66,
      throwDistanceIn: null,
      openingDiameterIn: null,
      breakawayFlangeParted: 'unknown',
      stemCouplingParted: 'unknown',
      nozzleSection: 'unknown',
      lowerBarrel: 'unknown',
      belowGrade: 'unknown',
      isolationValve: 'not-tried',
      mainValve: 'unknown',
    });
  });

  it('sends no height that was typed before "no water" was chosen', () => {
    const { found } = body('strike', {
      hydrantId: 'A',
      'found.flow': 'none',
      'found.jetHeightIn': { text: '66', unit: 'in' },
    });
    expect(found).toMatchObject({ flow: 'none', jetHeightIn: null });
  });

  it('asks when dispatch was told once it is said who took the message', () => {
    const values: Values = {
      hydrantId: 'A',
      'dispatch.toldByWorkerId': 'w-1',
      'dispatch.takenBy': 'Rosa',
    };
    const checked = checkForm(spec('strike'), values, zone);
    const [found] = checked.ok ? [] : checked.problems;
    expect(found?.path).toBe('dispatch.at');
    const entry = locateEntry(spec('strike').nodes, values, 'dispatch.at')!.entry;
    expect(sentenceFor(entry, found!, wording({ locale: 'es', system: 'us' }, zone))).toBe(
      'Indique la fecha y la hora.',
    );
  });
});

describe('every problem at once, at the row where it was typed', () => {
  it('finds them in nested rows', () => {
    const interval = (from: string, to: string): Values => ({ from, to });
    expect(
      problems('repair', {
        crew: [
          {
            workerId: 'w-1',
            laborClass: 'lead',
            work: [interval('2026-03-04T08:00', '2026-03-04T10:00')],
            breaks: [],
          },
          {
            workerId: '',
            laborClass: '',
            work: [interval('2026-03-04T10:00', '2026-03-04T08:00'), interval('?', '2026-03-08T02:30')],
            breaks: [],
          },
        ],
        parts: [
          {
            partNumber: 'K',
            description: 'Kit',
            quantity: 'two',
            'source.from': 'invoice',
            'source.unitPriceCents': '1.234',
          },
        ],
        machines: [],
        contractors: [],
        steps: [],
      }),
    ).toEqual(
      [
        'crew.1.laborClass required',
        'crew.1.work.0.to interval-ends-before-start',
        'crew.1.work.1.from time-incomplete',
        'crew.1.work.1.to time-skipped',
        'crew.1.workerId required',
        'parts.0.quantity not-a-number',
        'parts.0.source.invoiceNumber required',
        'parts.0.source.supplier required',
        'parts.0.source.unitPriceCents not-an-amount',
      ].sort(),
    );
  });

  it('counts rows as they stand on the screen, not as they are sent', () => {
    const proof = (name: string, more: Values): Values => ({ proof: name, ...more });
    const values: Values = {
      closes: ['01900000-0000-7000-8000-000000000000'],
      returnedAt: '2026-03-04T08:00',
      proofs: [
        proof('no-leaks', { result: '' }),
        proof('flow-test', { result: 'deferred', at: '2026-03-04T08:00', byWorkerId: 'w-1' }),
      ],
    };
    expect(problems('return-to-service', values)).toEqual([
      'proofs.1.deferredByWorkerId deferred-needs-name',
      'proofs.1.deferredReason deferred-needs-reason',
    ]);
  });

  it('leads to the field, through its rows', () => {
    const values: Values = { crew: [{ work: [{}] }, { work: [{}, {}] }] };
    const found = locateEntry(spec('repair').nodes, values, 'crew.1.work.0.to');
    expect(found?.path).toBe('crew.1.work.0.to');
    expect(found?.rows.map(({ path, number }) => [path, number])).toEqual([
      ['crew.1', 2],
      ['crew.1.work.0', 1],
    ]);
    expect(locateEntry(spec('strike').nodes, {}, 'position.latitudeDeg')?.path).toBe('position');
    expect(locateEntry(spec('strike').nodes, {}, 'nonsense')).toBeNull();
  });
});

describe('a flow test typed in metric', () => {
  // 593 kPa = 86.0075 psi, 289.6 kPa = 42.0029 psi, 193 kPa = 27.9923 psi (1 psi = 6.894757 kPa, NIST SP 811, second-hand);
  // 63.5 mm = 2.5 in exactly.
  const metric: Values = {
    residualHydrantId: 'A',
    staticPsi: { text: '593', unit: 'kPa' },
    residualPsi: { text: '289.6', unit: 'kPa' },
    _method: 'pitot',
    flowHydrants: [
      {
        hydrantId: 'B',
        outlets: [
          {
            kind: 'hose',
            diameterIn: { text: '63.5', unit: 'mm' },
            coefficient: '0.9',
            pitotPsi: { text: '193', unit: 'kPa' },
          },
        ],
      },
    ],
    targetResidualPsi: { text: '20', unit: 'psi' },
    testedAt: '2026-03-04T08:00',
    testedByWorkerIds: ['w-1'],
    purpose: 'routine',
  };

  it('is stored in the units that the names say', () => {
    const sent = body('flow-test', metric) as {
      staticPsi: number;
      residualPsi: number;
      flowHydrants: { outlets: { diameterIn: number; pitotPsi: number }[] }[];
    };
    expect(sent.staticPsi).toBeCloseTo(86.0075, 3);
    expect(sent.residualPsi).toBeCloseTo(42.0029, 3);
    expect(sent.flowHydrants[0]?.outlets[0]?.pitotPsi).toBeCloseTo(27.9923, 3);
    expect(sent.flowHydrants[0]?.outlets[0]?.diameterIn).toBe(2.5);
  });

  it('is told its limits in the same units', () => {
    const checked = checkForm(
      spec('flow-test'),
      { ...metric, staticPsi: { text: '5000', unit: 'kPa' } },
      zone,
    );
    expect(checked.ok).toBe(false);
    const found = checked.ok ? undefined : checked.problems.find(({ path }) => path === 'staticPsi');
    const entry = locateEntry(spec('flow-test').nodes, metric, 'staticPsi')!.entry;
    // 300 psi = 2,068.4 kPa.
    expect(sentenceFor(entry, found!, wording({ locale: 'en', system: 'metric' }, zone))).toBe(
      'This must be 2,068 kPa or less.',
    );
    expect(sentenceFor(entry, found!, wording({ locale: 'es', system: 'us' }, zone))).toContain('300 psi');
  });

  it('sends the metered flow and no outlets when that was chosen', () => {
    const sent = body('flow-test', {
      ...metric,
      _method: 'meter',
      measuredFlowGpm: { text: '3000', unit: 'L/min' },
    });
    // 3,000 L/min = 792.516 US gpm (1 gpm = 3.785412 L/min, NIST SP 811).
    expect(sent['measuredFlowGpm']).toBeCloseTo(792.516, 2);
    expect(sent['flowHydrants']).toEqual([]);
  });
});

describe('sentences beside fields', () => {
  const words = wording({ locale: 'en', system: 'us' }, zone);
  it.each([
    ['outage', 'cause', 'required', 'Choose one.'],
    ['outage', 'since', 'required', 'Give the date and time.'],
    ['repair', 'crew.0.workerId', 'required', 'Fill this in.'],
    ['flow-test', 'testedByWorkerIds', 'too-few', 'Give at least one person.'],
    [
      'claim-opened',
      'claimNumber',
      'format-regex',
      'Write the year, a hyphen and four to six digits, like 2026-0007.',
    ],
  ])('%s %s %s', (kind, path, code, sentence) => {
    const entry = locateEntry(spec(kind).nodes, { crew: [{}] }, path)!.entry;
    expect(sentenceFor(entry, { code, path, params: {} }, words, `field.${kind}.${path}`)).toBe(sentence);
  });
});
