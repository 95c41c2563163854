/** English words: packet and statement of costs. */
export const packet = {
  'packet.compute.statement.summary':
    'Statement of costs: labor, machines, materials, contractors, water and flow tests, each line with its rate and authority.',
  'packet.compute.statement.output':
    'lines with quantity, rateUsd, amountCents (null: no rate was found), authority and arithmetic; sections; totalCents; complete; problems; notes. docs/costs.md has every field.',

  'problem.time-zone': 'Give a time zone by its IANA name, like America/Chicago.',
  'problem.edition-ends-before-start': 'The last day must not be before the first.',
  'problem.listed-twice': 'The code "{code}" is listed twice. Each code has one rate in an edition.',
  'problem.authority-not-listed':
    'The authority "{authorityId}" is not in this edition’s list of authorities. Add it there.',
  'problem.no-rate-edition':
    'No edition of the rate book is in force on {date}. Add one that covers that day.',
  'problem.two-rate-editions':
    'Two editions of the rate book are in force from the same day and both cover {date}: {editions}. Correct the dates of one.',
  'problem.no-labor-rate':
    'The rate book ({editionId}) has no rate for the labor class "{laborClass}" on {date}. The line is listed without an amount.',
  'problem.no-machine-rate':
    'The rate book ({editionId}) has no rate for the machine "{machineCode}" on {date}. The line is listed without an amount.',
  'problem.no-stock-price':
    'The rate book ({editionId}) has no price for the part "{partNumber}" on {date}. The line is listed without an amount.',
  'problem.no-water-rate':
    'The rate book ({editionId}) has no price for water on {date}. The line is listed without an amount.',
  'problem.machine-needs-miles':
    'The rate of machine "{machineCode}" is by the mile, and no miles are recorded.',
  'problem.machine-needs-hours':
    'The rate of machine "{machineCode}" is by the hour, and no hours in use are recorded.',
  'problem.handling-not-known':
    'No edition of the rate book covers the day the part "{partNumber}" was used, so no handling is charged on it.',
  'problem.stretch-too-long':
    'A stretch of more than 31 days is recorded for {item}. It is not billed; correct its times.',
  'problem.work-claimed-twice': 'Two records claim the same {time} of worker {workerId}. It is billed once.',
  'problem.machine-claimed-twice':
    'The same {time} of machine "{machineCode}" is recorded twice. It is billed once.',
  'problem.part-recorded-twice':
    'Two records name the same slip or invoice for the part "{partNumber}". It is billed once.',
  'problem.invoice-recorded-twice':
    'Two records hold invoice {invoiceNumber} of {contractor}. It is billed once.',
  'problem.invoice-with-two-amounts':
    'Two records hold invoice {invoiceNumber} of {contractor} with different work or amounts. Both are billed; check them.',
  'problem.water-though-valve-held':
    'A loss of {gallons, number} gallons is recorded, and the main valve held with nothing flowing. The water is not billed; correct one of the two.',
  'problem.miles-not-billed':
    '{miles, number} miles of machine "{machineCode}" are not billed: its rate is by the hour.',
  'problem.standby-not-billed':
    '{time} of machine "{machineCode}" standing by is not billed: its rate has no price for that.',
  'problem.flow-test-not-billed': 'A flow test that was not made because of the repair is not billed.',
  'problem.no-flow-test-fee': 'The rate book has no fee for a flow test; none is billed.',
  'problem.strike-date-taken':
    'When the strike happened is not known; rates of the strike’s day are those of {date}, {basis, select, reported {when it was reported} other {the day of the first record}}.',
  'problem.does-not-foot':
    'This does not foot: {printedCents, number, ::scale/0.01 .00} is stated, and the lines add up to {sumCents, number, ::scale/0.01 .00}.',
  'problem.statement-incomplete':
    'The statement has lines without an amount. Add the missing rates before it is demanded.',
  'problem.nothing-to-demand': 'The statement comes to nothing: there is no cost to demand.',
  'problem.nothing-left-to-demand':
    'Other claims of this strike already demand the whole statement: {claims}.',
  'problem.demand-above-statement':
    'No more than {leftCents, number, ::scale/0.01 .00} is left to demand{others, plural, =0 {} other { beside {claims}}}.',
} as const;
