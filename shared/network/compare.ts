import type { FlowTestResult } from '../hydraulics/evaluateFlowTest.ts';
import type { AvailableFlowAnswer } from './answer.ts';

/** The field test's capacity beside the model's flow at the same residual. */
export interface FieldAndModel {
  readonly fieldGpm: number;
  readonly modelGpm: number;
  /** Model less field, as a share of the field's. */
  readonly fraction: number;
  /** Whether the model lies inside what the field's readings allow. */
  readonly verdict: 'agree' | 'model-higher' | 'model-lower';
}

/**
 * What a model says beside what was measured. Null when the test gives no capacity, has no interval, or was rated at
 * another residual than the model was asked for.
 */
export function compareWithField(
  { rating, interval }: Pick<FlowTestResult, 'rating' | 'interval'>,
  { flowGpm, residualPsi }: Pick<AvailableFlowAnswer, 'flowGpm' | 'residualPsi'>,
): FieldAndModel | null {
  if (rating.capacityGpm === null || interval === null || rating.residualPsi !== residualPsi) return null;
  return {
    fieldGpm: rating.capacityGpm,
    modelGpm: flowGpm,
    fraction: flowGpm / rating.capacityGpm - 1,
    verdict:
      flowGpm > interval.highGpm ? 'model-higher' : flowGpm < interval.lowGpm ? 'model-lower' : 'agree',
  };
}
