import { convert } from '../units/convert.ts';
import { displays } from '../units/format.ts';
import type { System } from '../units/units.ts';
import { availableFlowGpm, residualAtFlowPsi, type TestPoint } from './availableFlow.ts';
import { flowInterval, residualErrorPsi } from './capacityInterval.ts';
import { COVERAGE_95 } from './normal.ts';
import { MINIMUM_DROP_FRACTION, pressureDrop } from './pressureDrop.ts';
import type { ReadingSpread } from './readingSpread.ts';

/**
 * The supply curve as plain geometry, for whoever draws it: the SVG beside this file, or a PDF. Positions are shares of
 * the plot, 0 to 1 from its lower left corner; the horizontal one is (flow / greatest flow)^1.85, so that a supply is a
 * straight line on it, as on the printed N^1.85 paper. The curve is computed with exponent 0.54 (1/0.54 = 1.852), so it
 * leaves the straight line by less than a thousandth of the plot.
 */
export const PAPER_EXPONENT = 1.85;

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Mark extends Place {
  readonly flowGpm: number;
  readonly residualPsi: number;
}

export interface Tick {
  /** In the unit of the axis. */
  readonly value: number;
  readonly position: number;
  /** False where its label would run into the one before it; the line is drawn all the same. */
  readonly labelled: boolean;
}

export interface Axis {
  readonly unit: 'psi' | 'kPa' | 'gpm' | 'L/min';
  readonly greatest: number;
  readonly ticks: readonly Tick[];
}

export interface SupplyCurve {
  readonly flow: Axis;
  readonly pressure: Axis;
  readonly staticMark: Mark;
  readonly testMark: Mark;
  /** The flow at the target residual; null when the drop is too small to say, or the static is not above the target. */
  readonly targetMark: Mark | null;
  readonly target: { readonly residualPsi: number; readonly y: number };
  /** From static to the test point: between readings. */
  readonly measured: readonly Place[];
  /** Beyond the test point down to the target: a projection, drawn dashed. Empty when there is none. */
  readonly projected: readonly Place[];
  /** Where the curve lies at 95 %: an outline to fill, clockwise from the upper left. Empty when no spread was given. */
  readonly band: readonly Place[];
  /** The interval of the flow at the target residual; null when no spread was given or there is no such flow. */
  readonly targetInterval: { readonly low: Mark; readonly high: Mark } | null;
  readonly drop: { readonly sufficient: boolean };
}

/** A step of 1, 2 or 5 times a power of ten that divides the range into about `parts`. */
function roundStep(range: number, parts: number): number {
  const rough = range / parts;
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 5, 10].find((step) => step * power >= rough) ?? 10);
}

function axis(
  unit: Axis['unit'],
  reach: number,
  place: (share: number) => number,
  closest: number,
  parts: number,
): Axis {
  const step = roundStep(reach, parts);
  const count = Math.ceil(reach / step - 1e-9);
  const greatest = count * step;
  let lastLabelled = -1;
  const ticks = Array.from({ length: count + 1 }, (_, index): Tick => {
    const position = place(index / count);
    const labelled = position - lastLabelled >= closest || index === 0;
    if (labelled) lastLabelled = position;
    return { value: index * step, position, labelled };
  });
  return { unit, greatest, ticks };
}

const onPaper = (share: number): number => share ** PAPER_EXPONENT;
const STEPS = 24;

export interface SupplyCurveInput extends TestPoint {
  readonly targetResidualPsi: number;
  readonly minimumDropFraction?: number | undefined;
  /** From the evaluated test (`FlowTestResult.spread`), for the band; without it the curve is drawn bare. */
  readonly spread?: ReadingSpread | undefined;
}

/**
 * Geometry of the supply curve of one test.
 *
 * @throws OutOfRange when the readings cannot be a test (as `evaluateFlowTest`).
 */
