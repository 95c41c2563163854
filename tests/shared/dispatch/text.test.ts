import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { segmentsOf, toGsm7 } from '../../../shared/dispatch/gsm7.ts';
import type { DispatchNotice, NearbyHydrant } from '../../../shared/dispatch/notice.ts';
import { readerFor } from '../../../shared/dispatch/reader.ts';
import { referenceOf } from '../../../shared/dispatch/reference.ts';
import { noticeEmail, noticeText } from '../../../shared/dispatch/text.ts';
import { outageCauses } from '../../../shared/submissions/forms/outage.ts';

const near = (n: number, more: Partial<NearbyHydrant> = {}): NearbyHydrant => ({
  hydrantId: `TH-035${n}`,
  place: `Quarry Rd ${n}`,
  distanceFt: 400 + n * 130,
  bearing: 'NE',
  className: 'A',
  ratedFlowGpm: 1240,
  testedOn: '2025-05-14',
  private: false,
  ...more,
});

const notice = (
  more: Partial<DispatchNotice> = {},
  facts: Partial<DispatchNotice['facts']> = {},
): DispatchNotice => ({
  subject: 'hydrant:TH-0348',
  number: 1,
  what: 'out',
  reference: 'HK 4728',
  outageIds: ['s-1'],
  // 14:05 in New York, in winter five hours behind UTC.
  at: '2026-11-25T19:05:00Z',
  madeAt: '2026-11-25T19:07:00Z',
  confirmedFrom: '2026-11-25T19:05:00Z',
  held: null,
  day: '2026-11-25',
  to: ['floor'],
  asked: [],
  facts: {
    hydrantId: 'TH-0348',
    place: 'Quince St at Mill Rd',
    position: { latitudeDeg: 41.123456, longitudeDeg: -70.654321 },
    cause: 'strike',
    since: '2026-11-25T19:05:00Z',
    expectedAt: null,
    returnedAt: null,
    notShown: [],
    nearest: [
      near(1),
      near(2, { bearing: 'S', className: null, ratedFlowGpm: null, testedOn: null }),
      near(3),
      near(4),
    ],
    maybe: [],
    instead: null,
    ...facts,
  },
  ...more,
});
const us = readerFor(demoUtility, 'en');

describe('the text', () => {
  it('says what, where, when, what stands near by, the reference and whom to call, in two messages', () => {
    const text = noticeText(notice(), us);
    expect(text).toBe(
      'Tansy Harbor Water Department: HYDRANT OUT OF SERVICE: TH-0348, Quince St at Mill Rd. ' +
        'Struck by a vehicle, 14:05 EST Wed, Nov 25. Nearest in service, straight line: ' +
        'TH-0351 530 ft northeast, class A 1,240 gpm; TH-0352 660 ft south; TH-0353 790 ft northeast, class A 1,240 gpm. ' +
        'Ref HK 4728. Call 555-0100.',
    );
    expect(segmentsOf(text)).toBe(2);
  });

  it('in Spanish and in metres where that is how they read', () => {
    const text = noticeText(notice(), readerFor({ ...demoUtility, units: 'metric' }, 'es'));
    expect(text).toContain('HIDRANTE FUERA DE SERVICIO: TH-0348');
    // 530 ft is 161.5 m.
    expect(text).toContain('TH-0351 162 m noreste, clase A 4,694 L/min');
    expect(text).toContain('Mas cercanos en servicio, en linea recta');
    expect(text).toMatch(/Ref HK 4728\. Llame al 555-0100\.$/);
    expect(segmentsOf(text)).toBeLessThanOrEqual(2);
  });

  it('in one message names the nearest and keeps the reference and the number', () => {
    const text = noticeText(notice(), { ...us, textSegments: 1 });
    expect(segmentsOf(text)).toBe(1);
    expect(text).toContain('HYDRANT OUT OF SERVICE: TH-0348');
    expect(text).toMatch(/Ref HK 4728\. Call 555-0100\.$/);
  });

  it('of a correction and of a return', () => {
    expect(
      noticeText(
        notice({ what: 'corrected' }, { instead: { hydrantId: 'TH-0007', reference: 'MR 2838' } }),
        us,
      ),
    ).toBe(
      'Tansy Harbor Water Department: CORRECTION: hydrant TH-0348, Quince St at Mill Rd is NOT out of service. ' +
        'It was reported by mistake. Out of service instead: TH-0007, ref MR 2838. Ref HK 4728. Call 555-0100.',
    );
    expect(noticeText(notice({ what: 'back' }, { notShown: ['flow-test', 'drains-down'] }), us)).toBe(
      'Tansy Harbor Water Department: HYDRANT BACK IN SERVICE: TH-0348, Quince St at Mill Rd. ' +
        'Since 14:05 EST Wed, Nov 25. Not tested again: flow, draining down. Ref HK 4728. Call 555-0100.',
    );
  });

  it('whatever the names are, stays in the alphabet and in its messages, and ends with whom to call', () => {
    const anyText = fc.string({ unit: 'grapheme', maxLength: 200 });
    fc.assert(
      fc.property(
        fc.constantFrom('out' as const, 'back' as const, 'corrected' as const),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom('en' as const, 'es' as const),
        anyText,
        anyText,
        fc.string({ unit: 'grapheme', minLength: 1, maxLength: 64 }),
        fc.string({ minLength: 3, maxLength: 40, unit: 'grapheme-ascii' }),
        (what, textSegments, locale, place, utilityName, hydrantId, callBack) => {
          const given = notice({ what }, { place, hydrantId, instead: { hydrantId, reference: 'MR 2838' } });
          const text = noticeText(given, { ...us, textSegments, locale, utilityName, callBack });
          // `segmentsOf` throws for a sign outside the alphabet.
          expect(segmentsOf(text)).toBeLessThanOrEqual(textSegments);
          expect(text.endsWith(`${toGsm7(callBack)}.`)).toBe(true);
          expect(text).toContain('HK 4728');
        },
      ),
      { numRuns: 400 },
    );
  });

  it.each([...outageCauses, 'strike', 'valve-closed'])('has words for the cause %s', (cause) => {
    for (const locale of ['en', 'es'] as const) {
      const text = noticeText(notice({}, { cause }), readerFor(demoUtility, locale));
      expect(text).not.toContain('[');
    }
  });
});

