/**
 * English words: the letters that a claim sends. A `.text` is read as it is written, never by `say`: its fields in
 * braces are merge fields (`shared/letters/fields.ts`), and what stands in square brackets with an empty field is left
 * out.
 */
const incident =
  'Time of the strike: {struckAt}. Our crews made it safe and repaired it.[ It was back in service on {returnedAt}.]';
const changed = '[This is revision {revision} of our packet. What has changed: {changes}]';
const cost =
  'The cost of that work was {total}. Our demand to you is {demand}.[ Other claims for the same damage come to {otherDemands}; together they are no more than the statement.] The statement of costs that follows gives each line with its time or quantity, its rate, the authority for that rate, and the arithmetic.';
const pay = 'Please quote claim {claimNumber} with your payment, and send it to:';
const enclosed =
  'With this letter: statement of costs, account of the damage and repair, timeline, flow test, photographs, and the list of records behind them. Its figures are also in the attached file statement.json. Original photographs, time sheets, slips and invoices are kept and can be inspected.[ {howToCheck}]';
const ask =
  'If you dispute a line, please say which one and why, or call {utilityPhone}. If a payment is meant to settle less than the demand in full, please say so before you send it.';
const paragraphs = (...all: readonly string[]): string => all.join('\n\n');

export const letters = {
  'letter.title': 'Letter in the packet',
  'letter.intro':
    'The packet opens with this letter. Its fields in braces are filled in when the packet is made. Text in [square brackets] is left out where one of its fields is empty.',
  'letter.open': 'Read and edit the letter',
  'letter.text-label': 'Text of the letter',
  'letter.insert': 'Put a field into the text',
  'letter.insert-empty': 'nothing recorded',
  'letter.preview': 'As it will read',
  'letter.save': 'Record this text',
  'letter.saving': 'Recording…',
  'letter.saved': 'Recorded. The next packet opens with it.',
  'letter.queued': 'Kept on this device; it is sent as soon as there is a signal.',
  'letter.not-kept': 'This device would not keep the text. Copy it before you leave the page.',
  'letter.reset': 'Back to the template',
  'letter.undo': 'Back to what is recorded',
  'letter.draft': 'Changed and not recorded yet. The changes are kept on this device.',
  'letter.is-template': 'This is the template; nobody has changed it.',
  'letter.is-recorded': 'This is the text on record.',
  'letter.problems': 'This must be put right before the packet can be issued:',
  'letter.evidence': 'What this payer asks for',
  'letter.there': 'There',
  'letter.not-there': 'Missing',
  'letter.put-right': 'Not recorded. Put right what is said above first.',
  'letter.empty-text': 'A letter needs text.',
  'letter.footer': 'This letter states facts and costs; it is not legal advice.',
  'letter.struck-unknown': 'not known; the first record of it is of {since}',
  'letter.driver-left': 'The driver left the scene and has not been identified to us.',
  'letter.loss-total': 'Total: {total}',

  'letter.kind.demand-insurer': 'Demand to a driver’s insurer',
  'letter.kind.demand-driver': 'Demand to a driver',
  'letter.kind.demand-self-insured': 'Demand to a self-insured owner',
  'letter.kind.notice-government': 'Notice and demand to a government body',
  'letter.kind.claim-own-policy': 'Claim on the utility’s own policy',
  'letter.kind.restitution-statement': 'Statement of loss for restitution',
  'letter.kind.cover-unknown-payer': 'Cover letter while nobody is known to pay',

  'letter.caution.notice-government':
    'Before a claim against a government body, a notice of claim in a set form and within a set period may apply, and the period can be short. This letter may not be that notice: have counsel confirm.',
  'letter.caution.claim-own-policy':
    'A policy may set its own form and time for a proof of loss, and what a payment from somebody else does to it. Read the policy, or have counsel confirm.',
  'letter.caution.restitution-statement':
    'A court or prosecutor may have its own form and its own rule of what counts as loss. Have counsel confirm, and tell them of every payment received.',
  'letter.caution.cover-unknown-payer':
    'Nobody is named to pay, so this packet can be previewed and not issued. Name the payer on the claim once one is known.',

  'letter.field.claimNumber': 'Claim number',
  'letter.field.date': 'Date of the packet',
  'letter.field.utility': 'Name of the utility',
  'letter.field.utilityPhone': 'The utility’s telephone',
  'letter.field.utilityEmail': 'The utility’s email',
  'letter.field.payer': 'Name of the payer',
  'letter.field.payerAttention': 'Whose attention at the payer’s',
  'letter.field.payerReference': 'The payer’s own file, claim, policy or case number',
  'letter.field.policy': 'Policy number',
  'letter.field.hydrant': 'The hydrant',
  'letter.field.place': 'Where it stands',
  'letter.field.struckAt': 'Time of the strike',
  'letter.field.returnedAt': 'Time back in service',
  'letter.field.driverLeft': 'That the driver left, after a hit and run',
  'letter.field.policeReport': 'Police report number',
  'letter.field.policeAgency': 'Police agency',
  'letter.field.crashReport': 'Code of the crash report',
  'letter.field.vehicle': 'The vehicle',
  'letter.field.total': 'Total of the statement',
  'letter.field.demand': 'What this claim demands',
  'letter.field.otherDemands': 'What other claims of the strike demand',
  'letter.field.itemizedLoss': 'The loss by kind of cost, with its total',
  'letter.field.remitTo': 'Where to pay',
  'letter.field.signedBy': 'Who signs',
  'letter.field.deductible': 'Deductible of the utility’s own policy',
  'letter.field.lessDeductible': 'The demand less the deductible',
  'letter.field.howToCheck': 'Where the packet can be checked, and what the answers mean',
  'letter.field.revision': 'Revision of the packet',
  'letter.field.changes': 'What changed since the last revision',

  'letter.demand-insurer.text': paragraphs(
    'To whom it may concern:',
    `A vehicle that you insure, by the information we have, struck {hydrant}[ at {place}]. ${incident}`,
    cost,
    changed,
    pay,
    '{remitTo}',
    ask,
    'Please tell us your claim number, and whether you accept that your insured is liable. If you do not, please say on what facts.',
    enclosed,
  ),
  'letter.demand-driver.text': paragraphs(
    'Dear {payer}:',
    `By the information we have, you were driving the vehicle that struck {hydrant}[ at {place}]. ${incident}`,
    cost,
    changed,
    'If you had insurance that day, please send this packet to your insurer, and tell us the insurer’s name and your policy number. We will then write to them.',
    pay,
    '{remitTo}',
    'If you dispute a line, please say which one and why. If you cannot pay it at once, call us at {utilityPhone} about paying in parts.',
    enclosed,
  ),
  'letter.demand-self-insured.text': paragraphs(
    'To the claims department of {payer}:',
    `A vehicle of yours, by the information we have, struck {hydrant}[ at {place}]. ${incident}`,
    'We understand that you answer for damage by your own vehicles. If an insurer or a claims administrator does so for you, please send this packet to them and tell us who they are.',
    cost,
    changed,
    pay,
    '{remitTo}',
    ask,
    enclosed,
  ),
  'letter.notice-government.text': paragraphs(
    'To {payer}:',
    `{utility} gives notice of a claim for damage to its property. By the information we have, a vehicle in your service struck {hydrant}[ at {place}]. ${incident}`,
    'Claimant: {utility}. Claim number: {claimNumber}. Cost of the work: {total}. Amount claimed: {demand}.[ Other claims for the same damage come to {otherDemands}.] The statement of costs that follows gives each line with its time or quantity, its rate, the authority for that rate, and the arithmetic.',
    changed,
    'If this notice must be given in another form, or to another office, please tell us which without delay and send us the form.',
    pay,
    '{remitTo}',
    ask,
    enclosed,
  ),
  'letter.claim-own-policy.text': paragraphs(
    'To {payer}:',
    `We report a loss under our policy[ {policy}]. A vehicle struck {hydrant}[ at {place}]. ${incident}[ {driverLeft}]`,
    'The loss comes to {total}; the enclosed statement of costs gives it line by line, with its records, in support of our proof of loss. If you need it on your own form or under oath, please send the form.',
    'We claim {demand}, subject to the deductible of the policy.[ By our records it is {deductible}; less that, we ask you to pay {lessDeductible}.] Please confirm the deductible that applies to this loss, and what you have taken off for it.[ Other claims for the same damage come to {otherDemands}.]',
    changed,
    'If you recover from whoever is liable, please include our deductible.',
    'Please pay to:',
    '{remitTo}',
    enclosed,
  ),
  'letter.restitution-statement.text': paragraphs(
    'To {payer}:',
    `{utility} states its loss for the purpose of restitution. A vehicle struck {hydrant}[ at {place}]. ${incident}`,
    'The loss, by kind of cost:\n{itemizedLoss}',
    'Restitution asked for: {demand}, to be sent with claim {claimNumber} to the address below.[ Claims to others for the same damage come to {otherDemands}; we will report every payment received, so that nothing is paid twice.]',
    changed,
    '{remitTo}',
    `${enclosed} A person who knows the records behind the statement can be named if they must be proved.`,
  ),
  'letter.cover-unknown-payer.text': paragraphs(
    'To whom it may concern:',
    `A vehicle struck {hydrant}[ at {place}]. ${incident}[ {driverLeft}] We do not know yet who is to pay for the damage.`,
    'The cost of that work was {total}. The loss, by kind of cost:\n{itemizedLoss}',
    changed,
    'If you know of the vehicle, its driver, its owner or an insurer, please tell us at {utilityPhone}, with claim {claimNumber}.',
    enclosed,
  ),

  'letter.evidence.report-number': 'Number of the police or crash report',
  'letter.evidence.police-report': 'The police report itself, among the papers',
  'letter.evidence.photos-of-damage': 'A photo of the damage',
  'letter.evidence.time-and-place': 'Time and place of the strike',
  'letter.evidence.crew-hours': 'Hours of the crew',
  'letter.evidence.invoices': 'An invoice for each bought part and each contractor',
  'letter.evidence.condition-before': 'An inspection or flow test from before the strike',
  'letter.evidence.return-to-service': 'Return to service, with its proofs',
  'letter.evidence.policy-or-claim-number': 'The insured’s policy number, or the insurer’s claim number',
  'letter.evidence.vehicle': 'Plate or VIN of the vehicle',
  'letter.evidence.payer-address': 'Name and address of the payer',
  'letter.evidence.driver-named': 'The driver, by name',
  'letter.evidence.own-policy-number': 'The policy’s number, as the payer’s own number on the claim',
  'letter.evidence.case-number': 'The case number, as the payer’s own number on the claim',
  'letter.evidence.complete-statement': 'A statement of costs in which no line lacks its amount',

  'objection.evidence-for-payer':
    'The letter of this claim goes to somebody who asks for more: {evidence, select, policeReport {the police report itself} vehicle {the plate or VIN of the vehicle} payerAddress {the name and address of the payer} driverNamed {the name of the driver} ownPolicyNumber {the number of the utility’s own policy} caseNumber {the number of the case} other {{evidence}}}.',
  'objection.evidence-for-payer.answer': 'Add it to the record, or say in the letter why there is none.',

  'problem.letter-field-unknown':
    'The letter uses a merge field “{field}” that does not exist. Choose one from the list.',
  'problem.letter-field-empty':
    'The letter uses the merge field “{field}”, and nothing is recorded for it. Record it, or take it out, or put its sentence in [square brackets].',
  'problem.letter-brace': 'The letter has a brace without its other half. A merge field stands between two.',
  'problem.letter-bracket':
    'The letter has a square bracket without its other half. What may be left out stands between two.',
} as const;
