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
    .superRefine(({ value, from, to }, ctx) => {
      const choices = unitIds.filter((unit) => sameQuantity(unit, from)).join(', ');
      if (!sameQuantity(from, to)) ctx.addIssue(problemIssue('units-differ', ['to'], { from, to, choices }));
      else if (!Number.isFinite(convert(value, from, to)))
        ctx.addIssue(problemIssue('beyond-numbers', ['value'], { to, most: Number.MAX_VALUE }));
    }),
  example: { value: 28, from: 'psi', to: 'kPa' },
  run: ({ value, from, to }) => ({ value: convert(value, from, to), unit: to, factor: factor(from, to) }),
});
