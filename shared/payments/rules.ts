import * as z from 'zod';

const words = (most: number) => z.string().trim().min(1).max(most);

/** Where a rule comes from, and counsel's name once counsel has confirmed it; null: have counsel confirm. */
const sourced = {
  citation: words(200),
  jurisdiction: words(80),
  confirmedBy: z.strictObject({ name: words(120), on: z.iso.date() }).nullable(),
};

/**
 * Rules of the utility's state on money that comes in, as it holds them. States differ and change, so none is built
 * in: each is dated, cited data. Left out, the desk cautions without naming a date. Nothing here is legal advice.
 */
export const claimRules = z.strictObject({
  /** A cheque tendered as full satisfaction of a disputed claim: UCC 3-311 as the state enacted it. */
  fullPayment: z
    .strictObject({
      /** Days after payment of the instrument in which the sum may be tendered back: 90 in 3-311(c)(2). Null: no such rule. */
      repayWithinDays: z.int().min(1).max(365).nullable(),
      /**
       * The office that payers were told to send such cheques to (3-311(c)(1)); null: none was named. Who has named one
       * cannot tender the money back.
       */
      officeNamed: words(300).nullable(),
      ...sourced,
    })
    .optional(),
  /** Whether courts of the state take depreciation off what a destroyed part of a system cost: for replies to disputes. */
  depreciation: z
    .strictObject({
      position: z.enum(['not-deducted', 'deducted', 'replacement-less-depreciation']),
      ...sourced,
    })
    .optional(),
});
export type ClaimRules = z.infer<typeof claimRules>;
