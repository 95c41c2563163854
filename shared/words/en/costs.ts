/** English words: what the cost engine finds while it counts hours, machines and materials. */
export const costs = {
  'packet.hours.minimum':
    'Hours of a call below its minimum are paid up to it: "2 h + 1 h (2 h < 3 h)" is two hours worked and one more up to the minimum of three.',
  'packet.hours.step':
    'Hours are counted in steps: "1 h 7 min + 8 min (1 h 7 min → 5 × 15 min)" is the time worked and what brings it to five steps.',

  'problem.working-hours-end-before-start':
    'These working hours end before they start. Give a shift past midnight as two: up to 24:00, and from 00:00 on the next day.',
  'problem.operator-in-machine-rate':
    '{time} that worker {workerId} spent operating {machineCode} are not billed as labor: the rate of the machine holds its operator.',
  'problem.operator-hours-not-recorded':
    'The rate of {machineCode} holds its operator, and the record has its miles and no hours of use. His hours may be billed twice: record when it was driven, and by whom.',
  'problem.flow-test-recorded-twice':
    'Two records are of a flow test at the same moment. It is billed once: correct the time of one, or withdraw it.',
  'problem.operator-not-named':
    'The rate of {machineCode} holds its operator, and the record does not name one. His hours may be billed twice: name the operator.',
  'problem.fuel-in-machine-rate':
    '{partNumber} is not billed: it is fuel, and the rate of {machines} holds it.',
  'problem.standby-under-half-day':
    '{machineCode} stood by for {time} on {dates}, when it was in use for no more than half of a working day of {hours} h. That is not billed.',
  'problem.standby-in-day-rate':
    '{machineCode} stood by for {time} on days that are billed whole. That is not billed again.',
  'problem.week-hours-twice':
    'Two records differ in the hours that worker {workerId} had in the week from {weekStartsOn}. The fewer, {hours} h, are counted.',
  'problem.week-hours-other-week':
    'The hours of worker {workerId} are given for a week from {weekStartsOn}, on which no week of the pay rules starts. They are not counted: give them from the day on which the week starts.',
  'problem.discount-above-price':
    'The discount is more than the price of this line, {priceCents, number, ::scale/0.01 .00}. Give the discount on this line as the invoice has it.',
  'problem.invoice-discount-above-price':
    'The discount on {partNumber} (invoice {invoiceNumber}) is more than its price. It is billed at zero: correct the record.',
  'problem.machine-listed-twice':
    'One record lists {machineCode} ({description}) {times, number} times with the same {time}. {standing, number} are billed. If it was one machine, correct the record; if not, say in the description which is which.',
  'problem.machine-listed-again':
    'One record lists {machineCode} ({description}) {times, number} times with the same {time} and the same operator, {operatorWorkerId}. It is billed once.',
  'problem.invoice-listed-twice':
    'One record lists invoice {invoiceNumber} of {contractor} {times, number} times with the same work ({work}) and amount. It is billed once. If the invoice has two such items, say in the work what each is.',
  'problem.claim-opened-twice':
    'This claim is opened twice and not in the same words, the second time as {claimNumber}. Withdraw the opening that is wrong.',
  'problem.claim-opened-for-two-strikes':
    'This claim is opened for two strikes ({strikeId} and {otherStrikeId}). Withdraw the opening that is wrong: a claim is of one strike.',
  'problem.party-not-of-strike':
    'The party that this claim names is not on record for its strike. Correct the claim: choose a party of this strike, or none.',
  'problem.demand-without-packet':
    'A demand of revision {revision, number} is recorded as sent, and no packet of that revision was issued. It does not count as billed: correct it.',
  'problem.demand-of-other-amount':
    'The demand that was sent with revision {revision, number} is recorded with {amountCents, number, ::scale/0.01 .00}, and the packet demands {demandCents, number, ::scale/0.01 .00}. It does not count as billed: correct it.',
  'problem.demand-sent-later-than-recorded':
    'A demand is recorded as sent on {sentOn}, a day that had not come when it was recorded. It does not count as billed: correct it.',
} as const;
