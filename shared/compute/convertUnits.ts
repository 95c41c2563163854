import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { convert, factor, sameQuantity } from '../units/convert.ts';
import { unitIds } from '../units/units.ts';
import { computation } from './computation.ts';

export const convertUnits = computation({
  name: 'convert',
  summary: 'hydraulics.compute.convert.summary',
  output: 'hydraulics.compute.convert.output',
  input: z
    .strictObject({ value: z.number(), from: z.enum(unitIds), to: z.enum(unitIds) })
    .superRefine(({ from, to }, ctx) => {
      const choices = unitIds.filter((unit) => sameQuantity(unit, from)).join(', ');
      if (!sameQuantity(from, to)) ctx.addIssue(problemIssue('units-differ', ['to'], { from, to, choices }));
    }),
  example: { value: 28, from: 'psi', to: 'kPa' },
  run: ({ value, from, to }) => ({ value: convert(value, from, to), unit: to, factor: factor(from, to) }),
});
