import * as z from 'zod';
import { longText, shortText, submissionId } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, remarks, someCents } from './common.ts';

/** A payment that did not hold: the bank sent the cheque back, the payer stopped it, or it was booked by mistake. */
export const paymentReversed = form({
  kind: 'payment-reversed',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    reversedOn: day,
    payment: submissionId,
    amountCents: someCents,
    why: z.enum(['returned-by-bank', 'stopped', 'booked-in-error', 'other']),
    ...remarks,
  }),
});

/** Money given back to whoever paid too much. */
export const refundPaid = form({
  kind: 'refund-paid',
  ...deskOnly,
  personal: ['to', 'reference'],
  body: z.strictObject({
    paidOn: day,
    payment: submissionId.nullable(),
    amountCents: someCents,
    to: z.string().trim().max(200).nullable(),
    reference: z.string().trim().max(60).nullable(),
    reason: longText,
    ...remarks,
  }),
});

/**
 * What the utility passes on of a recovery: its own insurer paid first and takes back its part; the deductible stays
 * with the utility. By which agreement or rule the parts were made is said.
 */
export const recoveryShared = form({
  kind: 'recovery-shared',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    paidOn: day,
    with: shortText,
    amountCents: someCents,
    basis: longText,
    ...remarks,
  }),
});
