import { availableFlowGpm } from './availableFlow.ts';
import { capacityInterval, type CapacityInterval } from './capacityInterval.ts';
import { refuse } from './card.ts';
import { readingFlow, type FlowReading, type ReadingFlow } from './flowReadings.ts';
import { flowTestProblems, type FlowTestInput } from './flowTestInput.ts';
import { standardFlowTestSettings, type FlowTestSettings } from './flowTestSettings.ts';
import { flowTestWarnings, type FlowTestWarning } from './flowTestWarnings.ts';
import { classNameOf, hydrantClassOf, type HydrantClass } from './hydrantClass.ts';
import { pressureDrop } from './pressureDrop.ts';
import { ratingResidual, type Rating } from './ratingResidual.ts';
import { readingSpread, type ReadingSpread } from './readingSpread.ts';

export interface FlowTestResult {
  /** Flow while the residual was read, gpm: the sum of the outlets, or the metered flow. */
  readonly measuredFlowGpm: number;
  /** Flow at the target residual, gpm; null when the drop is too small to project from. 0 when static is below it. */
  readonly availableFlowGpm: number | null;
  /** Class by the rated capacity; null when the drop is too small for a rating. */
  readonly hydrantClass: HydrantClass | null;
  /** The class as the utility names it. */
  readonly className: string | null;
  readonly targetResidualPsi: number;
  readonly drop: { readonly psi: number; readonly fraction: number; readonly sufficient: boolean };
  /** What the class stands on: the rating residual, how it was chosen, and the flow there, gpm. */
  readonly rating: Rating & { readonly capacityGpm: number | null };
  /** How well the capacity is known from the readings; null when there is none, or nothing flows at that residual. */
  readonly interval: CapacityInterval | null;
  /** Each outlet's flow and the pumper factor in it (1 for a hose outlet), in the order given; empty when metered. */
  readonly outlets: readonly ReadingFlow[];
  /** Flow of each hydrant that was named, in the order of their first outlets. */
  readonly hydrants: readonly { readonly hydrantId: string; readonly flowGpm: number }[];
  /** For the band of the supply curve, and whoever compares two tests. */
  readonly spread: ReadingSpread;
  readonly warnings: readonly FlowTestWarning[];
}

/** Small numbers first, so that the order in which outlets were written down cannot change the last digit. */
function sum(values: readonly number[]): number {
  if (values.length === 1) return values[0] ?? 0;
  return [...values].sort((a, b) => a - b).reduce((total, value) => total + value, 0);
}

function byHydrant(
  readings: readonly FlowReading[],
  outlets: readonly ReadingFlow[],
): FlowTestResult['hydrants'] {
  const flows = new Map<string, number[]>();
  readings.forEach(({ hydrantId }, index) => {
    if (hydrantId === undefined) return;
    flows.set(hydrantId, [...(flows.get(hydrantId) ?? []), outlets[index]?.flowGpm ?? 0]);
  });
  return [...flows].map(([hydrantId, each]) => ({ hydrantId, flowGpm: sum(each) }));
}

/**
 * What a flow test says of the hydrant at which static and residual were read: measured flow, flow at the target
 * residual, rated capacity with its interval, class, and every doubt as a coded warning. Nothing is rounded but the
 * class edge.
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
  const readings = input.outlets ?? [];
  const outlets = readings.map(readingFlow);
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
  const hydrantClass = capacityGpm === null ? null : hydrantClassOf(capacityGpm, settings.classBands);
  const spread = readingSpread(input, outlets, settings.errors);
  const interval =
    capacityGpm !== null && capacityGpm > 0 && hydrantClass !== null
      ? capacityInterval(
          input,
          { capacityGpm, residualPsi: rating.residualPsi, hydrantClass },
          spread,
          settings.classBands,
        )
      : null;

  return {
    measuredFlowGpm,
    availableFlowGpm: flowAt(targetResidualPsi),
    hydrantClass,
    className: hydrantClass === null ? null : classNameOf(hydrantClass, settings.classBands),
    targetResidualPsi,
    drop: { psi: drop.psi, fraction: drop.fraction, sufficient: drop.sufficient },
    rating: { ...rating, capacityGpm },
    interval,
    outlets,
    hydrants: byHydrant(readings, outlets),
    spread,
    warnings: flowTestWarnings({
      input,
      measuredFlowGpm,
      drop,
      rating,
      targetResidualPsi,
      interval,
      settings,
    }),
  };
}
