import type { FlowTestInput, PreviousTest, TestOutlet } from './flowTestInput.ts';
import type { FlowReading } from './flowReadings.ts';
import type { TestGauge } from './testGauge.ts';

/** A recorded flow test as far as the engine needs it; the body of the form fits. */
export interface RecordedTest {
  readonly residualHydrantId: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly targetResidualPsi: number;
  readonly measuredFlowGpm: number | null;
  readonly flowHydrants: readonly {
    readonly hydrantId: string;
    readonly outlets: readonly (
      FlowReading | (Pick<TestOutlet, 'diameterIn' | 'coefficient' | 'pitotPsi'> & Partial<TestOutlet>)
    )[];
  }[];
  readonly gauges: readonly TestGauge[];
}

/**
 * The engine's input of a recorded test, in one place, so that form, page and packet judge it alike. `testedOn` is the
 * local date, which only the caller's time zone gives; `previous` the hydrant's last test before it.
 */
export function flowTestInputFrom(
  body: RecordedTest,
  { testedOn, previous }: { readonly testedOn?: string; readonly previous?: PreviousTest } = {},
): FlowTestInput {
  const {
    residualHydrantId,
    staticPsi,
    residualPsi,
    targetResidualPsi,
    measuredFlowGpm,
    flowHydrants,
    gauges,
  } = body;
  const outlets = flowHydrants.flatMap(({ hydrantId, outlets: each }) =>
    each.map((outlet): FlowReading => ({ ...outlet, hydrantId })),
  );
  return {
    residualHydrantId,
    staticPsi,
    residualPsi,
    targetResidualPsi,
    gauges,
    testedOn,
    previous,
    // A metered flow is the better reading where both were taken.
    ...(measuredFlowGpm === null ? { outlets } : { measuredFlowGpm }),
  };
}
