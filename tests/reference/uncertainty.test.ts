import { describe, expect, it } from 'vitest';
import { residualErrorPsi } from '../../shared/hydraulics/capacityInterval.ts';
import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import type { FlowTestInput, TestOutlet } from '../../shared/hydraulics/flowTestInput.ts';
import { standardFlowTestSettings } from '../../shared/hydraulics/flowTestSettings.ts';
import { classBand } from '../../shared/hydraulics/hydrantClass.ts';
import { COVERAGE_95, normalShareBelow } from '../../shared/hydraulics/normal.ts';
import { supplyCurve } from '../../shared/hydraulics/supplyCurve.ts';
import { supplyCurveDescription, supplyCurveSvg } from '../../shared/hydraulics/supplyCurveSvg.ts';
import { seeded } from '../support/seeded.ts';

/**
 * The interval is first-order propagation; here it is held against random trials of the same errors through the whole
 * relation, written out anew (29.84 c d² √p and the exponent 0.54) and not through the engine. Errors of which only the
 * largest value is known are drawn evenly up to it.
 */
const errors = standardFlowTestSettings.errors;
const TRIALS = 100_000;

interface Gauged {
  readonly static: string;
  readonly residual: string;
  readonly pitot: string;
}
const usual: Gauged = { static: 'cap', residual: 'cap', pitot: 'pitot' };

interface Trial {
  readonly name: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly outlets: readonly TestOutlet[];
  readonly gauged?: Gauged;
}

const PUMPER = [
  [2, 0.97],
  [3, 0.92],
  [4, 0.89],
  [5, 0.86],
  [6, 0.84],
  [7, 0.83],
] as const;
function pumper(psi: number): number {
  if (psi <= 2) return 0.97;
  if (psi >= 7) return 0.83;
  const at = PUMPER.findIndex(([reading]) => reading >= psi);
  const [[lowPsi, low], [highPsi, high]] = [PUMPER[at - 1]!, PUMPER[at]!];
  return low + ((psi - lowPsi) / (highPsi - lowPsi)) * (high - low);
}

/** Capacities at 20 psi of many trials, in order. */
function trials({ staticPsi, residualPsi, outlets, gauged = usual }: Trial): Float64Array {
  const random = seeded(291);
  const upTo = (largest: number): number => (2 * random() - 1) * largest;
  const share = errors.sharedGaugeError;
  const found = new Float64Array(TRIALS);
  for (let trial = 0; trial < TRIALS; trial++) {
    const common = new Map<string, number>();
    const commonOf = (gauge: string): number => {
      if (!common.has(gauge)) common.set(gauge, upTo(1));
      return common.get(gauge)!;
    };
    const read = (psi: number, gauge: string): number => {
      const { rangePsi, accuracyFraction, resolutionPsi } =
        errors[gauge === 'pitot' ? 'pitotGauge' : 'pressureGauge'];
      const error =
        rangePsi * accuracyFraction * (Math.sqrt(share) * commonOf(gauge) + Math.sqrt(1 - share) * upTo(1));
      return psi + error + upTo(resolutionPsi / 2);
    };
    const s = read(staticPsi, gauged.static);
    const r = read(residualPsi, gauged.residual);
    const [shape, drawing, factor] = [
      upTo(errors.coefficient),
      upTo(errors.nominalDiameterFraction),
      upTo(errors.pumperFactorFraction),
    ];
    let flow = 0;
    for (const { kind, diameterIn, diameterBasis, coefficient, pitotPsi } of outlets) {
      const p = read(pitotPsi, gauged.pitot);
      const d =
        diameterBasis === 'nominal'
          ? diameterIn * (1 + drawing)
          : diameterIn + upTo(errors.measuredDiameterIn);
      flow +=
        (kind === 'pumper' ? pumper(p) * (1 + factor) : 1) *
        29.84 *
        (coefficient + shape) *
        d *
        d *
        Math.sqrt(Math.max(0, p));
    }
    found[trial] = flow * ((s - 20) / (s - r)) ** 0.54;
  }
  return found.sort();
}

const hose = (pitotPsi: number, more: Partial<TestOutlet> = {}): TestOutlet => ({
  diameterIn: 2.5,
  coefficient: 0.9,
  pitotPsi,
  diameterBasis: 'measured',
  ...more,
});

