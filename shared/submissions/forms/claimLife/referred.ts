import * as z from 'zod';
import { shortText } from '../../fields.ts';
import { form } from '../../form.ts';
import { cents } from '../../fields.ts';
import { day, deskOnly, remarks, someCents } from './common.ts';

/** The claim goes to somebody else to bring home. */
export const claimReferred = form({
  kind: 'claim-referred',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    referredOn: day,
    to: z.enum(['counsel', 'small-claims', 'collection', 'arbitration']),
    name: shortText.nullable(),
    caseNumber: z.string().trim().max(60).nullable(),
    ...remarks,
  }),
});

/** A court orders an offender to pay for the damage. */
export const restitutionOrdered = form({
  kind: 'restitution-ordered',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    orderedOn: day,
    court: shortText,
    caseNumber: z.string().trim().max(60).nullable(),
    amountCents: someCents,
    payBy: day.nullable(),
    ...remarks,
  }),
});

/** What was agreed to be paid, and when. */
export const paymentPlan = form({
  kind: 'payment-plan',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    agreedOn: day,
    instalments: z
      .array(z.strictObject({ dueOn: day, amountCents: cents.min(1) }))
      .min(1)
      .max(120),
    authority: shortText,
    ...remarks,
  }),
});
