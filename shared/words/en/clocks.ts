/** Dates of a claim: rules, citations, calendar, digest. */
export const clocks = {} as const;
