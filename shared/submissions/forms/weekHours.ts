import * as z from 'zod';
import { hours } from '../../costs/book/decimals.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { chosenId, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** Hours that workers had in the fixed week before this job, from the payroll: overtime past the week counts from them. */
export const weekHours = form({
  kind: 'week-hours',
  subjects: ['strike'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    weeks: z
      .array(z.strictObject({ workerId: chosenId, weekStartsOn: z.iso.date(), hours }))
      .min(1)
      .max(60)
      .check(
        relations((weeks, ctx) => {
          const seen = new Set<string>();
          weeks.forEach(({ workerId, weekStartsOn }, index) => {
            const key = `${workerId}\u0000${weekStartsOn}`;
            if (seen.has(key)) ctx.addIssue(problemIssue('worker-twice', [index, 'workerId']));
            seen.add(key);
          });
        }),
      ),
    /** The time sheet or payroll run it was taken from. */
    source: shortText,
  }),
});
