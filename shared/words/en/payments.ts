/** Money in and out, balance, the ledger for finance. */
export const payments = {
  'problem.reverses-no-payment':
    'This reversal is of a payment that is not on record. Record the payment, or correct the reversal.',
  'problem.reversal-above-payment':
    // eslint-disable-next-line no-template-curly-in-string -- a dollar sign, and then a parameter
    'More was reversed than came in: ${amountCents, number, ::scale/0.01 .00} of ${leftCents, number, ::scale/0.01 .00}. Correct one of them.',
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
    'A check lies in the drawer. Decide what its mark means, then deposit it or send it back.',
  'problem.full-payment-cashed':
    'A check marked as full payment was deposited while lines were disputed. That can end the claim (UCC 3-311). Ask counsel; a repayment within 90 days may undo it where the law has that rule.',
  'caution.full-payment.held':
    'This payment is marked as full and is less than the claim asks. Decide what the mark means before it is deposited: cashing it can end the claim.',
  'caution.full-payment.cashed':
    'This payment was marked as full, is less than the claim asks, and was deposited. That can end the claim.',
  'caution.full-payment.disputed':
    'The claim was disputed, cut or denied before, which is one of the things a court asks for.',
  'caution.full-payment.not-disputed':
    'No dispute is on record before it. Check letters and calls: a dispute that is not recorded counts all the same.',
  'caution.full-payment.no-cheque':
    'UCC 3-311 speaks of checks and the like. Another way of paying may settle a claim by agreement; ask counsel.',
  'caution.full-payment.repay-by':
    'The rule on record lets the money be tendered back within {days, plural, one {# day} other {# days}} of its payment: at the latest {date}, counted from the day it came. It does not help where whoever handles the claim knew of the mark before it was cashed.',
  'caution.full-payment.office':
    'Payers were told to send such checks to: {office}. Check where this one came in. With such a notice the money cannot be tendered back.',
  'caution.full-payment.no-rule':
    'No rule of your state is set for this (the model text is UCC 3-311). Have counsel confirm, and set it.',
  'caution.full-payment.to-confirm': '{citation}, {jurisdiction}: not confirmed by counsel yet.',
  'caution.full-payment.confirmed': '{citation}, {jurisdiction}, confirmed by {name} on {date}.',
  'problem.refund-of-no-payment':
    'This refund is of a payment that is not on record. Record the payment, or correct the refund.',
  'problem.refund-above-overpaid':
    'More was refunded than was paid too much, so part of the claim is open again. Correct the refund, or close the rest by name.',
  'problem.restitution-above-statement':
    'The court ordered more than the statement of costs comes to. Check the amount, and whether it is for other damage too.',
  'problem.closed-with-held-payment':
    'The claim is closed while a payment is held. Deposit it, send it back, or reopen the claim.',
  'problem.event-before-strike': '{on} is before the strike ({struckOn}). Correct the day.',
  'problem.event-before-opening':
    '{on} is before the claim was opened ({openedOn}). Correct the day, or the opening’s.',
  'problem.claim-is-closed':
    'This claim is closed: what it left unpaid may be asked of others. Reopen it before a further packet is issued.',
  'problem.claims-above-statement':
    // eslint-disable-next-line no-template-curly-in-string -- a dollar sign, and then a parameter
    'The claims of this strike ask ${tooMuchCents, number, ::scale/0.01 .00} more than its statement, since one was paid, reopened, or the statement fell. Send a revised demand.',
  'problem.strike-overpaid':
    'The claims of this strike were paid more than its statement comes to. Find out whose money it is, and give it back.',
  'problem.shared-above-insurer-paid':
    'More was passed on than the utility’s own insurer has paid for this strike. Correct the share.',
  'standing.open': 'Open',
  'standing.packet-issued': 'Packet issued',
  'standing.demand-sent': 'Demand sent',
  'standing.acknowledged': 'Acknowledged',
  'standing.information-asked': 'Information asked for',
  'standing.disputed': 'Disputed',
  'standing.offered': 'Offer open',
  'standing.denied': 'Denied',
  'standing.part-paid': 'Part paid',
  'standing.plan': 'Payment plan running',
  'standing.referred': 'Referred',
  'standing.restitution': 'Restitution ordered',
  'standing.written-off': 'Written off',
  'standing.paid': 'Paid',
  'standing.closed': 'Closed',
  'claim-flag.reopened': 'Reopened',
  'claim-flag.held-payment': 'Payment held',
  'claim-flag.overpaid': 'Overpaid',
  'claim-flag.plan-missed': 'Installment missed',
  'claim-flag.legal-hold': 'Legal hold',
  'problem.ledger-ends-before-start': 'The last day must not be before the first, {from}.',
} as const;
