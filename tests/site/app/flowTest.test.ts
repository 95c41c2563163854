import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METRIC_PER_US_CONSTANT, sayDiffuserConstant } from '../../../shared/hydraulics/diffuser.ts';
import { standardFlowTestSettings } from '../../../shared/hydraulics/flowTestSettings.ts';
import type { Problem } from '../../../shared/problems/problem.ts';
import { forms } from '../../../shared/submissions/kinds.ts';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { decode } from '../../../site/src/app/form/decode.ts';
import { describe as describeBody } from '../../../site/src/app/form/describe.ts';
import { encode } from '../../../site/src/app/form/encode.ts';
import { readingsOf, typedHistory, type TypedTest } from '../../../site/src/app/form/flowTestTyped.ts';
import { locateEntry } from '../../../site/src/app/form/locateEntry.ts';
import type { Values } from '../../../site/src/app/form/nodes.ts';
import { readNumber, writePercent } from '../../../site/src/app/form/number.ts';
import { flowTestSpec as spec } from '../../../site/src/app/form/specs/flowTest.ts';
import { sentenceFor } from '../../../site/src/app/form/view/sentences.ts';
import { wording } from '../../../site/src/app/core/words.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

const zone = 'America/New_York';
/** Its instant as the form writes instants. */
const sample = { ...sampleBodies['flow-test'], testedAt: '2026-03-04T05:20:00.000Z' };
const psi = (text: string) => ({ text, unit: 'psi' as const });
const hose: Values = {
  kind: 'hose',
  diameterIn: { text: '2.5', unit: 'in' },
  coefficient: '0.8',
  shape: 'square',
  pitotPsi: psi('28'),
};
const typed = (outlets: Values[], more: Values = {}): Values => ({
  residualHydrantId: 'H-1',
  staticPsi: psi('86'),
  residualPsi: psi('42'),
  _method: 'pitot',
  flowHydrants: [{ hydrantId: 'H-2', outlets }],
  targetResidualPsi: psi('20'),
  testedAt: '2026-03-04T10:00',
  testedByWorkerIds: ['w-1'],
  purpose: 'routine',
  gauges: [],
  ...more,
});
const problems = (values: Values): readonly Problem[] => {
  const checked = checkForm(spec, values, zone);
  return checked.ok ? [] : checked.problems;
};
const sentences = (values: Values, system: 'us' | 'metric'): string[] =>
  problems(values).map((found) =>
    sentenceFor(
      locateEntry(spec.nodes, values, found.path)?.entry ?? null,
      found,
      wording({ locale: 'en', system }, zone),
    ),
  );

describe('a stored test', () => {
  it('of before shapes, bases and gauges were asked reads on, and a correction adds nothing to it', () => {
    const old = forms['flow-test'].body.parse(sample);
    const values = { ...decode(spec.nodes, old, zone), ...spec.steering?.({ ...old }) };
    expect(checkForm(spec, values, zone)).toEqual({ ok: true, body: old });
  });

  it('with everything that is asked now comes back to the last digit', () =>
    fc.assert(
      fc.property(
        // As it is typed: up to four decimals of a percent.
        fc.integer({ min: 1, max: 200_000 }).map((typedDigits) => typedDigits / 10_000 / 100),
        fc.double({ min: 1, max: 2000, noNaN: true }),
        (accuracyFraction, kGpmPerSqrtPsi) => {
          const body = forms['flow-test'].body.parse({
            ...sample,
            flowHydrants: [
              {
                hydrantId: 'H-2',
                outlets: [
                  { kind: 'diffuser', kGpmPerSqrtPsi, pitotPsi: 40, accuracyFraction, gaugeId: 'g-1' },
                  { kind: 'meter', flowGpm: 500 },
                  {
                    kind: 'pumper',
                    shape: 'projecting',
                    diameterIn: 4.05,
                    diameterBasis: 'measured',
                    coefficient: 0.7,
                    pitotPsi: 9,
                  },
                ],
              },
            ],
            gauges: [
              {
                gaugeId: 'g-1',
                reads: ['pitot'],
                rangePsi: 60,
                accuracyFraction,
                resolutionPsi: 0.5,
                calibratedOn: null,
              },
            ],
          });
          const values = { ...decode(spec.nodes, body, zone), ...spec.steering?.({ ...body }) };
          const again = checkForm(spec, values, zone);
          expect(again).toEqual({ ok: true, body });
        },
      ),
    ));

  it('is told in words, each outlet by what was read', () => {
    const { body } = encode(
      spec.nodes,
      typed([
        {
          kind: 'diffuser',
          kGpmPerSqrtPsi: { text: '144', system: 'metric' },
          pitotPsi: psi('40'),
          accuracyFraction: '3',
        },
      ]),
      {
        zone,
        nullable: [],
      },
    );
    const said = JSON.stringify(
      describeBody('flow-test', spec.nodes, body, wording({ locale: 'en', system: 'us' }, zone)),
    );
    expect(said).toContain('9.99 gpm/√psi');
    expect(said).toContain('"3%"');
  });
});

