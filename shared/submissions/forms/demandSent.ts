import * as z from 'zod';
import { cents, exhibit, longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** A demand that left the house: revision, to whom, how, how much. */
export const demandSent = form({
  kind: 'demand-sent',
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: ['to'],
  body: z.strictObject({
    revision: z.number().int().min(1).max(999),
    sentOn: z.iso.date(),
    to: shortText,
    how: z.enum(['email', 'post', 'portal', 'by-hand', 'fax']),
    amountCents: cents,
    note: longText.nullable(),
    /** A supplement asks for costs that came up later; a revised demand takes the place of the one before. */
    what: z.enum(['demand', 'supplement', 'revised']).optional(),
    /** The letter, the receipt of the post, the page of the portal. */
    exhibits: z.array(exhibit).max(20).optional(),
  }),
});
