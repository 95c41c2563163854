import { OutOfRange } from './card.ts';
import { evaluateFlowTest, type FlowTestResult } from './evaluateFlowTest.ts';
import { standardFlowTestSettings, type FlowTestSettings } from './flowTestSettings.ts';
import { flowTestInputFrom, type RecordedTest } from './fromFact.ts';

/**
 * What a recorded test says of its residual hydrant, judged alike by lists and packet; null for readings that cannot be
 * a test: the form refuses them, an old record may hold them, and that is no reason to stop publishing.
 */
export function evaluateRecorded(
  test: Omit<RecordedTest, 'gauges' | 'residualHydrantId'>,
  settings: FlowTestSettings = standardFlowTestSettings,
): FlowTestResult | null {
  try {
    // Without gauges and hydrant: what they add is doubt for the tester, and page and packet are not the place.
    const {
      gauges: _gauges,
      residualHydrantId: _hydrant,
      ...readings
    } = flowTestInputFrom({
      ...test,
      residualHydrantId: '',
      gauges: [],
    });
    return evaluateFlowTest(readings, settings);
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}
