import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../shared/hydraulics/card.ts';
import { availableFlowGpm, residualAtFlowPsi } from '../../../shared/hydraulics/availableFlow.ts';
import { evaluateFlowTest } from '../../../shared/hydraulics/evaluateFlowTest.ts';
import {
  flowTestInput,
  flowTestProblems,
  type FlowTestInput,
} from '../../../shared/hydraulics/flowTestInput.ts';
import { standardFlowTestSettings } from '../../../shared/hydraulics/flowTestSettings.ts';
import { warningCodes, type WarningCode } from '../../../shared/hydraulics/flowTestWarnings.ts';
import { classBand, hydrantClassOf, standardBands } from '../../../shared/hydraulics/hydrantClass.ts';
import { outletFlowGpm } from '../../../shared/hydraulics/outletFlow.ts';
import { pumperFactor } from '../../../shared/hydraulics/pumperOutlet.ts';
import type { TestGauge } from '../../../shared/hydraulics/testGauge.ts';
import { sayWarning } from '../../../shared/hydraulics/sayWarning.ts';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';

const good: FlowTestInput = {
  staticPsi: 86,
  residualPsi: 42,
  outlets: [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
};
const codes = (input: FlowTestInput): WarningCode[] =>
  evaluateFlowTest(input).warnings.map(({ code }) => code);
const outlet = { diameterIn: 2.5, coefficient: 0.9, pitotPsi: 20 };
const fine: FlowTestInput['gauges'] = [
  {
    gaugeId: 'G-1',
    reads: ['static', 'residual'],
    rangePsi: 100,
    accuracyFraction: 0.005,
    resolutionPsi: 0.5,
  },
];
const last = { testedOn: '2024-05-06', staticPsi: 84, residualPsi: 40, measuredFlowGpm: 600 };
const withGauge = (more: Partial<TestGauge>): FlowTestInput => ({
  ...good,
  testedOn: '2026-03-04',
  gauges: [{ gaugeId: 'G-1', reads: ['static', 'residual'], rangePsi: 200, ...more }],
});

describe('warnings: given a test, the doubts it raises', () => {
  it.each<[string, FlowTestInput, WarningCode[]]>([
    ['a good test', good, []],
    ['a drop of 9 %', { ...good, staticPsi: 80, residualPsi: 72.8 }, ['drop-too-small']],
    // Enough to rate by the rule, and still the interval is 26 % down and 35 % up.
    ['a drop of exactly 10 %', { ...good, staticPsi: 80, residualPsi: 72 }, ['capacity-uncertain']],
    ['the same with fine gauges', { ...good, staticPsi: 80, residualPsi: 72, gauges: fine }, []],
    ['residual 19.9', { ...good, residualPsi: 19.9 }, ['residual-below-rating']],
    ['residual 20', { ...good, residualPsi: 20 }, []],
    ['static 30', { ...good, staticPsi: 30, residualPsi: 22 }, ['capacity-uncertain', 'static-weak']],
    ['static 40', { ...good, staticPsi: 40, residualPsi: 30 }, []],
    [
      'static 30, rated at half',
      { ...good, staticPsi: 30, residualPsi: 22, ratingRule: 'half-static-when-weak' },
      ['capacity-uncertain', 'rated-at-half-static'],
    ],
    [
      'static 18',
      { ...good, staticPsi: 18, residualPsi: 10, outlets: [{ ...outlet, pitotPsi: 12 }] },
      ['residual-below-rating', 'static-below-rating', 'static-weak'],
    ],
    ['another target', { ...good, targetResidualPsi: 30 }, ['class-not-at-target']],
    ['pitot 9.9', { ...good, outlets: [{ ...outlet, pitotPsi: 9.9 }] }, ['pitot-too-low']],
    ['pitot 10', { ...good, outlets: [{ ...outlet, pitotPsi: 10 }] }, []],
    ['pitot 30', { ...good, outlets: [{ ...outlet, pitotPsi: 30 }] }, []],
    ['pitot 30.1', { ...good, outlets: [{ ...outlet, pitotPsi: 30.1 }] }, ['pitot-too-high']],
    [
      'pitot above static',
      { ...good, outlets: [{ ...outlet, pitotPsi: 87 }] },
      ['pitot-too-high', 'pitot-above-static'],
    ],
    [
      'pumper at 6 psi',
      { ...good, outlets: [{ kind: 'pumper', diameterIn: 4.5, coefficient: 0.9, pitotPsi: 6 }] },
      [],
    ],
    [
      'pumper at 1.5 psi',
      { ...good, outlets: [{ kind: 'pumper', diameterIn: 4.5, coefficient: 0.9, pitotPsi: 1.5 }] },
      ['capacity-uncertain', 'pitot-too-low', 'pumper-pitot-below-table'],
    ],
    [
      '4½ in of no kind',
      { ...good, outlets: [{ diameterIn: 4.5, coefficient: 0.9, pitotPsi: 12 }] },
      ['outlet-may-be-pumper'],
    ],
    ['coefficient 1', { ...good, outlets: [{ ...outlet, coefficient: 1 }] }, ['coefficient-unusual']],
    ['coefficient 0.65', { ...good, outlets: [{ ...outlet, coefficient: 0.65 }] }, ['coefficient-unusual']],
    [
      'a slip of the pen',
      { ...good, outlets: Array(4).fill({ kind: 'hose', diameterIn: 12, coefficient: 0.9, pitotPsi: 20 }) },
      ['flow-implausible'],
    ],
    [
      'a diffuser above static',
      { ...good, outlets: [{ kind: 'diffuser', kGpmPerSqrtPsi: 160, pitotPsi: 90 }] },
      ['pitot-above-static'],
    ],
    ['a meter on the outlet', { ...good, outlets: [{ kind: 'meter', flowGpm: 789 }] }, []],
    [
      'the rated hydrant flowed',
      { ...good, residualHydrantId: 'H-1', outlets: [{ ...outlet, hydrantId: 'H-1' }] },
      ['flowed-at-residual-hydrant'],
    ],
    [
      'another hydrant flowed',
      { ...good, residualHydrantId: 'H-1', outlets: [{ ...outlet, hydrantId: 'H-2' }] },
      [],
    ],
    ['calibrated a year ago', withGauge({ calibratedOn: '2025-03-04' }), []],
    [
      'calibrated a year and a day ago',
      withGauge({ calibratedOn: '2025-03-03' }),
      ['gauge-out-of-calibration'],
    ],
    ['calibration not known', withGauge({ calibratedOn: null }), ['gauge-calibration-unknown']],
    ['calibrated tomorrow', withGauge({ calibratedOn: '2026-03-05' }), ['gauge-calibrated-after-test']],
    ['a needle at its end', withGauge({ rangePsi: 86 }), []],
    ['a needle past its end', withGauge({ rangePsi: 85 }), ['reading-above-gauge']],
    [
      'a pitot past its end',
      withGauge({ rangePsi: 27, reads: ['pitot'], accuracyFraction: 0.01 }),
      ['reading-above-gauge'],
    ],
    ['static 10 psi from the last', { ...good, previous: { ...last, staticPsi: 76 } }, []],
    ['static 15 psi up', { ...good, previous: { ...last, staticPsi: 71 } }, ['static-jumped']],
    ['static 14 psi down, 14 %', { ...good, previous: { ...last, staticPsi: 100 } }, []],
    [
      'static 16 psi down, 15.7 %',
      { ...good, previous: { ...last, staticPsi: 102, measuredFlowGpm: 700 } },
      ['static-jumped'],
    ],
    // By the last test 600 × (84/44)^0.54 = 850.7 gpm at zero residual (computed).
    [
      'a flow that the last test allows',
      { ...good, previous: last, outlets: undefined, measuredFlowGpm: 850 },
      [],
    ],
    [
      'a flow above the last test',
      { ...good, previous: last, outlets: undefined, measuredFlowGpm: 852 },
      ['flow-above-last-test'],
    ],
    [
      'a last test that says nothing',
      { ...good, previous: { ...last, residualPsi: 80 }, outlets: undefined, measuredFlowGpm: 5000 },
      [],
    ],
  ])('%s', (_, input, expected) => expect(codes(input)).toEqual(expected));

  it('names the outlet, counting from 1', () => {
    const { warnings } = evaluateFlowTest({ ...good, outlets: [outlet, { ...outlet, pitotPsi: 4 }] });
    expect(warnings).toEqual([
      {
        code: 'pitot-too-low',
        params: { outlet: 2, outletKind: 'hose', pitotPsi: 4, minimumPsi: 10, maximumPsi: 30 },
      },
    ]);
  });

  it('each reads as a sentence in both languages and both systems, with nothing left open', () => {
    const tests: FlowTestInput[] = [
      {
        ...good,
        staticPsi: 30,
        residualPsi: 29,
        targetResidualPsi: 10,
        outlets: [{ ...outlet, diameterIn: 5, coefficient: 1 }],
      },
      {
        ...good,
        staticPsi: 18,
        residualPsi: 10,
        outlets: [{ kind: 'pumper', diameterIn: 4, coefficient: 0.9, pitotPsi: 1 }],
      },
      { ...good, staticPsi: 30, residualPsi: 12, ratingRule: 'half-static-when-weak', targetResidualPsi: 20 },
      {
        ...good,
        staticPsi: 86,
        residualPsi: 10,
        outlets: Array(6).fill({ ...outlet, diameterIn: 12, pitotPsi: 90 }),
      },
      { ...good, residualHydrantId: 'H-1', outlets: [{ ...outlet, hydrantId: 'H-1' }], previous: last },
      { ...good, previous: { ...last, staticPsi: 120, measuredFlowGpm: 100 } },
      { ...good, staticPsi: 80, residualPsi: 72 },
      withGauge({ calibratedOn: null, rangePsi: 80 }),
      withGauge({ calibratedOn: '2020-01-01' }),
      withGauge({ calibratedOn: '2027-01-01' }),
    ];
    const warnings = tests.flatMap((test) => evaluateFlowTest(test).warnings);
    expect(new Set(warnings.map(({ code }) => code))).toEqual(new Set(warningCodes));
    for (const warning of warnings)
      for (const locale of ['en', 'es'] as const)
        for (const system of ['us', 'metric'] as const) {
          const sentence = sayWarning(warning, { locale, system });
          expect(sentence).not.toMatch(/[[\]{}]|undefined|NaN/);
          expect(sentence).toMatch(/^[A-Z].*\.$/s);
          if (system === 'metric') expect(sentence).not.toMatch(/psi|gpm|\d (in|pulg)\b/);
        }
  });

  it('pins the words that a crew reads first', () => {
    const { warnings } = evaluateFlowTest({ staticPsi: 90, residualPsi: 85, measuredFlowGpm: 1140 });
    expect(warnings.map((warning) => sayWarning(warning, { locale: 'en', system: 'us' }))).toEqual([
      'The pressure fell by only 5 psi (5.6% of static), too little to rate the hydrant: at least 9 psi (10%) is needed. Open another outlet or another hydrant and read everything again.',
    ]);
  });
});

describe('results', () => {
  it('adds outlets of several hydrants and shows each', () => {
    const { measuredFlowGpm, outlets } = evaluateFlowTest({
      ...good,
      outlets: [outlet, outlet, { kind: 'pumper', diameterIn: 4, coefficient: 0.9, pitotPsi: 10 }],
    });
    // 29.84 × 0.9 × 6.25 × √20 = 750.65; 29.84 × 0.9 × 16 × √10 × 0.83 = 1127.82 (computed with bc).
    expect(outlets.map(({ flowGpm }) => Number(flowGpm.toFixed(2)))).toEqual([750.65, 750.65, 1127.82]);
    expect(outlets.map((one) => one.pumperFactor)).toEqual([1, 1, 0.83]);
    expect(measuredFlowGpm).toBeCloseTo(750.65 * 2 + 1127.82, 1);
  });

  it('a metered flow is taken as it is', () =>
    expect(evaluateFlowTest({ staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 }).measuredFlowGpm).toBe(
      789,
    ));

  it('class is by the rating residual, whatever target is asked for', () => {
    const at0 = evaluateFlowTest({ ...good, targetResidualPsi: 0 });
    expect(at0.availableFlowGpm).toBeGreaterThan(1100);
    expect(at0.hydrantClass).toBe('B');
    expect(at0.rating).toMatchObject({ residualPsi: 20, basis: 'fixed' });
  });

  it('a static not above 20 psi has nothing at 20 psi, said as 0 and class C', () => {
    const test = evaluateFlowTest({ staticPsi: 20, residualPsi: 10, measuredFlowGpm: 300 });
    expect(test).toMatchObject({ availableFlowGpm: 0, hydrantClass: 'C', rating: { capacityGpm: 0 } });
  });

  it('rated at half the static where the rule says so', () => {
    const test = evaluateFlowTest({
      staticPsi: 30,
      residualPsi: 10,
      measuredFlowGpm: 600,
      ratingRule: 'half-static-when-weak',
    });
    expect(test.targetResidualPsi).toBe(15);
    expect(test.rating.basis).toBe('half-static');
    // 600 × (15/20)^0.54 = 513.7 (computed with bc).
    expect(test.availableFlowGpm).toBeCloseTo(513.7, 1);
  });

  it('colors and bands are settings', () => {
    const bands = standardBands.map((band) =>
      band.hydrantClass === 'AA' ? { ...band, color: 'white' as const, fromGpm: 1200 } : band,
    );
    const settings = { ...standardFlowTestSettings, classBands: bands };
    expect(
      evaluateFlowTest({ staticPsi: 86, residualPsi: 42, measuredFlowGpm: 1000 }, settings).hydrantClass,
    ).toBe('AA');
    expect(classBand(1300, bands).color).toBe('white');
  });
});

describe('refusals', () => {
  const refused = (input: FlowTestInput): string[] =>
    flowTestProblems(input).map(({ path, code }) => `${path} ${code}`);

  it.each<[string, FlowTestInput, string[]]>([
    ['residual at static', { ...good, residualPsi: 86 }, ['residualPsi residual-not-below-static']],
    ['residual above static', { ...good, residualPsi: 90 }, ['residualPsi residual-not-below-static']],
    ['target at static', { ...good, targetResidualPsi: 86 }, ['targetResidualPsi target-not-below-static']],
    ['no flow', { staticPsi: 86, residualPsi: 42 }, ['outlets flow-or-outlets']],
    ['flow twice', { ...good, measuredFlowGpm: 800 }, ['measuredFlowGpm flow-given-twice']],
    ['no outlet', { ...good, outlets: [] }, ['outlets too-few']],
    [
      'everything wrong at once',
      { staticPsi: Number.NaN, residualPsi: -1, outlets: [{ diameterIn: 25, coefficient: 0, pitotPsi: 0 }] },
      [
        'staticPsi wrong-type',
        'residualPsi below-minimum',
        'outlets.0.diameterIn above-maximum',
        'outlets.0.coefficient below-minimum',
        'outlets.0.pitotPsi not-above',
      ],
    ],
  ])('%s', (_, input, expected) => {
    expect(refused(input)).toEqual(expected);
    expect(() => evaluateFlowTest(input)).toThrow(OutOfRange);
    const parsed = flowTestInput.safeParse(input, { reportInput: true });
    expect(parsed.success).toBe(false);
    if (!parsed.success)
      expect(
        problemsFromZod(parsed.error.issues)
          .map(({ path, code }) => `${path} ${code}`)
          .sort(),
      ).toEqual([...expected].sort());
  });

  it('a formula refuses what it cannot answer, never NaN', () => {
    const point = { staticPsi: 50, residualPsi: 60, flowGpm: 500 };
    expect(() => availableFlowGpm({ ...point, targetResidualPsi: 20 })).toThrow(/residual-not-below-static/);
    expect(() => availableFlowGpm({ ...point, residualPsi: 40, targetResidualPsi: 51 })).toThrow(
      /target-not-below-static/,
    );
    expect(availableFlowGpm({ ...point, residualPsi: 40, targetResidualPsi: 50 })).toBe(0);
    expect(() => residualAtFlowPsi({ ...point, atFlowGpm: 100 })).toThrow(OutOfRange);
    expect(() => residualAtFlowPsi({ ...point, residualPsi: 40, atFlowGpm: -1 })).toThrow(
      /atFlowGpm: below-minimum/,
    );
    expect(() => outletFlowGpm({ ...outlet, pitotPsi: 0 })).toThrow(/pitotPsi: not-above/);
    expect(() => pumperFactor(-1)).toThrow(OutOfRange);
    expect(() => hydrantClassOf(Number.NaN)).toThrow(OutOfRange);
    expect(() => hydrantClassOf(-1)).toThrow(OutOfRange);
  });

  it('between readings of the pumper table: straight line; below it the first factor', () => {
    expect(pumperFactor(2.5)).toBeCloseTo(0.945, 12);
    expect(pumperFactor(6.5)).toBeCloseTo(0.835, 12);
    expect(pumperFactor(0.5)).toBe(0.97);
  });
});
