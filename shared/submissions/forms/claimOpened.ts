import * as z from 'zod';
import { cents, longText, shortText, submissionId, uuidV7 } from '../fields.ts';
import { form } from '../form.ts';

/** Who is asked to pay. Which letter a claim opens with and which clocks run hang on it. */
export const payerKinds = [
  'drivers-insurer',
  'self-insured',
  'government',
  'own-policy',
  'driver',
  'restitution',
  'unknown',
] as const;
export type PayerKind = (typeof payerKinds)[number];

/** A claim against one liable party of one strike. A strike has none, one or several. */
export const claimOpened = form({
  kind: 'claim-opened',
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: ['payer.attention', 'payer.reference'],
  body: z.strictObject({
    strikeId: uuidV7,
    /** The party submission this claim is against; null while nobody is known (a hit and run). */
    partyId: submissionId.nullable(),
    /** The utility's own number, unique in the utility, e.g. 2026-0007. */
    claimNumber: z.string().regex(/^\d{4}-\d{4,6}$/),
    payerKind: z.enum(payerKinds),
    payer: z.strictObject({
      name: shortText.nullable(),
      address: z.string().trim().max(300).nullable(),
      attention: z.string().trim().max(120).nullable(),
      /** The payer's own file or claim number. */
      reference: z.string().trim().max(60).nullable(),
    }),
    /** What the utility's own policy leaves to the utility, whole cents; only where that policy is to pay. */
    deductibleCents: cents.optional(),
    note: longText.nullable(),
  }),
});
