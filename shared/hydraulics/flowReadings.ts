import * as z from 'zod';
import { rangeProblems, type Range } from './card.ts';
import { diffuserFlowGpm } from './diffuser.ts';
import type { Problem } from '../problems/problem.ts';
import { outletFlowGpm } from './outletFlow.ts';
import { pumperFactor } from './pumperOutlet.ts';
import { ranges } from './ranges.ts';

/** Where a reading was taken and with what; both may be left out when there is one hydrant and one gauge. */
interface Taken {
  /** The hydrant that flowed. */
  readonly hydrantId?: string | undefined;
  /** The gauge that read it; else the one that reads pitot. */
  readonly gaugeId?: string | undefined;
}

/** Whether a diameter was measured inside the outlet, or is the size on the drawing. */
export const diameterBases = ['measured', 'nominal'] as const;

/** One flowing outlet. `kind` unknown counts as a hose outlet, with a warning when it is as wide as a pumper outlet. */
export interface TestOutlet extends Taken {
  readonly diameterIn: number;
  readonly diameterBasis?: (typeof diameterBases)[number] | undefined;
  readonly coefficient: number;
  readonly pitotPsi: number;
  readonly kind?: 'hose' | 'pumper' | undefined;
}

/** An outlet that flowed through a diffuser, which its maker rates by a constant of its own. */
export interface DiffuserReading extends Taken {
  readonly kind: 'diffuser';
  readonly kGpmPerSqrtPsi: number;
  readonly pitotPsi: number;
  /** Largest error of the constant as its maker states it, as a share; else the setting. */
  readonly accuracyFraction?: number | undefined;
}

/** An outlet that flowed through a meter. */
export interface MeterReading extends Taken {
  readonly kind: 'meter';
  readonly flowGpm: number;
  readonly accuracyFraction?: number | undefined;
}

export type FlowReading = TestOutlet | DiffuserReading | MeterReading;

/** A zod number with the card's range, so that a range is written once. */
export function numberIn(range: Range): z.ZodNumber {
  const number = z.number().max(range.maximum);
  return range.exclusiveMinimum ? number.gt(range.minimum) : number.min(range.minimum);
}

const named = z.string().trim().min(1).max(64);
const taken = { hydrantId: named.optional(), gaugeId: named.optional() };

export const testOutlet = z.strictObject({
  ...taken,
  kind: z.enum(['hose', 'pumper']).optional(),
  diameterIn: numberIn(ranges.diameterIn),
  diameterBasis: z.enum(diameterBases).optional(),
  coefficient: numberIn(ranges.coefficient),
  pitotPsi: numberIn(ranges.pitotPsi),
});

export const flowReading = z.discriminatedUnion('kind', [
  testOutlet,
  z.strictObject({
    ...taken,
    kind: z.literal('diffuser'),
    kGpmPerSqrtPsi: numberIn(ranges.kGpmPerSqrtPsi),
    pitotPsi: numberIn(ranges.pitotPsi),
    accuracyFraction: numberIn(ranges.accuracyFraction).optional(),
  }),
  z.strictObject({
    ...taken,
    kind: z.literal('meter'),
    flowGpm: numberIn(ranges.measuredFlowGpm),
    accuracyFraction: numberIn(ranges.accuracyFraction).optional(),
  }),
]);

export const isOutlet = (reading: FlowReading): reading is TestOutlet =>
  reading.kind !== 'diffuser' && reading.kind !== 'meter';

export interface ReadingFlow {
  readonly flowGpm: number;
  /** The pumper factor that is in it; 1 for anything but a pumper outlet. */
  readonly pumperFactor: number;
}

/** Flow of one reading, gpm. @throws OutOfRange naming every argument outside its range. */
export function readingFlow(reading: FlowReading): ReadingFlow {
  if (reading.kind === 'meter') return { flowGpm: reading.flowGpm, pumperFactor: 1 };
  if (reading.kind === 'diffuser') return { flowGpm: diffuserFlowGpm(reading), pumperFactor: 1 };
  const { diameterIn, coefficient, pitotPsi, kind } = reading;
  const factor = kind === 'pumper' ? pumperFactor(pitotPsi) : 1;
  return { flowGpm: factor * outletFlowGpm({ diameterIn, coefficient, pitotPsi }), pumperFactor: factor };
}

const outletRanges = {
  diameterIn: ranges.diameterIn,
  coefficient: ranges.coefficient,
  pitotPsi: ranges.pitotPsi,
} as const;
const diffuserRanges = { kGpmPerSqrtPsi: ranges.kGpmPerSqrtPsi, pitotPsi: ranges.pitotPsi } as const;
const meterRanges = { flowGpm: ranges.measuredFlowGpm } as const;

/** What keeps a reading from being computed; the same codes as its schema. */
export function readingProblems(reading: FlowReading): Problem[] {
  if (isOutlet(reading)) {
    const { diameterIn, coefficient, pitotPsi } = reading;
    return rangeProblems(outletRanges, { diameterIn, coefficient, pitotPsi });
  }
  const found: Problem[] =
    reading.kind === 'meter'
      ? rangeProblems(meterRanges, { flowGpm: reading.flowGpm })
      : rangeProblems(diffuserRanges, {
          kGpmPerSqrtPsi: reading.kGpmPerSqrtPsi,
          pitotPsi: reading.pitotPsi,
        });
  const { accuracyFraction } = reading;
  return accuracyFraction === undefined
    ? found
    : [...found, ...rangeProblems({ accuracyFraction: ranges.accuracyFraction }, { accuracyFraction })];
}
