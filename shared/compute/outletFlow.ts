import { testOutlet } from '../hydraulics/flowTestInput.ts';
import { outletFlowGpm } from '../hydraulics/outletFlow.ts';
import { pumperFactor } from '../hydraulics/pumperOutlet.ts';
import { computation } from './computation.ts';

export const outletFlow = computation({
  name: 'outlet-flow',
  summary: 'hydraulics.compute.outlet-flow.summary',
  output: 'hydraulics.compute.outlet-flow.output',
  input: testOutlet,
  example: { diameterIn: 2.5, coefficient: 0.9, pitotPsi: 40, kind: 'hose' },
  run: ({ kind, ...reading }) => {
    const factor = kind === 'pumper' ? pumperFactor(reading.pitotPsi) : 1;
    return { flowGpm: factor * outletFlowGpm(reading), pumperFactor: factor };
  },
});
