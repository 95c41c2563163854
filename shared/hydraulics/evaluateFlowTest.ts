import { availableFlowGpm } from './availableFlow.ts';
import { refuse } from './card.ts';
import { flowTestProblems, type FlowTestInput, type TestOutlet } from './flowTestInput.ts';
import { standardFlowTestSettings, type FlowTestSettings } from './flowTestSettings.ts';
import { flowTestWarnings, type FlowTestWarning } from './flowTestWarnings.ts';
import { hydrantClassOf, type HydrantClass } from './hydrantClass.ts';
import { outletFlowGpm } from './outletFlow.ts';
import { pressureDrop } from './pressureDrop.ts';
import { pumperFactor } from './pumperOutlet.ts';
import { ratingResidual, type Rating } from './ratingResidual.ts';

export interface FlowTestResult {
  /** Flow while the residual was read, gpm: the sum of the outlets, or the metered flow. */
  readonly measuredFlowGpm: number;
  /** Flow at the target residual, gpm; null when the drop is too small to project from. 0 when static is below it. */
  readonly availableFlowGpm: number | null;
  /** Class by the rated capacity; null when the drop is too small for a rating. */
  readonly hydrantClass: HydrantClass | null;
  readonly targetResidualPsi: number;
  readonly drop: { readonly psi: number; readonly fraction: number; readonly sufficient: boolean };
  /** What the class stands on: the rating residual, how it was chosen, and the flow there, gpm. */
  readonly rating: Rating & { readonly capacityGpm: number | null };
  /** Each outlet's flow and the pumper factor in it (1 for a hose outlet), in the order given; empty when metered. */
  readonly outlets: readonly { readonly flowGpm: number; readonly pumperFactor: number }[];
  readonly warnings: readonly FlowTestWarning[];
}

/** Flow of one outlet with its pumper factor. */
function outletResult({
  diameterIn,
  coefficient,
  pitotPsi,
  kind,
}: TestOutlet): FlowTestResult['outlets'][number] {
  const factor = kind === 'pumper' ? pumperFactor(pitotPsi) : 1;
  return { flowGpm: factor * outletFlowGpm({ diameterIn, coefficient, pitotPsi }), pumperFactor: factor };
}

/** Small numbers first, so that the order in which outlets were written down cannot change the last digit. */
const sum = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b).reduce((total, value) => total + value, 0);

/**
 * What a flow test says of the hydrant at which static and residual were read: measured flow, flow at the target
 * residual, rated capacity, class, and every doubt as a coded warning. Nothing is rounded but the class edge.
 *
 * A drop too small to project from gives no available flow and no class: the projection would be a number that nobody
 * should see. A hydrant whose static is not above the rating residual has a capacity of 0 there.
 *
 * @throws OutOfRange with every problem, when the readings cannot be a test (residual not below static, a value out of
 * range, flow given twice or not at all). Input that passed `flowTestInput` never throws.
 */
export function evaluateFlowTest(
  input: FlowTestInput,
  settings: FlowTestSettings = standardFlowTestSettings,
): FlowTestResult {
  refuse(flowTestProblems(input));
  const { staticPsi, residualPsi } = input;
  const outlets = (input.outlets ?? []).map(outletResult);
  const measuredFlowGpm = input.measuredFlowGpm ?? sum(outlets.map(({ flowGpm }) => flowGpm));
  const drop = pressureDrop(input, settings.minimumDropFraction);
  const rating = ratingResidual(staticPsi, input.ratingRule ?? settings.ratingRule, settings);
  const targetResidualPsi = input.targetResidualPsi ?? rating.residualPsi;

  const flowAt = (atResidualPsi: number): number | null => {
    if (!drop.sufficient) return null;
    if (atResidualPsi >= staticPsi) return 0;
    return availableFlowGpm({
      staticPsi,
      residualPsi,
      flowGpm: measuredFlowGpm,
      targetResidualPsi: atResidualPsi,
    });
  };
  const capacityGpm = flowAt(rating.residualPsi);

  return {
    measuredFlowGpm,
    availableFlowGpm: flowAt(targetResidualPsi),
    hydrantClass: capacityGpm === null ? null : hydrantClassOf(capacityGpm, settings.classBands),
    targetResidualPsi,
    drop: { psi: drop.psi, fraction: drop.fraction, sufficient: drop.sufficient },
    rating: { ...rating, capacityGpm },
    outlets,
    warnings: flowTestWarnings({ input, measuredFlowGpm, drop, rating, targetResidualPsi, settings }),
  };
}
