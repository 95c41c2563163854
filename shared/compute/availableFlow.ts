import * as z from 'zod';
import { availableFlowGpm } from '../hydraulics/availableFlow.ts';
import { numberIn } from '../hydraulics/flowTestInput.ts';
import { pressureDrop } from '../hydraulics/pressureDrop.ts';
import { ranges } from '../hydraulics/ranges.ts';
import { computation } from './computation.ts';

export const availableFlow = computation({
  name: 'available-flow',
  summary: 'hydraulics.compute.available-flow.summary',
  output: 'hydraulics.compute.available-flow.output',
  eitherSystem: true,
  input: z.strictObject({
    staticPsi: numberIn(ranges.pressurePsi),
    residualPsi: numberIn(ranges.pressurePsi),
    flowGpm: numberIn(ranges.testFlowGpm),
    targetResidualPsi: numberIn(ranges.pressurePsi),
  }),
  example: { staticPsi: 86, residualPsi: 42, flowGpm: 789, targetResidualPsi: 20 },
  run: (input) => {
    const { psi, fraction, sufficient } = pressureDrop(input);
    return { flowGpm: sufficient ? availableFlowGpm(input) : null, drop: { psi, fraction, sufficient } };
  },
});
