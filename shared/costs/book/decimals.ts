import * as z from 'zod';

/**
 * A rate is a decimal number of dollars kept as text, so that no digit is lost on the way: "38.4150".
 * Up to six decimals, because published schedules and ordinances print up to four and fringe steps six.
 */
export const dollars = z.string().regex(/^\d{1,7}(\.\d{1,6})?$/);
/** A share such as 0.2848, as text for the same reason. */
export const fraction = z.string().regex(/^\d{1,2}(\.\d{1,6})?$/);
/** What a rate is multiplied by, at least 1: "1.5". */
export const multiplier = z.string().regex(/^[1-9](\.\d{1,6})?$/);
/** Hours, to the hundredth: "2.5". */
export const hours = z.string().regex(/^\d{1,3}(\.\d{1,2})?$/);

export const code = z.string().trim().min(1).max(64);
export const title = z.string().trim().min(1).max(200);
