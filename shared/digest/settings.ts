import * as z from 'zod';

/** Plain addresses only: one that carries a line break or a second address could write to strangers. */
const address = z.email().max(120);

/** Who is told each day of what is due, and when. */
export const digestSettings = z.strictObject({
  /** The hour of the utility's day from which it goes out; it is tried again each hour after. */
  hour: z.int().min(0).max(23),
  /** The address it comes from, which the mail service must know as the utility's. */
  from: address,
  /** Clerks and managers, one letter each. */
  to: z
    .array(
      z.strictObject({
        personId: z.string().min(1).max(64),
        email: address,
        /** Left out: the utility's language. */
        locale: z.enum(['en', 'es']).optional(),
      }),
    )
    .min(1)
    .max(50),
  /** Whether a day on which nothing is due brings a letter that says so; silence could also mean that it broke. */
  whenNothing: z.enum(['send', 'skip']).default('send'),
});
