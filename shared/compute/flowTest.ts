import { evaluateFlowTest } from '../hydraulics/evaluateFlowTest.ts';
import { flowTestInput } from '../hydraulics/flowTestInput.ts';
import { sayWarning } from '../hydraulics/sayWarning.ts';
import { computation } from './computation.ts';

export const flowTest = computation({
  name: 'flow-test',
  summary: 'hydraulics.compute.flow-test.summary',
  output: 'hydraulics.compute.flow-test.output',
  input: flowTestInput,
  example: {
    staticPsi: 86,
    residualPsi: 42,
    outlets: [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
    targetResidualPsi: 20,
  },
  run: (input) => {
    const result = evaluateFlowTest(input);
    const warnings = result.warnings.map((warning) => ({
      ...warning,
      sentence: sayWarning(warning, { system: 'us', locale: 'en' }),
    }));
    return { ...result, warnings };
  },
});