describe('the email', () => {
  it('says the same with all that a text has no room for', () => {
    const { subject, text } = noticeEmail(notice(), { ...us, publicUrl: 'https://water.example/' });
    expect(subject).toBe('Hydrant out of service: TH-0348, Quince St at Mill Rd (ref HK 4728)');
    for (const line of [
      'HYDRANT OUT OF SERVICE. Do not rely on TH-0348, Quince St at Mill Rd.',
      'Position (WGS 84): 41.12346, -70.65432',
      'Cause: Struck by a vehicle',
      'Since: 14:05 EST Wed, Nov 25',
      'Expected back: not known yet',
      '  - TH-0351, Quarry Rd 1 - 530 ft northeast - class A, 1,240 gpm - tested May 14, 2025',
      '  - TH-0352, Quarry Rd 2 - 660 ft south - not rated',
      'Distances are straight lines over ground; hose lies longer. Flows are those on record, dated where a test gave them.',
      'Reference: HK 4728',
      'Every hydrant that is out of service: https://water.example/',
    ])
      expect(text.split('\n')).toContain(line);
    expect(text).toContain('at 555-0100 and say that you have taken this');
  });

  it('says that it knows none near by', () => {
    expect(noticeEmail(notice({}, { nearest: [] }), us).text).toContain(
      'No hydrant in service is known near by.',
    );
  });

  it('has one line as its subject, whatever the place is called', () => {
    const { subject } = noticeEmail(notice({}, { place: 'Quince St\r\nBcc: everyone@example.com' }), us);
    expect(subject).not.toMatch(/[\r\n]/);
  });
});

describe('the reference', () => {
  it('is the same for the same outage, and sayable', () => {
    expect(referenceOf('hydrant:A', 's-1')).toBe(referenceOf('hydrant:A', 's-1'));
    for (let n = 0; n < 2000; n += 1)
      expect(referenceOf('hydrant:A', `s-${n}`)).toMatch(/^[AFHKMRWXY]{2} [234678]{4}$/);
  });

  it('is spread: of 400 outages few share one', () => {
    const all = Array.from({ length: 400 }, (_, n) => referenceOf(`hydrant:H-${n % 60}`, `s-${n}`));
    // 104,976 of them: by the birthday problem 400 draws share 0.76 on average (400 × 399 / 2 / 104,976).
    expect(400 - new Set(all).size).toBeLessThan(6);
  });
});
