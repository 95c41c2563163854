/** Money in and out, balance, the ledger for finance. */
export const payments = {
  'problem.reverses-no-payment':
    'This reversal is of a payment that is not on record. Record the payment, or correct the reversal.',
  'problem.reversal-above-payment':
    'More was reversed than came in: {amountCents, number} cents of {leftCents, number}. Correct one of them.',
  'problem.refund-above-payments':
    'More was refunded than was paid and stayed. Correct the refund, or record the payment it belongs to.',
  'problem.shared-above-paid': 'More was passed on than was recovered. Correct the share.',
  'problem.write-off-above-balance': 'More was written off than was owed. Correct the write-off.',
  'problem.payment-without-demand':
    'Money came in before a demand was recorded. Record the demand, or say what the money is for.',
  'problem.overpaid':
    'More was paid than was asked. The difference is the payer’s: give it back, or agree what it is for.',
  'problem.answers-nothing':
    'This answers something that is not on record in this claim. Correct what it answers.',
  'problem.event-later-than-recorded': '{on} is later than the day it was recorded. Correct the day.',
  'problem.closed-with-balance':
    'The claim is closed, and part of it is neither paid nor written off. Write it off by name, or reopen the claim.',
  'problem.payment-held':
    'A cheque lies in the drawer. Decide what its mark means, then deposit it or send it back.',
  'problem.full-payment-cashed':
    'A cheque marked as full payment was deposited while lines were disputed. That can end the claim (UCC 3-311). Ask counsel; a repayment within 90 days may undo it where the law has that rule.',
} as const;
