import * as z from 'zod';
import { code } from './decimals.ts';

/** What money is booked to. Words: `field.rate-book.accounts.<code>`. */
export const accountUses = ['cash', 'receivable', 'recovery', 'writeOff', 'shared'] as const;
export type AccountUse = (typeof accountUses)[number];

/** The finance department's account numbers, for the journal that it takes over; each may be left open. */
export const accounts = z.strictObject({
  cash: code.nullable(),
  receivable: code.nullable(),
  recovery: code.nullable(),
  writeOff: code.nullable(),
  shared: code.nullable(),
});
export type Accounts = z.infer<typeof accounts>;
