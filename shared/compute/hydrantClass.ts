import * as z from 'zod';
import { numberIn } from '../hydraulics/flowTestInput.ts';
import { flowTestRules } from '../hydraulics/flowTestSettings.ts';
import { classBand } from '../hydraulics/hydrantClass.ts';
import { ranges } from '../hydraulics/ranges.ts';
import { computation } from './computation.ts';

export const hydrantClass = computation({
  name: 'hydrant-class',
  summary: 'hydraulics.compute.hydrant-class.summary',
  output: 'hydraulics.compute.hydrant-class.output',
  eitherSystem: true,
  input: z.strictObject({
    ratedFlowGpm: numberIn(ranges.flowGpm),
    classBands: flowTestRules.shape.classBands,
  }),
  example: { ratedFlowGpm: 999.6 },
  run: ({ ratedFlowGpm, classBands }) => {
    const band = classBand(ratedFlowGpm, classBands);
    return { hydrantClass: band.hydrantClass, color: band.color, wholeGpm: Math.round(ratedFlowGpm) };
  },
});