describe('what is typed', () => {
  it('in percent is kept as a share', () => {
    expect(writePercent(0.02)).toBe('2');
    expect(writePercent(0.07)).toBe('7');
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        (share) =>
          // Within a unit in the last place; what people type has far fewer digits and comes back as typed.
          Math.abs((readNumber(writePercent(share)) ?? Number(writePercent(share))) / 100 - share) <=
          share * 2e-16,
      ),
    );
  });

  it('has a metric K 14.4 times the US one (NFPA 13, from memory)', () => {
    expect(METRIC_PER_US_CONSTANT).toBeCloseTo(14.4, 1);
    expect(sayDiffuserConstant(10, { system: 'metric', locale: 'en' })).toBe('144.16 L/min/√bar');
    expect(sayDiffuserConstant(10, { system: 'us', locale: 'en' })).toBe('10 gpm/√psi');
  });

  it('needs a shape or a coefficient, and every reading of its kind', () => {
    const at = (values: Values): string[] => problems(values).map(({ path }) => path);
    expect(at(typed([{ ...hose, coefficient: '', shape: '' }]))).toEqual([
      'flowHydrants.0.outlets.0.coefficient',
    ]);
    expect(at(typed([{ kind: 'diffuser', pitotPsi: psi('40') }]))).toEqual([
      'flowHydrants.0.outlets.0.kGpmPerSqrtPsi',
    ]);
    expect(at(typed([{ ...hose, kind: 'meter' }]))).toEqual(['flowHydrants.0.outlets.0.flowGpm']);
    expect(at(typed([{ ...hose, gaugeId: 'G-9' }]))).toEqual(['flowHydrants.0.outlets.0.gaugeId']);
    expect(at(typed([hose]))).toEqual([]);
  });

  it('is refused with limits that the reader can type', () => {
    // 300 psi is 2,068.4 kPa and 1 in is 25.4 mm (NIST SP 811, second-hand): rounded inward, never outward.
    const values = typed([{ ...hose, diameterIn: { text: '5', unit: 'mm' } }], {
      staticPsi: { text: '4000', unit: 'kPa' },
      gauges: [
        {
          gaugeId: 'g',
          rangePsi: psi('100'),
          accuracyFraction: '40',
          resolutionPsi: psi('30'),
          calibratedOn: '',
        },
      ],
    });
    const metric = sentences(values, 'metric').join('\n');
    expect(metric).toContain('2,068 kPa or less');
    expect(metric).toContain('25.4 mm or more');
    expect(metric).toContain('20% or less');
    expect(metric).toContain('137 kPa or less');
    expect(metric).not.toMatch(/\bpsi\b| in\b/);
    expect(sentences(values, 'us').join('\n')).toContain('300 psi or less');
  });
});

describe('the answer while one types', () => {
  const settings = standardFlowTestSettings;
  const around = { submissionId: 'new', now: '2026-03-04T15:00:00Z', zone, settings };
  const bodyOf = (values: Values): TypedTest => encode(spec.nodes, values, { zone, nullable: [] }).body;
  const recorded = (submissionId: string, testedAt: string) => ({
    recordedAt: testedAt,
    submission: {
      kind: 'flow-test',
      submissionId,
      body: { ...sampleBodies['flow-test'], testedAt, staticPsi: 60, residualPsi: 42 },
    },
  });

  it('waits for every reading, and not for a half-written gauge', () => {
    expect(readingsOf(bodyOf(typed([hose, { kind: 'hose' }])))).toBeNull();
    expect(readingsOf(bodyOf(typed([{ ...hose, coefficient: '' }])))).toBeNull();
    expect(readingsOf(bodyOf(typed([hose], { gauges: [{ gaugeId: 'g' }] })))?.gauges).toEqual([]);
  });

  it('knows the last test, and never takes itself for it', () => {
    const readings = readingsOf(bodyOf(typed([hose])))!;
    const tests = [
      recorded('before', '2024-03-04T15:00:00Z'),
      recorded('itself', '2026-03-04T15:00:00Z'),
    ] as never;
    const entry = typedHistory(readings, tests, around);
    expect(entry?.change?.fromTestId).toBe('before');
    expect(entry?.result?.warnings.map(({ code }) => code)).toContain('static-jumped');
    expect(typedHistory(readings, [], around)?.change).toBeNull();
  });
});
