import * as z from 'zod';
import { longText } from '../fields.ts';
import { form } from '../form.ts';

/** What a person says to an objection that an insurer would likely raise, before the packet is sent. */
export const objectionAnswer = form({
  kind: 'objection-answer',
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    /** The rule, and what it is about where it can arise more than once: `part-no-paper:materials-2`. */
    objection: z.string().trim().min(1).max(200),
    /** Answered: there is evidence. Accepted: the insurer would be right. Overruled: it is sent all the same. */
    answer: z.enum(['answered', 'accepted', 'overruled']),
    reason: longText,
  }),
});
