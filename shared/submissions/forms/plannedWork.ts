import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Work to come. It takes nothing out of service by itself: an outage does, when the valve is closed. */
export const plannedWork = form({
  kind: 'planned-work',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      work: z.enum([
        'repair',
        'replacement',
        'flow-test',
        'flushing',
        'painting',
        'valve-work',
        'main-work',
        'other',
      ]),
      from: instant,
      to: instant,
      takesOutOfService: z.boolean(),
      note: longText.nullable(),
    })
    .check(
      relations((value, ctx) => {
        if (Date.parse(value.to) <= Date.parse(value.from))
          ctx.addIssue(problemIssue('interval-ends-before-start', ['to']));
      }),
    ),
});
