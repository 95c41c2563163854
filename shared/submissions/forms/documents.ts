import * as z from 'zod';
import { exhibit, longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** What a paper is, in the order in which a packet holds them. */
export const documentKinds = [
  'police-report',
  'invoice',
  'time-sheet',
  'issue-slip',
  'photo-log',
  'letter',
  'rate-authority',
  'other',
] as const;

/** Papers and pictures that were got later than the work: police report, invoices, time sheets, a neighbour's photo. */
export const documents = form({
  kind: 'documents',
  subjects: ['strike'],
  writers: ['crew', 'clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    documents: z
      .array(
        exhibit.extend({
          what: z.enum(documentKinds),
          title: shortText,
          /** The number on the paper: of the report, the invoice, the slip. */
          number: z.string().trim().min(1).max(60).nullable(),
        }),
      )
      .min(1)
      .max(40),
    note: longText.nullable(),
  }),
});
