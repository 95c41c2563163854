import * as z from 'zod';
import { cents, sha256Hex, submissionId } from '../../fields.ts';
import { form } from '../../form.ts';
import { channel, day, deskOnly, remarks } from './common.ts';

/** Letters that a claim sends after its packet. */
export const laterLetterKinds = [
  'demand',
  'follow-up',
  'reply-to-dispute',
  'supplement',
  'final-notice',
  'payment-plan-offer',
  'notice-own-insurer',
  'restitution-statement',
  'release-checklist',
] as const;

/**
 * A letter as it left the house: its text as merged and the hash of its PDF, which is kept as evidence. Written by the
 * server when a clerk sends it, so that what was sent cannot change later.
 */
export const letterSent = form({
  kind: 'letter-sent',
  ...deskOnly,
  personal: ['to', 'text'],
  body: z.strictObject({
    letter: z.enum(laterLetterKinds),
    sentOn: day,
    how: channel,
    to: z.string().trim().max(400).nullable(),
    /** The dispute, payment, offer or denial it replies to. */
    answers: submissionId.nullable(),
    /** What it asks for; null where it asks for no sum. */
    amountCents: cents.nullable(),
    /**
     * The paragraphs as they stand in the PDF. A reply to each of 200 lines that one dispute may name has some 160,000
     * characters; a row of the store holds 400 KiB.
     */
    text: z.string().max(200_000).nullable(),
    pdfSha256: sha256Hex,
    pdfBytes: z.number().int().min(1),
    ...remarks,
  }),
});
