import { DROP_EXPONENT, type TestPoint } from './availableFlow.ts';
import type { ClassBand, HydrantClass } from './hydrantClass.ts';
import { COVERAGE_95, normalShareBelow } from './normal.ts';
import {
  flowCauses,
  totalFlowVariance,
  type Assumed,
  type FlowCause,
  type ReadingSpread,
} from './readingSpread.ts';

export type Cause = 'pressure' | FlowCause;

/**
 * How well a rated capacity is known from the readings alone. The relation between flow and pressure is taken as true;
 * what a looped or pumped network makes of it is not in here (see `availableFlowCard`).
 */
export interface CapacityInterval {
  /** 0.95: of a hundred such intervals ninety-five hold the capacity. */
  readonly coverage: number;
  readonly lowGpm: number;
  readonly highGpm: number;
  /** Standard error of the capacity, as a share of it. */
  readonly standardFraction: number;
  /** The class found, and how likely it is the right one, 0 to 1. */
  readonly classChance: number;
  /** Every class that is at all likely, most likely first. */
  readonly chances: readonly { readonly hydrantClass: HydrantClass; readonly chance: number }[];
  /** What makes it uncertain, greatest first; the shares add up to 1. */
  readonly causes: readonly { readonly cause: Cause; readonly share: number }[];
  readonly assumed: readonly Assumed[];
}

type Pressures = Pick<TestPoint, 'staticPsi' | 'residualPsi'>;

/**
 * Variance of the logarithm of the flow at a residual, and what of it the two pressures cause. From
 * ln Q = ln Q_F + n (ln(S − T) − ln(S − R)): a reading that is off by a little moves it by its derivative.
 */
export function logFlowVariance(
  { staticPsi, residualPsi }: Pressures,
  targetResidualPsi: number,
  spread: ReadingSpread,
): { readonly total: number; readonly pressure: number } {
  const drop = staticPsi - residualPsi;
  const byStatic = DROP_EXPONENT * (1 / (staticPsi - targetResidualPsi) - 1 / drop);
  const byResidual = DROP_EXPONENT / drop;
  const pressure =
    byStatic * byStatic * spread.staticVariance +
    byResidual * byResidual * spread.residualVariance +
    2 * byStatic * byResidual * spread.pressureCovariance +
    2 * byStatic * spread.staticFlowCovariance +
    2 * byResidual * spread.residualFlowCovariance;
  return { total: pressure + totalFlowVariance(spread), pressure };
}

/** 95 % interval of the flow at a residual below the static, gpm, and its standard error as a share. */
export function flowInterval(
  test: Pressures,
  targetResidualPsi: number,
  flowGpm: number,
  spread: ReadingSpread,
): { readonly lowGpm: number; readonly highGpm: number; readonly standardFraction: number } {
  const standardFraction = Math.sqrt(Math.max(0, logFlowVariance(test, targetResidualPsi, spread).total));
  // In logarithms, where the relation is a straight line: the interval is a little longer upward, and never below zero.
  const reach = Math.exp(COVERAGE_95 * standardFraction);
  return { lowGpm: flowGpm / reach, highGpm: flowGpm * reach, standardFraction };
}

/**
 * Standard error of the residual at a flow, psi: of R(Q) = S − (S − R) (Q / Q_F)^(1/n). At no flow it is that of the
 * static, at the test flow that of the residual and the flow together, and beyond it grows.
 */
export function residualErrorPsi(test: TestPoint, atFlowGpm: number, spread: ReadingSpread): number {
  const share = (atFlowGpm / test.flowGpm) ** (1 / DROP_EXPONENT);
  const byStatic = 1 - share;
  const byFlow = (share * (test.staticPsi - test.residualPsi)) / DROP_EXPONENT;
  const variance =
    byStatic * byStatic * spread.staticVariance +
    share * share * spread.residualVariance +
    byFlow * byFlow * totalFlowVariance(spread) +
    2 * byStatic * share * spread.pressureCovariance +
    2 * byStatic * byFlow * spread.staticFlowCovariance +
    2 * share * byFlow * spread.residualFlowCovariance;
  return Math.sqrt(Math.max(0, variance));
}

/**
 * The chance of each class, from a capacity and its standard error. A band begins half a gallon below its printed edge,
 * because the capacity is rounded to the whole gallon before it is banded.
 */
export function classChances(
  capacityGpm: number,
  standardFraction: number,
  bands: readonly ClassBand[],
): { readonly hydrantClass: HydrantClass; readonly chance: number }[] {
  let above = 1;
  return bands
    .map(({ hydrantClass, fromGpm }) => {
      const edge = fromGpm - 0.5;
      const below =
        edge <= 0
          ? 0
          : standardFraction === 0
            ? Number(capacityGpm < edge)
            : normalShareBelow(Math.log(edge / capacityGpm) / standardFraction);
      const chance = Math.max(0, above - below);
      above = below;
      return { hydrantClass, chance };
    })
    .sort((a, b) => b.chance - a.chance);
}

/** 95 % interval of a capacity above zero, with the chances of the classes. */
export function capacityInterval(
  test: Pressures,
  rated: { readonly capacityGpm: number; readonly residualPsi: number; readonly hydrantClass: HydrantClass },
  spread: ReadingSpread,
  bands: readonly ClassBand[],
): CapacityInterval {
  const { total, pressure } = logFlowVariance(test, rated.residualPsi, spread);
  const { lowGpm, highGpm, standardFraction } = flowInterval(
    test,
    rated.residualPsi,
    rated.capacityGpm,
    spread,
  );
  const all = classChances(rated.capacityGpm, standardFraction, bands);
  const causes: { cause: Cause; share: number }[] = [{ cause: 'pressure', share: pressure / total }];
  for (const cause of flowCauses)
    if (spread.flowVariance[cause] > 0) causes.push({ cause, share: spread.flowVariance[cause] / total });
  return {
    coverage: 0.95,
    lowGpm,
    highGpm,
    standardFraction,
    classChance: all.find(({ hydrantClass }) => hydrantClass === rated.hydrantClass)?.chance ?? 0,
    chances: all.filter(({ chance }) => chance >= 0.005),
    causes: total > 0 ? causes.sort((a, b) => b.share - a.share) : [],
    assumed: spread.assumed,
  };
}