export function supplyCurve(input: SupplyCurveInput, system: System = 'us'): SupplyCurve {
  const { staticPsi, residualPsi, flowGpm, targetResidualPsi } = input;
  const drop = pressureDrop(input, input.minimumDropFraction ?? MINIMUM_DROP_FRACTION);
  const targetFlowGpm =
    drop.sufficient && targetResidualPsi < staticPsi
      ? availableFlowGpm({ staticPsi, residualPsi, flowGpm, targetResidualPsi })
      : null;

  const interval =
    input.spread && targetFlowGpm !== null && targetFlowGpm > 0
      ? flowInterval(input, targetResidualPsi, targetFlowGpm, input.spread)
      : null;

  const flowUnit = displays.gpm[system].unit as 'gpm' | 'L/min';
  const pressureUnit = displays.psi[system].unit as 'psi' | 'kPa';
  // The last mark stands at three quarters of the paper or before it, so that its label has room.
  const reachGpm = Math.max(
    Math.max(flowGpm, targetFlowGpm ?? 0) / 0.75 ** (1 / PAPER_EXPONENT),
    // A very wide interval runs off the paper rather than squeeze the rest of it.
    Math.min(interval?.highGpm ?? 0, 1.5 * (targetFlowGpm ?? 0)),
  );
  const reachPsi = Math.max(staticPsi, targetResidualPsi) * 1.05;
  const flow = axis(flowUnit, convert(reachGpm, 'gpm', flowUnit), onPaper, 0.085, 10);
  const pressure = axis(pressureUnit, convert(reachPsi, 'psi', pressureUnit), (share) => share, 0.06, 8);

  const x = (atGpm: number): number => onPaper(convert(atGpm, 'gpm', flowUnit) / flow.greatest);
  const y = (atPsi: number): number => convert(atPsi, 'psi', pressureUnit) / pressure.greatest;
  const mark = (atGpm: number, atPsi: number): Mark => ({
    flowGpm: atGpm,
    residualPsi: atPsi,
    x: x(atGpm),
    y: y(atPsi),
  });
  const along = (fromGpm: number, toGpm: number): Place[] =>
    Array.from({ length: STEPS + 1 }, (_, index) => {
      const atFlowGpm = fromGpm + ((toGpm - fromGpm) * index) / STEPS;
      return { x: x(atFlowGpm), y: y(residualAtFlowPsi({ staticPsi, residualPsi, flowGpm, atFlowGpm })) };
    });

  const inPlot = (share: number): number => Math.min(1, Math.max(0, share));
  const lastGpm = Math.max(flowGpm, targetFlowGpm ?? 0, interval?.highGpm ?? 0);
  const endGpm = Math.min(lastGpm, convert(flow.greatest, flowUnit, 'gpm'));

  const edge = (spread: ReadingSpread, toGpm: number, sign: 1 | -1): Place[] =>
    Array.from({ length: STEPS + 1 }, (_, index) => {
      const atFlowGpm = (toGpm * index) / STEPS;
      const atPsi =
        residualAtFlowPsi({ staticPsi, residualPsi, flowGpm, atFlowGpm }) +
        sign * COVERAGE_95 * residualErrorPsi(input, atFlowGpm, spread);
      return { x: x(atFlowGpm), y: inPlot(y(atPsi)) };
    });
  const outline = (spread: ReadingSpread, toGpm: number): Place[] => [
    ...edge(spread, toGpm, 1),
    ...edge(spread, toGpm, -1).reverse(),
  ];

  return {
    flow,
    pressure,
    staticMark: mark(0, staticPsi),
    testMark: mark(flowGpm, residualPsi),
    targetMark: targetFlowGpm === null ? null : mark(targetFlowGpm, targetResidualPsi),
    target: { residualPsi: targetResidualPsi, y: y(targetResidualPsi) },
    measured: along(0, flowGpm),
    projected: targetFlowGpm !== null && targetFlowGpm > flowGpm ? along(flowGpm, targetFlowGpm) : [],
    band: input.spread ? outline(input.spread, drop.sufficient ? endGpm : flowGpm) : [],
    targetInterval: interval && {
      low: mark(interval.lowGpm, targetResidualPsi),
      high: { ...mark(interval.highGpm, targetResidualPsi), x: inPlot(x(interval.highGpm)) },
    },
    drop: { sufficient: drop.sufficient },
  };
}