const gaugesOf = ({ static: s, residual: r, pitot: p }: Gauged): FlowTestInput['gauges'] => {
  const ids = [...new Set([s, r, p])];
  return ids.map((gaugeId) => ({
    gaugeId,
    reads: [
      ...(gaugeId === s ? (['static'] as const) : []),
      ...(gaugeId === r ? (['residual'] as const) : []),
      ...(gaugeId === p ? (['pitot'] as const) : []),
    ],
    rangePsi: gaugeId === 'pitot' ? errors.pitotGauge.rangePsi : errors.pressureGauge.rangePsi,
  }));
};

const sufficient: Trial[] = [
  { name: '86 to 42, one outlet', staticPsi: 86, residualPsi: 42, outlets: [hose(28, { coefficient: 0.8 })] },
  { name: '72 to 45, one outlet', staticPsi: 72, residualPsi: 45, outlets: [hose(18)] },
  { name: '60 to 40, two outlets', staticPsi: 60, residualPsi: 40, outlets: [hose(18), hose(16)] },
  {
    name: '95 to 70, nominal sizes',
    staticPsi: 95,
    residualPsi: 70,
    outlets: [hose(25, { diameterBasis: 'nominal' }), hose(22, { diameterBasis: 'nominal' })],
  },
  {
    name: '80 to 50, pumper outlet',
    staticPsi: 80,
    residualPsi: 50,
    outlets: [{ kind: 'pumper', diameterIn: 4.5, coefficient: 0.9, pitotPsi: 8, diameterBasis: 'measured' }],
  },
  { name: '54 to 12, below 20 psi', staticPsi: 54, residualPsi: 12, outlets: [hose(14)] },
  {
    name: '86 to 42, a gauge each',
    staticPsi: 86,
    residualPsi: 42,
    outlets: [hose(28)],
    gauged: { static: 'one', residual: 'two', pitot: 'pitot' },
  },
  {
    name: '86 to 42, one gauge for all three',
    staticPsi: 86,
    residualPsi: 42,
    outlets: [hose(28)],
    gauged: { static: 'one', residual: 'one', pitot: 'one' },
  },
];

function against(trial: Trial) {
  const { staticPsi, residualPsi, outlets, gauged = usual } = trial;
  const result = evaluateFlowTest({ staticPsi, residualPsi, outlets, gauges: gaugesOf(gauged) });
  const { interval, hydrantClass } = result;
  if (!interval) throw new Error('no interval');
  const drawn = trials(trial);
  const logs = drawn.map(Math.log);
  const mean = logs.reduce((sum, value) => sum + value, 0) / TRIALS;
  const spread = Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / TRIALS);
  const share = (is: (gpm: number) => boolean): number => drawn.filter(is).length / TRIALS;
  return {
    ...result,
    spread: interval.standardFraction / spread - 1,
    low: interval.lowGpm / drawn[0.025 * TRIALS]! - 1,
    high: interval.highGpm / drawn[0.975 * TRIALS]! - 1,
    held: share((gpm) => gpm >= interval.lowGpm && gpm <= interval.highGpm),
    chance: interval.classChance,
    drawnChance: share((gpm) => classBand(gpm).hydrantClass === hydrantClass),
  };
}

describe('95 % interval against 100,000 random trials', () => {
  // Measured: ends within 1.3 %, spread within 1.5 %, 94.98 to 95.83 % held, chance of the class within 0.5 points.
  it.each(sufficient)('drop of a quarter of static or more: $name', (trial) => {
    const { spread, low, high, held, chance, drawnChance } = against(trial);
    expect(Math.abs(spread)).toBeLessThan(0.02);
    expect(Math.abs(low)).toBeLessThan(0.015);
    expect(Math.abs(high)).toBeLessThan(0.015);
    expect(Math.abs(held - 0.95)).toBeLessThan(0.01);
    expect(Math.abs(chance - drawnChance)).toBeLessThan(0.01);
  });

  // Measured: 94.1 and 92.4 % held; the upper end up to 4 and 12 % short. The relation bends too much for a first order
  // there, which is one more reason to be warned of a wide interval and to open another outlet.
  it.each([
    { name: '80 to 68, 15 %', staticPsi: 80, residualPsi: 68, most: 0.045, least: 0.935 },
    { name: '80 to 72, 10 %', staticPsi: 80, residualPsi: 72, most: 0.13, least: 0.92 },
  ])('a small drop holds less: $name', ({ most, least, ...readings }) => {
    const { low, high, held, warnings } = against({ ...readings, outlets: [hose(20)] });
    expect(Math.max(Math.abs(low), Math.abs(high))).toBeLessThan(most);
    expect(held).toBeGreaterThan(least);
    if (readings.residualPsi === 72) expect(warnings.map(({ code }) => code)).toEqual(['capacity-uncertain']);
  });
});

