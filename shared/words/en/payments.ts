/** Money in and out, balance, the ledger for finance. */
export const payments = {} as const;
