import { flowTestCautions } from '../hydraulics/cautions.ts';
import { evaluateFlowTest } from '../hydraulics/evaluateFlowTest.ts';
import { flowTestInput } from '../hydraulics/flowTestInput.ts';
import { flowTestRules, flowTestSettingsFrom } from '../hydraulics/flowTestSettings.ts';
import { sayCapacity } from '../hydraulics/sayCapacity.ts';
import { sayWarning } from '../hydraulics/sayWarning.ts';
import { say } from '../words/index.ts';
import { computation } from './computation.ts';

export const flowTest = computation({
  name: 'flow-test',
  summary: 'hydraulics.compute.flow-test.summary',
  output: 'hydraulics.compute.flow-test.output',
  eitherSystem: true,
  input: flowTestInput.safeExtend({ rules: flowTestRules.optional() }),
  example: {
    staticPsi: 86,
    residualPsi: 42,
    outlets: [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
    targetResidualPsi: 20,
  },
  run: ({ rules, ...input }, reader) => {
    const { spread: _internal, ...result } = evaluateFlowTest(input, flowTestSettingsFrom(rules));
    const warnings = result.warnings.map((warning) => ({
      ...warning,
      sentence: sayWarning(warning, reader),
    }));
    const cautions = flowTestCautions.map((code) => say(reader.locale, `hydraulics.caution.${code}`));
    return { answer: sayCapacity(result, reader), ...result, warnings, cautions };
  },
});
