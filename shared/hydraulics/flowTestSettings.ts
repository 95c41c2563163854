import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { numberIn } from './flowReadings.ts';
import { hydrantColors, hydrantClasses, standardBands, type ClassBand } from './hydrantClass.ts';
import { MINIMUM_DROP_FRACTION } from './pressureDrop.ts';
import { ranges } from './ranges.ts';
import { RATING_RESIDUAL_PSI, ratingRules, WEAK_STATIC_PSI, type RatingRule } from './ratingResidual.ts';

/** A pitot gauge's useful range on one kind of outlet, psi. */
export interface PitotRange {
  readonly minimumPsi: number;
  readonly maximumPsi: number;
}

/** What is taken of a gauge of which the test says nothing. */
export interface AssumedGauge {
  readonly rangePsi: number;
  /** Largest error, as a share of the range. */
  readonly accuracyFraction: number;
  readonly resolutionPsi: number;
}

/** How far each reading may be off where the test does not say: largest errors, not standard ones. */
export interface AssumedErrors {
  readonly pressureGauge: AssumedGauge;
  readonly pitotGauge: AssumedGauge;
  /**
   * How much of a gauge's error is the same in two of its readings, 0 to 1: its zero and span are, its hysteresis and
   * its unevenness are not.
   */
  readonly sharedGaugeError: number;
  /** A measured diameter, in. */
  readonly measuredDiameterIn: number;
  /** A nominal diameter, as a share of it. */
  readonly nominalDiameterFraction: number;
  readonly coefficient: number;
  readonly pumperFactorFraction: number;
  readonly diffuserFraction: number;
  readonly meterFraction: number;
}

/** What a utility may set otherwise. Each default names its source in its own file or below. */
export interface FlowTestSettings {
  readonly ratingResidualPsi: number;
  readonly weakStaticPsi: number;
  readonly ratingRule: RatingRule;
  readonly minimumDropFraction: number;
  readonly classBands: readonly ClassBand[];
  /**
   * Hose outlet 10 to 30 psi: at least 10 psi by one fire department's form (seen), up to 30 psi by NFPA 291 (from
   * memory). Pumper outlet 5 to 10 psi: NFPA 291 (second-hand).
   */
  readonly pitot: Readonly<Record<'hose' | 'pumper', PitotRange>>;
  /** 0.70 projecting to 0.90 rounded by shape, up to 0.97 for a smooth tapered nozzle (common practice, no source). */
  readonly usualCoefficient: { readonly minimum: number; readonly maximum: number };
  /** Hose outlets are 2½ or 3 in; one this wide is likely a pumper outlet (common practice, no source). */
  readonly pumperFromIn: number;
  /** No test of a few hydrants flows more; a slip of the pen does (common practice, no source). */
  readonly mostFlowGpm: number;
  /** A gauge is calibrated within a year (common practice, no source). */
  readonly calibrationDays: number;
  /** A static that moved by more than both of these since the last test has a cause (common practice, no source). */
  readonly staticJump: { readonly psi: number; readonly fraction: number };
  /** An interval wider than this to either side is doubtful (common practice, no source). */
  readonly widestFraction: number;
  /** A capacity that fell by this share, and by more than the readings explain, is a loss (common practice, no source). */
  readonly lossFraction: number;
  /**
   * Gauges: ±2 % of range is grade B of the ASME scale in the middle half (second-hand); ranges, steps and how much of
   * an error is shared are common practice, no source. A nominal diameter: 5 % of flow (K. Kolb, course slide 3, seen),
   * half of that in diameter. The rest is common practice, no source.
   */
  readonly errors: AssumedErrors;
}

export const standardFlowTestSettings: FlowTestSettings = {
  ratingResidualPsi: RATING_RESIDUAL_PSI,
  weakStaticPsi: WEAK_STATIC_PSI,
  ratingRule: 'fixed',
  minimumDropFraction: MINIMUM_DROP_FRACTION,
  classBands: standardBands,
  pitot: { hose: { minimumPsi: 10, maximumPsi: 30 }, pumper: { minimumPsi: 5, maximumPsi: 10 } },
  usualCoefficient: { minimum: 0.7, maximum: 0.97 },
  pumperFromIn: 4,
  mostFlowGpm: 20_000,
  calibrationDays: 365,
  staticJump: { psi: 10, fraction: 0.15 },
  widestFraction: 0.25,
  lossFraction: 0.1,
  errors: {
    pressureGauge: { rangePsi: 200, accuracyFraction: 0.02, resolutionPsi: 1 },
    pitotGauge: { rangePsi: 100, accuracyFraction: 0.02, resolutionPsi: 1 },
    sharedGaugeError: 0.5,
    measuredDiameterIn: 1 / 32,
    nominalDiameterFraction: 0.025,
    coefficient: 0.02,
    pumperFactorFraction: 0.03,
    diffuserFraction: 0.03,
    meterFraction: 0.02,
  },
};

