import * as z from 'zod';
import { chosenId, interval, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** Time spent on the claim and not on the hydrant. Off the demand unless the rate book names an ordinance for it. */
export const claimHandling = form({
  kind: 'claim-handling',
  subjects: ['strike'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    workerId: chosenId,
    laborClass: chosenId,
    work: z.array(interval).min(1).max(30),
    what: shortText,
  }),
});
