import * as z from 'zod';
import { longText, submissionId } from '../../fields.ts';
import { form } from '../../form.ts';
import { channel, day, deskOnly, remarks } from './common.ts';

/** The payer asks for something before it decides. */
export const informationAsked = form({
  kind: 'information-asked',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    askedOn: day,
    what: longText,
    /** The day the payer named; null when it named none. */
    answerBy: day.nullable(),
    ...remarks,
  }),
});

/** What was asked for has been given. */
export const informationGiven = form({
  kind: 'information-given',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    givenOn: day,
    /** The request it answers; null when it was given unasked. */
    answers: submissionId.nullable(),
    what: longText,
    how: channel,
    ...remarks,
  }),
});
