import * as z from 'zod';
import { form } from '../form.ts';

/** The letters that a claim sends. Which one a packet opens with hangs on who pays. */
export const letterKinds = [
  'demand-insurer',
  'demand-driver',
  'demand-self-insured',
  'notice-government',
  'claim-own-policy',
  'restitution-statement',
  'cover-unknown-payer',
] as const;

/** A letter's text as a person edited it, with its merge fields. The last one recorded is used. */
export const letterText = form({
  kind: 'letter-text',
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: ['text'],
  body: z.strictObject({
    letter: z.enum(letterKinds),
    /** Null once its person was forgotten. */
    text: z.string().trim().min(1).max(12_000).nullable(),
  }),
});
