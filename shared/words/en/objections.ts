/* eslint-disable no-template-curly-in-string -- a dollar sign before an argument of a sentence is money */
/** English words: what an insurer would likely object, and what would answer it. */
export const objections = {
  'objection.no-crash-report': 'There is no police or crash report number.',
  'objection.no-crash-report.answer': 'The report number, or the report itself among the papers.',
  'objection.liability-not-shown': 'Nothing ties the vehicle to a person: no driver, no plate, no VIN.',
  'objection.liability-not-shown.answer': 'Plate, VIN or driver from the police report, or a witness.',
  'objection.nobody-known': 'The claim does not say who struck the hydrant.',
  'objection.nobody-known.answer': 'Who struck the hydrant, as far as it is known.',
  'objection.hit-and-run-no-payer':
    'The driver fled and is not known, and the claim asks a payer who pays only for a known driver.',
  'objection.hit-and-run-no-payer.answer':
    'The driver once the police find them; or the utility’s own policy, or restitution, as the payer.',
  'objection.insurer-unknown': 'The claim is against a driver’s insurer, and no insurer is named.',
  'objection.insurer-unknown.answer': 'The insurer’s name from the police report or the driver.',
  'objection.no-policy-number': 'Neither a policy number nor the insurer’s own claim number is given.',
  'objection.no-policy-number.answer': 'The policy number, or the insurer’s own claim number.',
  'objection.time-of-strike-unknown': 'The time of the strike is not known.',
  'objection.time-of-strike-unknown.answer': 'The time from the police report, a call or a witness.',
  'objection.limitation-near':
    '{over, select, yes {The last day to sue was} other {{days, plural, one {# day is} other {# days are}} left to}} {lastDay}{over, select, yes { by} other {, the last day to sue by}} the utility’s setting ({citation}). Have counsel confirm.',
  'objection.limitation-near.answer': 'Who confirmed the date with counsel, and what is being done in time.',

  'objection.no-photo-before-repair': 'No photo shows the damage before the repair began.',
  'objection.no-photo-before-repair.answer':
    'A photo taken before the repair: of the crew, the police or a neighbor.',
  'objection.no-scale-in-photos':
    'No photo shows how large the damage is: nothing of a known size is in the picture.',
  'objection.no-scale-in-photos.answer': 'A photo with a rule, a wrench or a hand beside the damage.',
  'objection.photo-far-from-event':
    'A photo is dated {takenAt}: more than an hour before the strike, or more than three days after the return to service.',
  'objection.photo-far-from-event.answer': 'Who took it and when; or take the photo out.',
  'objection.camera-clock-differs':
    'A photo’s camera recorded {cameraTime}, and the photo is listed as taken {takenAt}.',
  'objection.camera-clock-differs.answer': 'Which of the clocks was wrong, in a note beside the photo.',
  'objection.photo-not-arrived':
    '{count, plural, one {One photo is listed and its file has not arrived.} other {# photos are listed and their files have not arrived.}}',
  'objection.photo-not-arrived.answer': 'Open the app, with signal, on the phone that took the photos.',
  'objection.no-inspection-before':
    '{known, select, yes {The last inspection before the strike was on {last}, more than a year before.} other {No inspection before the strike is on record.}} The hydrant may have been broken already.',
  'objection.no-inspection-before.answer': 'The last inspection or maintenance sheet of this hydrant.',
  'objection.no-flow-test-before':
    '{known, select, yes {The last flow test before the strike was on {last}, more than five years before.} other {No flow test before the strike is on record.}}',
  'objection.no-flow-test-before.answer': 'The last flow test of this hydrant.',
  'objection.no-findings-recorded': 'What the crew found at the hydrant is not recorded.',
  'objection.no-findings-recorded.answer': 'The crew’s findings: flange, coupling, barrel, valve.',

  'objection.hours-overlap-elsewhere':
    'Worker {workerId} is on another job for {hours, number} h of the same time.',
  'objection.hours-overlap-elsewhere.answer': 'The time sheet, and a correction of the one that is wrong.',
  'objection.hours-recorded-twice': 'Two records claim the same {time} of {who}. It is billed once.',
  'objection.hours-recorded-twice.answer': 'A correction of the record that is wrong.',
  'objection.premium-without-reason':
    '{lines, plural, one {One line of labor is} other {# lines of labor are}} paid above the regular rate, and no reason is given.',
  'objection.premium-without-reason.answer': 'Why the work could not wait: the call, traffic, fire cover.',
  'objection.minimum-without-call':
    'Worker {workerId} is paid {paid, number} h for {worked, number} h worked, and no call-out time is on record.',
  'objection.minimum-without-call.answer':
    'The time of the call-out, and the agreement that sets the minimum.',
  'objection.crew-out-of-line':
    'The repair took {hours, number} h of labor; the median of {repairs} past repairs of the kind is {usual, number} h.',
  'objection.crew-out-of-line.answer':
    'What made this one longer: ice, traffic, a frozen bolt, a second visit.',
  'objection.work-after-return': '{hours, number} h of work were done after the hydrant was back in service.',
  'objection.work-after-return.answer':
    'What was done then (clearing up, restoring the surface), or a correction.',
  'objection.work-before-strike': 'Work is recorded before the strike, which was at {since} or later.',
  'objection.work-before-strike.answer': 'A correction of the time that is wrong.',
  'objection.repair-before-isolation':
    '{count, plural, one {The hydrant was taken down} other {# times the hydrant was taken down}} before the water was confirmed shut off, by the record.',
  'objection.repair-before-isolation.answer': 'When the valve was closed, and by whom; or a correction.',
  'objection.dig-before-locate':
    '{count, plural, one {The ground was opened or entered} other {# times the ground was opened or entered}} before a locate ticket or the protection of the trench was recorded.',
  'objection.dig-before-locate.answer':
    'The ticket’s number and from when it held, how the sides were held, and who judged it; or a correction.',
  'objection.no-hours-billed': 'No labor is billed, though the repair has other costs.',
  'objection.no-hours-billed.answer': 'The crew’s hours.',

  'objection.machine-above-crew':
    'Machine {machineCode} is billed for {hours, number} h; the crew was on site for {crewHours, number} h.',
  'objection.machine-above-crew.answer':
    '{unattended, select, yes {Why it had to stay when the crew had left, or a correction of its hours.} other {Who ran it in the other hours, or a correction.}}',
  'objection.machine-by-day': 'Machine {machineCode} is billed by the day.',
  'objection.machine-by-day.answer': 'The hours it was in use, and the rate book’s page for the day rate.',
  'objection.standby-billed': 'Machine {machineCode} is billed for standing by.',
  'objection.standby-billed.answer': 'Why it had to stand by, and the rule that allows it.',
  'objection.machine-without-operator':
    'Machine {machineCode} was in use, and nobody of the crew is named as its operator.',
  'objection.machine-without-operator.answer':
    'Who ran it; or, in the next edition of the rate book, that it works with nobody at it.',

  'objection.part-without-paper':
    '{description} ({partNumber}) has no {from, select, stock {issue slip} other {invoice}}.',
  'objection.part-without-paper.answer': 'The slip’s number, or the invoice among the papers.',
  'objection.contractor-without-invoice': 'Invoice {invoiceNumber} of {contractor} is not among the papers.',
  'objection.contractor-without-invoice.answer': 'The invoice.',
  'objection.part-not-of-model': '{description} ({partNumber}) is not in the kit of model {model}.',
  'objection.part-not-of-model.answer': 'Why it was needed, or a correction of the part number.',
  'objection.extent-without-finding':
    'More than the breakaway parts was repaired, and no damage below the breakaway flange is recorded.',
  'objection.extent-without-finding.answer': 'What was found below grade, with a photo.',
  'objection.upgrade-without-reason':
    '{description} ({partNumber}) is better than what was destroyed, and no reason is given.',
  'objection.upgrade-without-reason.answer':
    'Why: required, no longer made, law; or a credit for betterment.',
  'objection.old-without-counter-calculation':
    'The hydrant was {years, number} years old, and depreciation has not been worked out.',
  'objection.old-without-counter-calculation.answer':
    'A counter-calculation, kept ready and off the bill; and the cases that allow full cost.',
  'objection.install-date-unknown': 'When the hydrant was installed is not known.',
  'objection.install-date-unknown.answer': 'The installation date in the inventory.',

  'objection.overhead-without-authority':
    '{kind, select, handling {The handling charge on materials} other {The overhead “{share}”}} names no authority with its page.',
  'objection.overhead-without-authority.answer':
    'The resolution or agreement, with its page, in the rate book.',
  'objection.share-on-schedule-rate':
    'The overhead “{share}” is taken on machines whose rate comes from a published schedule ({machines}); such a rate includes overhead already.',
  'objection.share-on-schedule-rate.answer': 'Take machines out of the share’s base in the next edition.',
  'objection.edition-not-in-force':
    'On {date} no edition of the rate book was in force, or two were at once.',
  'objection.edition-not-in-force.answer': 'The edition that was in force that day.',
  'objection.edition-recorded-after-strike':
    'The edition {edition} was entered on {recordedAt}, after the strike.',
  'objection.edition-recorded-after-strike.answer': 'The paper that shows when it was adopted.',
  'objection.line-without-amount':
    '{lines, plural, one {One line has} other {# lines have}} no amount: the bill is less than the cost.',
  'objection.line-without-amount.answer': 'The missing rate.',
  'objection.duplicate-line':
    'Lines {first} and {second} bill {item} twice, for the same time or number and the same amount.',
  'objection.duplicate-line.answer': 'What tells them apart, or a correction.',
  'objection.bill-does-not-foot': 'The lines do not add up to the total.',
  'objection.bill-does-not-foot.answer': 'This is a fault of the software: do not send the packet.',
  'objection.flat-price-above-cost':
    'The flat price of ${priceCents, number, ::scale/0.01 .00} is more than time and materials, ${costCents, number, ::scale/0.01 .00}.',
  'objection.flat-price-above-cost.answer': 'The ordinance that sets the price, and how it was found.',
  'objection.flat-prices-together': '{lines, number} flat prices are billed for one hydrant.',
  'objection.flat-prices-together.answer':
    'Why each was needed; or a correction of the extent that a repair records.',
  'objection.minimum-charge-billed': 'The bill was raised to the minimum charge.',
  'objection.minimum-charge-billed.answer': 'The ordinance that sets the minimum charge.',
  'objection.claim-handling-billed': 'Time spent on the claim is demanded; courts have refused it.',
  'objection.claim-handling-billed.answer': 'The ordinance that allows it.',

  'objection.water-though-valve-held': 'The main valve held, and a figure for water lost is on record.',
  'objection.water-though-valve-held.answer':
    'A correction of the finding or of the figure. No water is billed.',
  'objection.water-seen-though-valve-held':
    'The report says that the main valve held, and that water was seen flowing.',
  'objection.water-seen-though-valve-held.answer':
    'A correction of the report that says which of the two is right, or a record of the water lost. No water is billed.',
  'objection.water-without-times': 'Water is billed, and the time it ran is not recorded.',
  'objection.water-without-times.answer': 'From when to when water ran, and how that is known.',
  'objection.water-estimate-though-metered':
    'Water is billed by an estimate, though a metered figure exists.',
  'objection.water-estimate-though-metered.answer': 'Bill the metered figure, or say why it does not serve.',
  'objection.water-above-hydrant':
    'The water billed means a flow of {percent, number}% of the most that the hydrant can deliver, by {by, select, model {the network model} frictionless {its lateral without any friction} other {its flow test}}.',
  'objection.water-above-hydrant.answer':
    'The low figure; or how it can be so, in the record of the water, by name.',
  'objection.water-best-figure-chosen':
    'The water is billed by {figure, select, best {the best figure} high {the high figure} other {a figure that somebody chose}}, which is {percent, number}% of the low one.',
  'objection.water-best-figure-chosen.answer':
    'The reason in the record of the water, or a record that takes the low figure.',

  'objections.correct': 'Correct: {what}{several, select, yes { of {when}} other {}}',
  'objections.add-credit': 'Add a credit of {amount}',
} as const;
