import { flowReading, readingFlow } from '../hydraulics/flowReadings.ts';
import { computation } from './computation.ts';

export const outletFlow = computation({
  name: 'outlet-flow',
  summary: 'hydraulics.compute.outlet-flow.summary',
  output: 'hydraulics.compute.outlet-flow.output',
  eitherSystem: true,
  input: flowReading,
  example: { diameterIn: 2.5, coefficient: 0.9, pitotPsi: 40, kind: 'hose' },
  run: (reading) => readingFlow(reading),
});
