/** The claim after its packet: events, dates, money in and out, letters, the desk's figures. */
export const claimLife = {
  'problem.lines-above-payment':
    'The lines come to more than the payment. Lower a line, or correct the amount.',
  'problem.short-without-reason': 'Say why less was paid on this line; “other” takes the payer’s own words.',
} as const;
