/** English words: packet and statement of costs. */
export const packet = {
  'packet.compute.statement.summary':
    'Statement of costs: labor, machines, materials, contractors, water and flow tests, each line with its rate and authority.',
  'packet.compute.statement.output':
    'lines with quantity, rateUsd, amountCents (null: no rate was found), authority and arithmetic; sections; totalCents; complete; problems; notes. docs/costs.md has every field.',

  'packet.title': 'Claim packet {claimNumber}, revision {revision}',
  'packet.title-preview': 'Claim packet {claimNumber}, preview',
  'packet.subject': 'Damage to a fire hydrant: statement of costs and evidence',
  'packet.page-of': 'Page {page} of {pages}',
  'packet.preview.banner': 'PREVIEW: not issued, and not a demand',
  'packet.preview.short': 'preview, not issued',
  'packet.not-recorded': 'Not recorded',

  'packet.letter.subject': 'Claim {claimNumber}: damage to {hydrant}',
  'packet.letter.our-claim': 'Our claim',
  'packet.letter.revision': 'revision {revision}',
  'packet.letter.your-file': 'Your file',
  'packet.letter.policy': 'Policy',
  'packet.letter.police-report': 'Police report',
  'packet.letter.crash-report': 'Crash report code',
  'packet.letter.vehicle': 'Vehicle',
  'packet.letter.greeting': 'To whom it may concern:',
  'packet.letter.incident':
    'A vehicle struck {hydrant}{hasPlace, select, yes { at {place}} other {}}. {known, select, yes {It happened on {at}.} other {The time is not known; the first record of it is of {at}.}} Our crews made it safe and repaired it.',
  'packet.letter.returned': 'It was back in service on {at}.',
  'packet.letter.not-returned': 'It is not recorded as back in service yet.',
  'packet.letter.demand-all':
    'The cost of that work was {total}, and we ask you to pay it. The statement of costs that follows gives each line with its time or quantity, its rate, the authority for that rate, and the arithmetic.',
  'packet.letter.demand-part':
    'The cost of that work was {total}. Of this we ask you to pay {demand}. The statement of costs that follows gives each line with its time or quantity, its rate, the authority for that rate, and the arithmetic.',
  'packet.letter.other-demands':
    'Other claims for the same damage come to {others}. Together they are no more than the statement.',
  'packet.letter.pay': 'Please quote claim {claimNumber} with your payment, and send it to:',
  'packet.letter.enclosed':
    'With this letter: statement of costs; account of the damage and repair; timeline; flow test; photographs; and the list of records from which all of it was made. The figures are also in the attached file {attachment}.',
  'packet.letter.originals':
    'Original photographs, time sheets, issue slips and invoices are kept and can be inspected. This letter states facts and costs; it is not legal advice.',
  'packet.letter.closing': 'Sincerely,',

  'packet.hydrant.numbered': 'fire hydrant {hydrantId}',
  'packet.hydrant.without-number': 'a fire hydrant that has no number in our inventory',
  'packet.hydrant.number': 'Hydrant',
  'packet.hydrant.place': 'Place',
  'packet.hydrant.position': 'Position',
  'packet.hydrant.type': 'Type',
  'packet.hydrant.model': 'Model',
  'packet.hydrant.installed': 'Installed',
  'packet.hydrant.last-inspection': 'Last inspection before the strike',
  'packet.hydrant.last-flow-test': 'Last flow test before the strike',

  'packet.statement.title': 'Statement of costs',
  'packet.statement.how':
    'In US dollars. Each line is rounded once, half a cent up; the total is the sum of the lines. A rate is that of the edition in force on the date named with it.',
  'packet.statement.item': 'Item',
  'packet.statement.quantity': 'Quantity',
  'packet.statement.rate': 'Rate',
  'packet.statement.amount': 'Amount',
  'packet.statement.subtotal': '{section}, subtotal',
  'packet.statement.total': 'Total',
  'packet.statement.total-incomplete': 'Total of the lines that have an amount',
  'packet.statement.incomplete':
    'This statement is incomplete: it has lines without an amount, and its total is less than the cost.',
  'packet.statement.no-rate': 'No rate',
  'packet.statement.no-rate-short': 'none found',
  'packet.statement.no-rate-long': 'No rate was found for this line, so it has no amount.',
  'packet.statement.fringe': '+ {percent} fringe',
  'packet.statement.demanded': 'Demanded by this claim: {demand}',
  'packet.statement.notes': 'Notes to the statement',

  'packet.section.labor': 'Labor',
  'packet.section.machines': 'Machines',
  'packet.section.materials': 'Materials',
  'packet.section.contractors': 'Contractors',
  'packet.section.water': 'Water lost',
  'packet.section.flow-test': 'Flow test',

  'packet.line.labor': '{description}, worker {item}',
  'packet.line.machine-hours': '{description} ({item}), in use',
  'packet.line.machine-miles': '{description} ({item}), driven',
  'packet.line.machine-standby': '{description} ({item}), standing by',
  'packet.line.stock': '{description} ({item}), from stock',
  'packet.line.invoiced-part': '{description} ({item})',
  'packet.line.handling': 'Handling, on {quantity} of materials',
  'packet.line.contractor': '{description}, by {item}',
  'packet.line.water': 'Water lost: {description}',
  'packet.line.flow-test': 'Flow test after the repair',

  'packet.unit.hour': '{quantity} h',
  'packet.unit.mile': '{quantity} mi',
  'packet.unit.each': '{quantity}',
  'packet.unit.1000-gal': '{quantity} × 1,000 gal',
  'packet.unit.invoice': '{count, plural, one {# invoice} other {# invoices}}',
  'packet.per.hour': '{rate} /h',
  'packet.per.mile': '{rate} /mi',
  'packet.per.each': '{rate}',
  'packet.per.1000-gal': '{rate} per 1,000 gal',
  'packet.per.invoice': '{rate}',
  'packet.per.usd': '{rate}',

  'packet.authority.by': '{paper}. Rate book {edition}, by {rule}.',
  'packet.authority.page': 'page {page}',
  'packet.authority.invoice': 'Invoice {edition} of {title}.',
  'packet.date-rule.day-worked': 'the day worked',
  'packet.date-rule.strike': 'the day of the strike',
  'packet.date-rule.issue': 'the day of issue',
  'packet.date-rule.invoice': 'the invoice',

  'packet.water.valve-held': 'No water is billed: the main valve held, so none was lost.',
  'packet.water.none-lost': 'No water is billed: none was lost.',
  'packet.water.recorded': 'Water lost is billed as it was measured or recorded; how is said on its line.',
  'packet.water.not-measured': 'No water is billed: the loss was not measured.',

  'packet.account.title': 'Damage and repair',
  'packet.account.hydrant': 'The hydrant',
  'packet.account.damage': 'What was found',
  'packet.account.repair': 'What was done',
  'packet.account.nothing-found': 'No finding at the hydrant is recorded.',
  'packet.account.report': 'Report',
  'packet.account.scope': 'Extent of the damage: {scope}.',
  'packet.account.completed': 'The repair was complete on {at}.',
  'packet.account.returned': 'The return of {hydrant} to service took effect on {at}.',
  'packet.account.steps':
    '{count, plural, one {# step} other {# steps}} of the repair are recorded; the timeline has each with its time.',
  'packet.account.parts': 'Parts fitted or used:',
  'packet.account.by': 'By',
  'packet.account.exceptions': 'Exceptions on record',
  'packet.account.deferred': 'Not yet re-tested: {proof}. Put off by {by}. Reason: {reason}.',
  'packet.found.flow': 'Water flowing',
  'packet.found.breakawayFlangeParted': 'Breakaway flange parted',
  'packet.found.stemCouplingParted': 'Stem coupling parted',
  'packet.found.nozzleSection': 'Nozzle section',
  'packet.found.lowerBarrel': 'Lower barrel',
  'packet.found.belowGrade': 'Damage below grade',
  'packet.found.mainValve': 'Main valve',
  'packet.found.isolationValve': 'Isolation valve',

  'packet.timeline.title': 'Timeline',
  'packet.timeline.zone':
    'Local time is that of {timeZone}. Everything is as recorded by the people named; corrections are in it.',
  'packet.timeline.local': 'Local time',
  'packet.timeline.utc': 'UTC',
  'packet.timeline.what': 'What happened',
  'packet.event.last-seen-sound': 'Last seen sound',
  'packet.event.struck':
    'Struck by a vehicle{basis, select, witnessed { (seen by a witness)} reported { (time told to us)} bounded { (between two known times)} other {}}',
  'packet.event.reported': 'Reported. Source: {source}',
  'packet.event.called-out': 'Crew called out',
  'packet.event.arrived': 'Crew arrived',
  'packet.event.water-shut': 'Water shut',
  'packet.event.marked': 'Marked out of service',
  'packet.event.dispatch-told': 'Fire dispatch told',
  'packet.event.valve-closed':
    'Valve {valveId} closed{waterShut, select, yes {; the water stopped} no {; the water did not stop} other {}}',
  'packet.event.valve-reopened': 'Valve {valveId} reopened',
  'packet.event.expected-return':
    'Return expected{known, select, yes { {at}} other { (time not known)}}. Waiting for: {waitingFor}',
  'packet.event.work-began': 'Work on the repair began',
  'packet.event.step-done': '{step}',
  'packet.event.closed-up': 'Hydrant closed up',
  'packet.event.completed': 'Repair complete',
  'packet.event.flow-tested': 'Flow test',
  'packet.event.proof': 'Proof: {proof}. {result}',
  'packet.event.mark-removed': 'Mark removed',
  'packet.event.returned':
    'Returned to service{takesEffect, select, no { (recorded; not in effect)} other {}}',

  'packet.flow-test.title': 'Flow test',
  'packet.flow-test.none': 'No flow test of this strike is recorded.',
  'packet.flow-test.of': 'Hydrant {hydrantId}, {at}',
  'packet.flow-test.method': 'Method',
  'packet.flow-test.one-hydrant': 'One hydrant: pressures and flow read at the same hydrant',
  'packet.flow-test.several': 'Pressures read at the rated hydrant, flow at another',
  'packet.flow-test.static': 'Static pressure',
  'packet.flow-test.residual': 'Residual pressure',
  'packet.flow-test.outlets': 'Flowing outlets',
  'packet.flow-test.outlet': '{hydrantId}: {kind}, {diameter}, coefficient {coefficient}, pitot {pitot}',
  'packet.flow-test.metered': 'Metered flow',
  'packet.flow-test.gauges': 'Gauges',
  'packet.flow-test.gauge': '{gaugeId}, calibrated {on}',
  'packet.flow-test.gauge-uncalibrated': '{gaugeId}, calibration not recorded',
  'packet.flow-test.minutes': 'Minutes flowed',
  'packet.flow-test.tested-by': 'Tested by',
  'packet.flow-test.measured': 'Measured flow',
  'packet.flow-test.available': 'Available flow at {target}',
  'packet.flow-test.no-figure': 'No figure: the pressure drop is too small',
  'packet.flow-test.class': 'Hydrant class',
  'packet.flow-test.no-class': 'None: the pressure drop is too small',
  'packet.flow-test.notes': 'Notes on the test:',
  'packet.flow-test.not-a-test': 'The recorded readings cannot be a flow test, so no result is given.',

  'packet.photos.title': 'Photographs',
  'packet.photos.none': 'No photographs are recorded.',
  'packet.photos.clocks':
    '“Taken” is by the clock of the device that declared the photo; “camera” is what the camera wrote into the file; “hash recorded” is by the server’s clock, and from then on the bytes could not change. Shown upright; originals are kept as they came.',
  'packet.photos.not-included': 'Listed and not shown',
  'packet.photo.title': 'Photograph {number}. {view}{hasCaption, select, yes {: {caption}} other {}}',
  'packet.photo.taken': 'Taken {at}.',
  'packet.photo.taken-unknown': 'Time taken not recorded.',
  'packet.photo.camera': 'Camera: {at}.',
  'packet.photo.hash-recorded': 'Hash recorded {at}.',
  'packet.photo.awaited': 'Awaited: not included. The file had not arrived when this packet was made.',
  'packet.photo.unsupported-type':
    'Not included: files of type {mediaType} cannot be shown here. The original is kept.',
  'packet.photo.document': 'Not included: this is a document, not a photograph. The original is kept.',
  'packet.photo.corrupt': 'Not included: the file is damaged or cut short.',
  'packet.photo.hash-differs': 'Not included: the stored bytes do not have the recorded hash.',
  'packet.photo.too-large': 'Not included: the file is too large to place here. The original is kept.',
  'packet.photo.too-many':
    'Not included: this packet already holds as many photographs as it can. The original is kept.',

  'packet.manifest.title': 'Records behind this packet',
  'packet.manifest.how':
    'Everything in this packet was computed from the records listed here and from nothing else. Each was stored once, at the time shown, and has not been changed since.',
  'packet.manifest.as-of': 'As of',
  'packet.manifest.schema': 'Version of the packet’s form',
  'packet.manifest.editions': 'Editions of the rate book',
  'packet.manifest.attachment': 'Attached file',
  'packet.manifest.submissions': '{count, plural, one {# record} other {# records}}',
  'packet.manifest.id': 'Id',
  'packet.manifest.kind': 'Record',
  'packet.manifest.recorded': 'Stored (UTC)',
  'packet.manifest.standing':
    '{kind} ({standing, select, corrected {replaced by a correction} withdrawn {withdrawn} other {}})',
  'packet.manifest.exhibits': '{count, plural, one {# exhibit} other {# exhibits}}',
  'packet.manifest.exhibit': 'No.',
  'packet.manifest.bytes': 'Bytes',
  'packet.manifest.state': 'Here',
  'packet.state.included': 'Shown',
  'packet.state.awaited': 'Awaited',
  'packet.state.not-included': 'Listed',

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
  'problem.strike-not-closed':
    'The strike is not closed: no return to service has taken effect. A packet is issued after it; a preview can be made now.',
  'problem.payer-not-known': 'Say who is to pay: the claim names nobody yet.',
  'problem.claim-without-strike':
    'The strike of this claim is not among the records yet. Try again when its report has arrived.',
} as const;
