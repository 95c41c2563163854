/** What the desk counts: ageing, recovery, what was lost to which objection; search. */
export const claimFigures = {} as const;
