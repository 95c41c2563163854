import * as z from 'zod';
import { numberIn } from './flowReadings.ts';
import { ranges } from './ranges.ts';

export const gaugeReads = ['static', 'residual', 'pitot'] as const;
export type GaugeRead = (typeof gaugeReads)[number];

/** A gauge as it was used in one test. */
export interface TestGauge {
  readonly gaugeId: string;
  /** What it read. Left out: its calibration is looked at, and nothing else is taken from it. */
  readonly reads?: readonly GaugeRead[] | undefined;
  /** Top of its scale, psi. */
  readonly rangePsi: number;
  /** Largest error that its grade allows, as a share of the range; else the setting. */
  readonly accuracyFraction?: number | undefined;
  /** The finest step to which it was read, psi; else the setting. */
  readonly resolutionPsi?: number | undefined;
  /** Null: nobody knows. Left out: nobody asked, and nothing is said of it. */
  readonly calibratedOn?: string | null | undefined;
}

export const testGauge = z.strictObject({
  gaugeId: z.string().trim().min(1).max(64),
  reads: z.array(z.enum(gaugeReads)).max(gaugeReads.length).optional(),
  rangePsi: numberIn(ranges.gaugeRangePsi),
  accuracyFraction: numberIn(ranges.accuracyFraction).optional(),
  resolutionPsi: numberIn(ranges.resolutionPsi).optional(),
  calibratedOn: z.iso.date().nullable().optional(),
});

/** The gauge that read something: the first that says so. */
export const gaugeFor = (gauges: readonly TestGauge[] | undefined, what: GaugeRead): TestGauge | undefined =>
  gauges?.find(({ reads }) => reads?.includes(what));
