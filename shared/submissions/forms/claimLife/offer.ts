import * as z from 'zod';
import { longText, shortText, submissionId } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, remarks, someCents } from './common.ts';

/** The payer offers an amount. */
export const offerMade = form({
  kind: 'offer-made',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    offeredOn: day,
    amountCents: someCents,
    /** Whether it ends the whole claim, and whether the utility is asked to sign a release. */
    inFull: z.boolean(),
    releaseAsked: z.boolean(),
    expiresOn: day.nullable(),
    terms: longText.nullable(),
    ...remarks,
  }),
});

/** What the utility says to an offer, and who may say so. */
export const offerAnswered = form({
  kind: 'offer-answered',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    answeredOn: day,
    answers: submissionId,
    answer: z.enum(['accepted', 'declined', 'countered']),
    /** What is asked instead. */
    counterCents: someCents.nullable(),
    /** Who decided, by which power: a by-law, a delegation, a council's vote. */
    authority: shortText,
    ...remarks,
  }),
});
