import { availableFlowGpm, DROP_EXPONENT } from './availableFlow.ts';
import { logFlowVariance } from './capacityInterval.ts';
import type { FlowTestResult } from './evaluateFlowTest.ts';
import type { FlowTestSettings } from './flowTestSettings.ts';
import { COVERAGE_95, normalShareBelow } from './normal.ts';

/** A test of one hydrant with its day and its answer. */
export interface RatedTest {
  readonly testId: string;
  /** UTC instant. */
  readonly testedAt: string;
  /** The same as a local date. */
  readonly testedOn: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly result: FlowTestResult;
}

/**
 * `loss`: the capacity fell by the share that counts, and by more than the readings explain. `possible-loss`: it fell by
 * that share, and the readings might explain it. `gain` likewise upward; `steady`: neither.
 */
export const verdicts = ['loss', 'possible-loss', 'steady', 'gain'] as const;
export type Verdict = (typeof verdicts)[number];

export interface CapacityChange {
  readonly fromTestId: string;
  readonly toTestId: string;
  readonly fromTestedOn: string;
  readonly toTestedOn: string;
  /** Both at the rating residual of the later test, so that like is compared with like. */
  readonly atResidualPsi: number;
  readonly fromGpm: number;
  readonly toGpm: number;
  /** Change as a share of the earlier capacity; negative is a loss. */
  readonly fraction: number;
  /** 95 % interval of that share; null where nothing is left at that residual. */
  readonly between: { readonly low: number; readonly high: number } | null;
  /** How likely the true capacity fell at all, 0 to 1. */
  readonly lossChance: number;
  readonly staticChangePsi: number;
  /**
   * Change of the flow that the same drop in pressure brings, as a share. About 0 while the capacity fell: the pressure
   * is lower, and the pipes are as they were. Negative: something holds the water back.
   */
  readonly sameDropFraction: number;
  readonly verdict: Verdict;
}

/** Sure enough to be called a loss and not a chance of the readings. */
const SURE = 0.95;

function flowAt({ staticPsi, residualPsi, result }: RatedTest, targetResidualPsi: number): number {
  if (targetResidualPsi >= staticPsi) return 0;
  return availableFlowGpm({ staticPsi, residualPsi, flowGpm: result.measuredFlowGpm, targetResidualPsi });
}

/** Flow that one psi of drop would bring: what the pipes pass, whatever the pressure in them. */
const perDrop = ({ staticPsi, residualPsi, result }: RatedTest): number =>
  result.measuredFlowGpm / (staticPsi - residualPsi) ** DROP_EXPONENT;

/**
 * How the capacity changed from one test to a later one. The readings of the two are taken as independent; where the same
 * gauge read both, part of the error cancels and the change is surer than said.
 *
 * Null when either has too small a drop to say, or the earlier one had nothing at that residual.
 */
export function capacityChange(
  from: RatedTest,
  to: RatedTest,
  { lossFraction }: Pick<FlowTestSettings, 'lossFraction'>,
): CapacityChange | null {
  if (!from.result.drop.sufficient || !to.result.drop.sufficient) return null;
  const atResidualPsi = to.result.rating.residualPsi;
  const [fromGpm, toGpm] = [flowAt(from, atResidualPsi), flowAt(to, atResidualPsi)];
  if (fromGpm === 0) return null;
  const fraction = toGpm / fromGpm - 1;
  const variance =
    toGpm === 0
      ? null
      : logFlowVariance(from, atResidualPsi, from.result.spread).total +
        logFlowVariance(to, atResidualPsi, to.result.spread).total;
  const error = variance === null ? null : Math.sqrt(variance);
  const lossChance =
    error === null
      ? 1
      : error === 0
        ? Number(fraction < 0)
        : normalShareBelow(-Math.log(toGpm / fromGpm) / error);
  return {
    fromTestId: from.testId,
    toTestId: to.testId,
    fromTestedOn: from.testedOn,
    toTestedOn: to.testedOn,
    atResidualPsi,
    fromGpm,
    toGpm,
    fraction,
    between:
      error === null
        ? null
        : {
            low: (toGpm / fromGpm) * Math.exp(-COVERAGE_95 * error) - 1,
            high: (toGpm / fromGpm) * Math.exp(COVERAGE_95 * error) - 1,
          },
    lossChance,
    staticChangePsi: to.staticPsi - from.staticPsi,
    sameDropFraction: perDrop(to) / perDrop(from) - 1,
    verdict: verdictOf(fraction, lossChance, lossFraction),
  };
}

function verdictOf(fraction: number, lossChance: number, counts: number): Verdict {
  if (fraction <= -counts) return lossChance >= SURE ? 'loss' : 'possible-loss';
  return fraction >= counts && lossChance <= 1 - SURE ? 'gain' : 'steady';
}
