/* eslint-disable no-template-curly-in-string -- a dollar sign before an argument of a sentence is money */
/** English words: what the rate book can say, and the lines of a bill that come of it. */
export const costBook = {
  'packet.section.flat-price': 'Flat price',
  'packet.section.fees': 'Fees',
  'packet.section.overhead': 'Overhead',
  'packet.section.claim-handling': 'Time spent on the claim',
  'packet.section.credits': 'Credits',
  'packet.section.adjustments': 'Adjustments',

  'packet.line.machine-days': '{description} ({item}), by the day',
  'packet.line.sales-tax': 'Sales tax, on {quantity} of materials',
  'packet.line.invoice-tax': 'Sales tax on the invoice for {description}',
  'packet.line.flat-price': '{description}',
  'packet.line.job-fee': '{description}',
  'packet.line.overhead': '{description}, on {quantity}',
  'packet.line.claim-handling': '{description}, worker {item}, on the claim',
  'packet.line.credit': 'Credit: {description}',
  'packet.line.minimum-charge': 'Up to the least charge of {rate}',
  'packet.line.total-rounding': 'Rounding of the total to {rate}',

  'packet.unit.day': '{count, plural, one {# day} other {# days}}',
  'packet.unit.100-ft3': '{quantity} × 100 ft³',
  'packet.unit.m3': '{quantity} m³',
  'packet.per.day': '{rate} /day',
  'packet.per.100-ft3': '{rate} per 100 ft³',
  'packet.per.m3': '{rate} per m³',

  'packet.time.working-hours': 'working hours',
  'packet.time.other-hours': 'outside working hours',
  'packet.time.holiday': 'holiday',
  'packet.time.week-overtime': 'past the hours of the week',

  'problem.pay-rules-not-listed':
    'The pay rules "{payRulesId}" are not in this edition. Add them, or leave the field out.',
  'problem.overhead-without-base': 'Say which lines this share is taken on.',
  'problem.overhead-not-listed-before':
    'The share "{overheadId}" must be listed above the share that stands on it.',
  'problem.claim-handling-needs-ordinance':
    'Time spent on the claim can be demanded only under an ordinance, resolution or tariff. Name one, or leave this empty.',
  'problem.credit-above-cost':
    'The credit "{title}" of ${creditCents, number, ::scale/0.01 .00} is more than the cost that is left; ${takenCents, number, ::scale/0.01 .00} of it is taken off.',
  'problem.covered-by-flat-price':
    'The flat price {tariff} stands in for {lines, plural, one {# line} other {# lines}} of {section, select, labor {labor} machines {machines} materials {materials} contractors {contractors} water {water} other {flow tests}}, which by time and materials would be ${amountCents, number, ::scale/0.01 .00}.',
  'problem.claim-handling-not-billed':
    '{time} were spent on the claim. They are recorded and not demanded: the rate book names no ordinance for it.',
  'problem.betterment-and-none': 'This says both that there is a betterment and why there is none. Keep one.',
} as const;
