import * as z from 'zod';
import { longText } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, remarks, shortReason } from './common.ts';

/** The payer says it will not pay, and why. */
export const claimDenied = form({
  kind: 'claim-denied',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    deniedOn: day,
    reasons: z.array(shortReason).min(1).max(14),
    /** In the payer's words. */
    words: longText,
    ...remarks,
  }),
});
