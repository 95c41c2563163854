import type { TestPoint } from '../hydraulics/availableFlow.ts';
import {
  deliveredGpm,
  lateralMinorLossK,
  ROUGHNESS_SPREAD,
  unknownRoughness,
  type Delivery,
  type Lateral,
} from './fullBore.ts';
import type { Pipe } from '../hydraulics/hazenWilliams.ts';
import type { WaterLostInput } from './input.ts';
import { risingFlow, type RisingRegime } from './jet.ts';
import { holeCoefficient, openingClasses } from './opening.ts';
import { horizontalThrowGpm, throwAtOneFootIn, THROW_ACCURACY_FRACTION } from './throw.ts';
import { has } from './has.ts';

/** By what a flow was judged, best evidence first. Words: `water.method.<code>`. */
export const flowMethods = ['jet', 'throw', 'opening', 'full-bore', 'class'] as const;
export type FlowMethod = (typeof flowMethods)[number];

export type End = 'low' | 'best' | 'high';

/** What one method makes of what was seen, gpm. */
export interface FlowEstimate {
  readonly method: FlowMethod;
  readonly lowGpm: number;
  readonly bestGpm: number;
  readonly highGpm: number;
  /** Stated accuracy to either side, as a share, where the method has one; else the ends say it. */
  readonly accuracyFraction: number | null;
  readonly regime?: RisingRegime;
}

/** By eye (common practice, no source): a fifth of a height, a tenth of a distance. */
const EYE = { height: 0.2, distance: 0.1 } as const;

/** Errors that have nothing to do with each other. */
const together = (one: number, other: number): number => Math.hypot(one, other);

function withAccuracy(method: FlowMethod, bestGpm: number, accuracyFraction: number): FlowEstimate {
  return {
    method,
    lowGpm: bestGpm * Math.max(0, 1 - accuracyFraction),
    bestGpm,
    highGpm: bestGpm * (1 + accuracyFraction),
    accuracyFraction,
  };
}

type Found = WaterLostInput['found'];

function byJet({ jetHeightIn, openingDiameterIn, seenAccuracyFraction }: Found): FlowEstimate | null {
  if (!has(jetHeightIn) || !has(openingDiameterIn)) return null;
  const rising = risingFlow({ diameterIn: openingDiameterIn, heightIn: jetHeightIn });
  const seen = (seenAccuracyFraction ?? EYE.height) * rising.heightExponent;
  const estimate = withAccuracy('jet', rising.flowGpm, together(rising.accuracyFraction, seen));
  return { ...estimate, regime: rising.regime };
}

function byThrow(found: Found): FlowEstimate | null {
  const { throwDistanceIn, throwDropIn, openingDiameterIn, seenAccuracyFraction } = found;
  if (!has(throwDistanceIn) || !has(openingDiameterIn)) return null;
  const distanceIn = has(throwDropIn)
    ? throwAtOneFootIn({ distanceIn: throwDistanceIn, dropIn: throwDropIn })
    : throwDistanceIn;
  const flowGpm = horizontalThrowGpm({ diameterIn: openingDiameterIn, distanceIn });
  return withAccuracy(
    'throw',
    flowGpm,
    together(THROW_ACCURACY_FRACTION, seenAccuracyFraction ?? EYE.distance),
  );
}

/** Which way a pipe's unknowns lie at each end of an estimate: a rough one passes less. */
function pipeAt(pipe: WaterLostInput['main'], end: End): Pipe | null {
  if (!pipe) return null;
  const { diameterIn, lengthFt, roughness } = pipe;
  const shift = { low: -ROUGHNESS_SPREAD, best: 0, high: ROUGHNESS_SPREAD }[end];
  return {
    diameterIn,
    lengthFt,
    roughness: !has(roughness) ? unknownRoughness[end] : Math.min(160, Math.max(40, roughness + shift)),
  };
}

function lateralAt(lateral: WaterLostInput['lateral'], end: End): Lateral | null {
  const pipe = pipeAt(lateral, end);
  if (!pipe) return null;
  // What is lost most is what is passed least.
  const unknown = { low: lateralMinorLossK.high, best: lateralMinorLossK.best, high: lateralMinorLossK.low }[
    end
  ];
  return { ...pipe, minorLossK: lateral?.minorLossK ?? unknown };
}

/** The hydrant's own test as a supply, its static given more weight than one written down elsewhere. */
const supplyOf = ({
  staticPsi,
  flowTest,
}: WaterLostInput): { staticPsi: number; test: TestPoint | null } | null => {
  const pressure = staticPsi ?? flowTest?.staticPsi;
  return !has(pressure) ? null : { staticPsi: pressure, test: flowTest ?? null };
};

function estimate(method: FlowMethod, at: (end: End) => Delivery): FlowEstimate {
  return {
    method,
    lowGpm: deliveredGpm(at('low')),
    bestGpm: deliveredGpm(at('best')),
    highGpm: deliveredGpm(at('high')),
    accuracyFraction: null,
  };
}

function byOpening(input: WaterLostInput): FlowEstimate | null {
  const { found, main, lateral } = input;
  const supply = supplyOf(input);
  const diameterIn = found.openingDiameterIn;
  if (!supply || !has(diameterIn) || found.flow === 'full-bore' || found.flow === 'none') return null;
  return estimate('opening', (end) => ({
    ...supply,
    main: pipeAt(main, end),
    lateral: lateralAt(lateral, end),
    opening: { diameterIn, coefficient: holeCoefficient[end] },
  }));
}

/**
 * The barrel open to the air. It is as wide as what was measured or else as the lateral; without the lateral's size and
 * length there is no such estimate, because nothing but it holds the water back.
 */
export function byFullBore(input: WaterLostInput): FlowEstimate | null {
  const supply = supplyOf(input);
  const { lateral, main, found } = input;
  if (!supply || !lateral) return null;
  const diameterIn =
    found.flow === 'full-bore' ? (found.openingDiameterIn ?? lateral.diameterIn) : lateral.diameterIn;
  return estimate('full-bore', (end) => ({
    ...supply,
    main: pipeAt(main, end),
    lateral: lateralAt(lateral, end),
    opening: { diameterIn, coefficient: 1 },
  }));
}

function byClass(input: WaterLostInput): FlowEstimate | null {
  const { found, main, lateral } = input;
  const supply = supplyOf(input);
  if (!supply || (found.flow !== 'leak' && found.flow !== 'jet')) return null;
  const holes = openingClasses[found.flow];
  return estimate('class', (end) => ({
    ...supply,
    main: pipeAt(main, end),
    lateral: lateralAt(lateral, end),
    opening: { diameterIn: holes[end], coefficient: holeCoefficient.best },
  }));
}

/**
 * Every estimate that what was seen allows, best evidence first: a height or a throw is the stream itself, an opening
 * needs the pressure behind it, a full bore the pipes, and a word alone is a guess. The first is the one to use.
 */
export function flowEstimates(input: WaterLostInput): FlowEstimate[] {
  const { found } = input;
  return [
    byJet(found),
    byThrow(found),
    byOpening(input),
    found.flow === 'full-bore' ? byFullBore(input) : null,
    !has(found.openingDiameterIn) ? byClass(input) : null,
  ].filter((one) => one !== null);
}
