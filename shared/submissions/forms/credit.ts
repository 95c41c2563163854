import * as z from 'zod';
import { cents, longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** Why something comes off the bill: 23 CFR 645.117(e)(2) and (h), and what courts have deducted. */
export const creditKinds = [
  'salvage',
  'recovered-material',
  'temporary-material',
  'betterment',
  'depreciation',
  'joint-owner',
  'other',
] as const;

/** What comes off the bill, and why. It lowers the statement as soon as it is recorded. */
export const credit = form({
  kind: 'credit',
  subjects: ['strike'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    credit: z.enum(creditKinds),
    title: shortText,
    amountCents: cents.min(1),
    /** How the amount was come by, for whoever checks it. */
    basis: longText,
    /** The key of the objection that it grants, when it was accepted; a credit of another reason has none. */
    objection: z.string().trim().min(1).max(200).optional(),
  }),
});