describe('band of the supply curve against the same trials', () => {
  // The spread of the residual at a flow, from nothing to a quarter more than the test flowed; measured within 2 %.
  it.each([0, 0.5, 1, 1.25])('at %d of the test flow', (share) => {
    const [staticPsi, residualPsi, pitotPsi] = [86, 42, 28];
    const input = { staticPsi, residualPsi, outlets: [hose(pitotPsi)], gauges: gaugesOf(usual) };
    const { measuredFlowGpm: flowGpm, spread } = evaluateFlowTest(input);
    const atFlowGpm = share * flowGpm;
    const random = seeded(7);
    const upTo = (largest: number): number => (2 * random() - 1) * largest;
    const { pressureGauge: cap, pitotGauge: pitot, sharedGaugeError: shared } = errors;
    const found = Array.from({ length: TRIALS }, () => {
      const common = upTo(1);
      const error = ({ rangePsi, accuracyFraction, resolutionPsi }: typeof cap, of: number): number =>
        rangePsi * accuracyFraction * (Math.sqrt(shared) * of + Math.sqrt(1 - shared) * upTo(1)) +
        upTo(resolutionPsi / 2);
      const s = staticPsi + error(cap, common);
      const r = residualPsi + error(cap, common);
      const p = pitotPsi + error(pitot, upTo(1));
      const [c, d] = [0.9 + upTo(errors.coefficient), 2.5 + upTo(errors.measuredDiameterIn)];
      const flow = 29.84 * c * d * d * Math.sqrt(p);
      return s - (s - r) * (atFlowGpm / flow) ** (1 / 0.54);
    });
    const mean = found.reduce((sum, psi) => sum + psi, 0) / TRIALS;
    const deviation = Math.sqrt(found.reduce((sum, psi) => sum + (psi - mean) ** 2, 0) / TRIALS);
    const ours = residualErrorPsi({ staticPsi, residualPsi, flowGpm }, atFlowGpm, spread);
    expect(Math.abs(ours / deviation - 1)).toBeLessThan(0.02);
  });

  it('surrounds the curve and holds the interval at the target', () => {
    const readings = { staticPsi: 86, residualPsi: 42, outlets: [hose(28)] };
    const { measuredFlowGpm: flowGpm, spread, interval } = evaluateFlowTest(readings);
    const curve = supplyCurve({ staticPsi: 86, residualPsi: 42, flowGpm, targetResidualPsi: 20, spread });
    const half = curve.band.length / 2;
    const [upper, lower] = [curve.band.slice(0, half), curve.band.slice(half).reverse()];
    upper.forEach(({ x, y }, index) => {
      expect(lower[index]!.x).toBe(x);
      expect(lower[index]!.y).toBeLessThan(y);
    });
    expect(curve.targetInterval?.low.flowGpm).toBeCloseTo(interval!.lowGpm, 9);
    expect(curve.targetInterval?.high.flowGpm).toBeCloseTo(interval!.highGpm, 9);
    expect(supplyCurve({ staticPsi: 86, residualPsi: 42, flowGpm, targetResidualPsi: 20 })).toMatchObject({
      band: [],
      targetInterval: null,
    });
    const svg = supplyCurveSvg(curve, { system: 'us', locale: 'en', idPrefix: 'c' });
    expect(svg).toContain('<polygon');
    expect(supplyCurveDescription(curve, { system: 'us', locale: 'en' })).toMatch(
      /lies between 1,\d{3} gpm and 1,\d{3} gpm \(95%\)\.$/,
    );
  });
});

describe('normal distribution', () => {
  // Tables of the normal distribution, as in any handbook of statistics (from memory), to their seven digits.
  it.each([
    [0, 0.5],
    [1, 0.8413447],
    [1.959964, 0.975],
    [2.575829, 0.995],
    [3, 0.9986501],
    [-1, 0.1586553],
  ])('share below %d is %d', (z, share) => expect(normalShareBelow(z)).toBeCloseTo(share, 6));
  it('95 % lie within 1.96 deviations', () =>
    expect(normalShareBelow(COVERAGE_95) - normalShareBelow(-COVERAGE_95)).toBeCloseTo(0.95, 6));
});