const psi = z.number().gt(0).max(100);
const share = z.number().min(0).max(1);
const pitotRange = z
  .strictObject({ minimumPsi: z.number().min(0).max(200), maximumPsi: z.number().gt(0).max(200) })
  .refine(({ minimumPsi, maximumPsi }) => minimumPsi < maximumPsi, {
    params: { problem: 'range-upside-down' },
    path: ['maximumPsi'],
  });

const assumedGauge = z.strictObject({
  rangePsi: numberIn(ranges.gaugeRangePsi),
  accuracyFraction: numberIn(ranges.accuracyFraction),
  resolutionPsi: numberIn(ranges.resolutionPsi),
});

const bands = z
  .array(
    z.strictObject({
      hydrantClass: z.enum(hydrantClasses),
      name: z.string().trim().min(1).max(20).optional(),
      fromGpm: z.number().int().min(0).max(20_000),
      color: z.enum(hydrantColors),
    }),
  )
  .min(1)
  .max(hydrantClasses.length)
  .superRefine((list, ctx) => {
    list.forEach(({ fromGpm, hydrantClass }, index) => {
      const before = list[index - 1];
      if (before && fromGpm >= before.fromGpm)
        ctx.addIssue(problemIssue('bands-not-falling', [index, 'fromGpm']));
      if (list.findIndex((other) => other.hydrantClass === hydrantClass) !== index)
        ctx.addIssue(problemIssue('class-twice', [index, 'hydrantClass'], { hydrantClass }));
    });
    if (list.at(-1)?.fromGpm !== 0)
      ctx.addIssue(problemIssue('bands-end-above-zero', [list.length - 1, 'fromGpm']));
  });

/** What a utility writes down of its own rules; everything it leaves out keeps its default. */
export const flowTestRules = z
  .strictObject({
    ratingResidualPsi: psi,
    weakStaticPsi: psi,
    ratingRule: z.enum(ratingRules),
    minimumDropFraction: z.number().min(0.01).max(0.9),
    classBands: bands,
    pitot: z.strictObject({ hose: pitotRange, pumper: pitotRange }),
    usualCoefficient: z
      .strictObject({ minimum: numberIn(ranges.coefficient), maximum: numberIn(ranges.coefficient) })
      .refine(({ minimum, maximum }) => minimum < maximum, {
        params: { problem: 'range-upside-down' },
        path: ['maximum'],
      }),
    pumperFromIn: numberIn(ranges.diameterIn),
    mostFlowGpm: numberIn(ranges.measuredFlowGpm),
    calibrationDays: z.number().int().min(1).max(3650),
    staticJump: z.strictObject({ psi: z.number().min(0).max(100), fraction: share }),
    widestFraction: share,
    lossFraction: share,
    errors: z
      .strictObject({
        pressureGauge: assumedGauge,
        pitotGauge: assumedGauge,
        sharedGaugeError: share,
        measuredDiameterIn: z.number().min(0).max(0.5),
        nominalDiameterFraction: z.number().min(0).max(0.2),
        coefficient: z.number().min(0).max(0.2),
        pumperFactorFraction: z.number().min(0).max(0.2),
        diffuserFraction: z.number().min(0).max(0.2),
        meterFraction: z.number().min(0).max(0.2),
      })
      .partial(),
  })
  .partial();
export type FlowTestRules = z.infer<typeof flowTestRules>;

/** The standard settings with a utility's own rules in their place. */
export function flowTestSettingsFrom(rules: FlowTestRules = {}): FlowTestSettings {
  const { errors, ...others } = rules;
  const stated = <T extends object>(given: T): Partial<T> =>
    Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Partial<T>;
  return {
    ...standardFlowTestSettings,
    ...(stated(others) as Partial<FlowTestSettings>),
    errors: { ...standardFlowTestSettings.errors, ...(stated(errors ?? {}) as Partial<AssumedErrors>) },
  };
}
