import * as z from 'zod';
import { longText, submissionId } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, remarks } from './common.ts';

/** What the utility says to a dispute, a short payment or a denial: it stands by the lines, or gives way. */
export const disputeAnswered = form({
  kind: 'dispute-answered',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    answeredOn: day,
    /** The dispute, payment, offer or denial it answers. */
    answers: submissionId,
    outcome: z.enum(['stands', 'corrected', 'conceded']),
    reason: longText,
    ...remarks,
  }),
});
