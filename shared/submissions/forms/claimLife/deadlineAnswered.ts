import * as z from 'zod';
import { chosenId, longText, shortText } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, remarks } from './common.ts';

/**
 * What a named person says to a date: done, put off, or let go. The limitation date stays in view until there is one:
 * suit brought, a tolling agreement, or the claim let go by name.
 */
export const deadlineAnswered = form({
  kind: 'deadline-answered',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    /** The clock, and what started it where it can run more than once: `limitation`, `answer-by:<submission id>`. */
    deadline: shortText,
    /** The date it is about: an answer given for another date does not count for this one. */
    dueOn: day,
    answer: z.enum(['done', 'put-off', 'tolled', 'suit-brought', 'let-go', 'not-ours']),
    /** Put off or tolled until. */
    until: day.nullable(),
    decidedByWorkerId: chosenId,
    reason: longText,
    ...remarks,
  }),
});

/** Whether the record must be kept beyond its retention, and why. */
export const legalHold = form({
  kind: 'legal-hold',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    from: day,
    hold: z.enum(['set', 'lifted']),
    reason: longText,
    decidedByWorkerId: chosenId,
    note: longText.nullable(),
  }),
});
