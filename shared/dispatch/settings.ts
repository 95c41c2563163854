import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';

/** Plain addresses only: one that carries a line break or a second address could write to strangers. */
const email = z.email().max(120);
const phone = z.string().trim().min(3).max(40);

const recipient = {
  /** Names the recipient in records and logs, which hold no address. */
  recipientId: z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/, { error: 'recipient-id' }),
  /** How crews read it: `Dispatch floor`. A desk or a shared telephone, no private person. */
  label: z.string().trim().min(1).max(60),
  /** Left out: the utility's language. */
  locale: z.enum(['en', 'es']).optional(),
};

/** Messages to fire dispatch when a hydrant goes out of service and when it is back: who gets them, and how. */
export const dispatchMessageSettings = z
  .strictObject({
    /** False keeps the list and sends nothing. */
    on: z.boolean().default(true),
    /** The address that emails come from, which the mail service must know as the utility's. */
    from: email,
    /** The number that dispatch calls back; left out: `emergencyPhone`. */
    callBack: phone.optional(),
    /**
     * What happened longer ago than this when it became known is typed in late: no alarm is sent, and that is recorded.
     * Hours.
     */
    tooOldHours: z.number().int().min(1).max(72).default(12),
    /** Hydrants in service that an email names in place of the one that is out; a text names those that fit, 3 at most. */
    nearest: z.number().int().min(1).max(8).default(5),
    /** A text takes no more messages than this: 160 signs in one, 153 in each of several. */
    textSegments: z.number().int().min(1).max(4).default(2),
    to: z
      .array(
        z.discriminatedUnion('by', [
          z.strictObject({ ...recipient, by: z.literal('email'), email }),
          /** E.164: a plus, the country, the number. */
          z.strictObject({
            ...recipient,
            by: z.literal('text'),
            phone: z.string().regex(/^\+[1-9]\d{6,14}$/, { error: 'phone-e164' }),
          }),
        ]),
      )
      .min(1)
      .max(20),
  })
  .superRefine(({ to }, ctx) => {
    const ids = to.map(({ recipientId }) => recipientId);
    const twice = ids.findIndex((id, index) => ids.indexOf(id) !== index);
    if (twice >= 0) ctx.addIssue(problemIssue('recipient-twice', ['to', twice, 'recipientId']));
  });
export type DispatchMessageSettings = z.infer<typeof dispatchMessageSettings>;
export type DispatchRecipient = DispatchMessageSettings['to'][number];
