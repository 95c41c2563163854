import * as z from 'zod';

/**
 * Whether and as whom the utility alerts (CAP 1.2). Left out: it does not. Nothing has a default, because each is a
 * statement to the public that somebody must answer for; codes and their meaning are the standard's (§3.2).
 */
export const alertSettings = z.strictObject({
  /** Unique among all who alert, by the standard mostly a domain name or an address below one. */
  sender: z
    .string()
    .min(3)
    .max(120)
    // Spaces, commas, `<` and `&` are what the standard forbids.
    .regex(/^[^\s,<&]+$/, { error: 'cap-sender' }),
  /** `Test` while trying it out: receivers are to disregard it. */
  status: z.enum(['Actual', 'Test']),
  urgency: z.enum(['Immediate', 'Expected', 'Future', 'Unknown']),
  severity: z.enum(['Extreme', 'Severe', 'Moderate', 'Minor', 'Unknown']),
});
export type AlertSettings = z.infer<typeof alertSettings>;
