import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { chosenId, instant, longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

/**
 * Water lost at a strike, as a named person puts it: a figure and what it stands on. A hydrant whose main valve held
 * lost none, and then nobody has to write this. The latest one stands.
 */
export const waterLost = form({
  kind: 'water-lost',
  subjects: ['strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** US gallons. Ten million is two days at the most that any one hydrant could give. */
      waterLostGal: z.number().min(0).max(10_000_000),
      method: z.enum(['metered', 'flow-times-duration', 'other']),
      /** What the figure stands on, in a sentence that an insurer may read. */
      basis: shortText,
      flowingFrom: instant.nullable(),
      flowingTo: instant.nullable(),
      byWorkerId: chosenId,
      note: longText.nullable(),
    })
    .superRefine(({ flowingFrom, flowingTo }, ctx) => {
      if (flowingFrom !== null && flowingTo !== null && Date.parse(flowingTo) <= Date.parse(flowingFrom))
        ctx.addIssue(problemIssue('interval-ends-before-start', ['flowingTo']));
    }),
});
