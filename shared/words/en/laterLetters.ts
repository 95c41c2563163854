/**
 * Letters after the packet. A `.text` is read as it is written, never by `say`: see `letters.ts`. Plain, firm, courteous;
 * no threat that a claimant may not make.
 */
const paragraphs = (...all: readonly string[]): string => all.join('\n\n');
const greeting = '[Dear {adjuster}:]';
const pay = 'Please quote claim {claimNumber} with your payment, and send it to:\n{remitTo}';
const call = 'If a call is easier, we are at {utilityPhone}.';
const full =
  'If a payment is meant to settle less than the balance in full, please say so before you send it.';

export const laterLetters = {
  'letter.later.demand.text': paragraphs(
    greeting,
    'On {struckAt} a vehicle struck {hydrant}[ at {place}]. Our demand for the cost of making it safe and repairing it is {askedNow}. The packet with the statement of costs and the records behind it was sent to you[ on {demandedOn}].',
    pay,
    full,
    call,
  ),
  'letter.later.follow-up.text': paragraphs(
    greeting,
    'We wrote to you on {demandedOn}, {daysSinceDemand} days ago, with our demand of {asked} for {hydrant}[ at {place}].[ We have received {paid}, for which we thank you.] The balance is {balance}.',
    'If you need anything to decide, please tell us what. If somebody else handles the claim now, please tell us who. Otherwise we ask for payment, or for a date on which we may expect it.',
    pay,
    call,
  ),
  'letter.later.reply-to-dispute.text': paragraphs(
    greeting,
    'Thank you for your answer to our claim for {hydrant}.[ You wrote: {theirWords}] We have gone through each point with the records.',
    '{reply}',
    'The records named here are in the packet or can be inspected. If you still do not accept a line, please say which record or rule you rely on.',
    '[We have received {paid}, for which we thank you; we take it as a part payment unless you tell us otherwise.] The balance is {balance}.',
    pay,
    call,
  ),
  'letter.later.supplement.text': paragraphs(
    greeting,
    'Since our demand[ of {demandedOn}] further costs of the same strike have come in.[ They are {supplement} more than we asked before.] Our demand is now {askedNow}[, of which {paid} has been paid].',
    'The enclosed revision of the packet says at its front what changed and why, and holds the records of the added lines.',
    pay,
    call,
  ),
  'letter.later.final-notice.text': paragraphs(
    greeting,
    'Our demand of {asked} for {hydrant} was sent on {demandedOn}, {daysSinceDemand} days ago.[ We have received {paid}.] {balance} is still unpaid, and we have no answer that tells us why.',
    'We would rather settle this with you. Please pay the balance, or tell us in writing what you dispute, within 30 days of this letter. After that we will decide how to pursue the claim without writing again; one way is to hand it to our counsel.',
    pay,
    call,
  ),
  'letter.later.payment-plan-offer.text': paragraphs(
    greeting,
    'The balance of our claim for {hydrant} is {balance}. If paying it at once is not possible, we offer to take it in parts:',
    '{instalments}',
    'If you accept, please sign and return a copy of this letter. No interest is added while the parts are paid on their days. If a part is missed, please call us; the rest may then be asked for at once.',
    pay,
    call,
  ),
  'letter.later.notice-own-insurer.text': paragraphs(
    greeting,
    'This is notice of a loss under our policy[ {policy}]: on {struckAt} a vehicle struck our property, {hydrant}[ at {place}].[ Police report: {policeReport}.][ {driverLeft}] The cost so far is {total}.',
    'Please tell us the claim number, who handles it, and which form and which records you need. We are also asking whoever is liable, and will tell you of any payment. Please tell us before we settle with anybody, if you want to be heard.',
    call,
  ),
  'letter.later.restitution-statement.text': paragraphs(
    'On {struckAt} a vehicle struck {hydrant}[ at {place}], which belongs to {utility}. Our crews made it safe and repaired it.[ Police report: {policeReport}.]',
    'The loss, by kind of cost:\n{itemizedLoss}',
    '[Of this {paid} has been paid.] We ask for restitution of {balance}, to be sent with claim {claimNumber} to:\n{remitTo}',
    'The statement of costs and the records behind each line are in our packet, which can be handed in. Whoever knows the records can be named.',
  ),
  'letter.later.release-checklist.text': paragraphs(
    'For the file. A release ends rights: nobody signs one before counsel has read it. This list is not legal advice.',
    '[Offer: {offer}.] Asked: {asked}.[ Paid: {paid}.] Balance: {balance}.',
    'To be answered in writing before anybody signs:\n1. Is the amount right, and is what was paid before taken off?\n2. Does it release only this strike, by its day and place, and only property damage?\n3. Whom does it release, and does anybody else remain who may owe a part?\n4. Does it ask the utility to hold somebody harmless or to pay back? Strike that out, or have counsel agree.\n5. Has our own insurer paid, or may it? It must agree first.\n6. Does a court order of restitution stand beside it?\n7. Does it ask for secrecy? Public records law may not allow that.\n8. Who may sign for this amount, and by which authority?\n9. Is the money here, and has the bank paid it, before the release leaves the house?',
  ),

  'letter.later.title': '{kind}, claim {claimNumber}',
  'letter.later.struck': 'Struck on',
  'letter.later.reviewed': 'Reviewed by',
  'letter.kind.demand': 'Demand',
  'letter.kind.follow-up': 'Follow-up',
  'letter.kind.reply-to-dispute': 'Reply to a dispute',
  'letter.kind.supplement': 'Supplement',
  'letter.kind.final-notice': 'Final notice',
  'letter.kind.payment-plan-offer': 'Offer of a payment plan',
  'letter.kind.notice-own-insurer': 'Notice to our own insurer',
  'letter.kind.release-checklist': 'Release review checklist',

  'letter.field.adjuster': 'Adjuster, or the payer’s contact',
  'letter.field.demandedOn': 'Day of the first demand',
  'letter.field.daysSinceDemand': 'Days since the first demand',
  'letter.field.asked': 'Asked',
  'letter.field.paid': 'Paid',
  'letter.field.balance': 'Balance',
  'letter.field.writtenOff': 'Written off',
  'letter.field.theirWords': 'The payer’s own words',
  'letter.field.reply': 'The reply, point by point',
  'letter.field.offer': 'Their offer',
  'letter.field.instalments': 'Installments of the plan',
  'letter.field.supplement': 'What the supplement adds',
  'letter.field.askedNow': 'Asked with the latest revision',

  'letter.reply.whole': 'The demand as a whole',
  'letter.reply.point':
    '{number}. {what}. {known, select, yes {You do not accept {amount} of it} other {You do not accept it}}: {reason}.',
  'letter.reply.stands':
    'It stands on {records, plural, one {# record} other {# records}} made at the time of the work. {arithmetic}.',
  'letter.reply.authority':
    'Its rate: {title}, edition {edition}{page, select, none {} other {, page {page}}}.',
  'letter.reply.depreciation':
    'The part that was destroyed is one of a working main; its replacement gives the town a hydrant where it had one, and no more.',
  'letter.reply.betterment':
    'What was put in is what was there, or the nearest that is still made; nothing was made better at your cost.',
  'letter.reply.overhead': 'The rate is adopted, and it is laid only on the base that is printed with it.',
  'letter.reply.hours':
    'The hours are those of the people named, by day, from arrival to the end of the work; hours paid and hours worked are both shown.',
  'letter.reply.rate': 'The rate is that of the edition in force on the day that counts for it.',
  'letter.reply.crew-size':
    'Each person had a task that is on record: traffic, the valve, the lift, the tightening. The work is not done safely with fewer.',
  'letter.reply.equipment':
    'The machine was there and in use for the hours shown; its rate holds no operator, who is billed once and as labor.',
  'letter.reply.materials':
    'The parts are those of this hydrant’s model, at the price on the slip or invoice.',
  'letter.reply.water':
    'The water is the lowest figure that what was seen allows; how it was computed is in the packet.',
  'letter.reply.duplicate':
    'The two records differ in time or person; both are in the packet, with their times.',
  'letter.reply.no-evidence':
    'The record that was missing is enclosed, or named here so that it can be inspected.',
  'letter.reply.liability':
    'The police report and the photographs show the vehicle at the hydrant. If you hold another party liable, please tell us who and on what ground; we will write to them as well.',
  'letter.reply.policy-limit':
    'We note the limit. Please confirm it in writing, so that we can ask the driver or the owner for the rest.',
  'letter.reply.other': 'Please see the records of this line.',

  'letter.authority.depreciation':
    'The federal rule for billing utility work takes no credit for accrued depreciation on a segment of a line (23 CFR 645.117(h)(2)), and courts have allowed the full cost of parts of a system (Horton v. Georgia Power, 1979; Duke Power v. Thornton, 1991).',
  'letter.authority.betterment':
    'The federal rule for billing utility work finds no betterment in what is required, equivalent, or the next size still made (23 CFR 645.117(h)(3)).',
  'letter.authority.overhead':
    'The federal rule for billing utility work allows overhead on an equitable basis that shows total, rate and base (23 CFR 645.117(d)); in Curt’s Trucking v. Anchorage, 578 P.2d 975 (1978), 13 percent was allowed.',
  'letter.authority.hours':
    'The federal rule for billing utility work takes labor for time worked, with records (23 CFR 645.117(b)).',
  'letter.authority.rate':
    'The federal rule for billing utility work takes actual rates, or an approved average (23 CFR 645.117(b) and (c)).',
  'letter.authority.equipment':
    'The published federal schedule of equipment rates does not hold the operator’s labor.',
  'letter.authority.materials':
    'The federal rule for billing utility work takes stock at its price at issue, else at actual cost delivered (23 CFR 645.117(e)(1)).',
  'letter.authority.no-evidence':
    'What federal cost rules ask for are records of the days and hours of each person (2 CFR 200.430(g)); those are here.',
  'letter.authority.depreciation-here':
    'The rule here takes no depreciation off what a destroyed part of a system cost ({citation}).',
  'letter.depreciation-here':
    'Your settings ({citation}; jurisdiction: {jurisdiction}) say: {position, select, not_deducted {depreciation is not deducted} deducted {courts deduct depreciation, so the reply claims no authority against it} other {replacement less depreciation, so the reply claims no authority against it}}.{confirmed, select, yes {} other { Have counsel confirm it.}}',
  'letter.contrary.depreciation':
    'Decisions differ: some courts deduct depreciation (Ohio decisions), one statute limits the claim to replacement less depreciation (MCL 500.3121), and for a whole unit 23 CFR 645.117(h)(2) itself credits age over life. A counter-calculation can be kept ready.',
  'letter.contrary.overhead':
    'The same decision refused the cost of processing the claim, and 18 CFR 101 does not permit arbitrary percentages. Without an adopted rate and base this reply is weak.',
  'letter.authorities-caution':
    'The federal rules named bind those who bill under them and no insurer; they persuade at best. Have counsel confirm before you rely on them.',

  'letter.sent.title': 'Letters apart from the packet',
  'letter.sent.new': 'Write a letter',
  'letter.sent.kind': 'Kind of letter',
  'letter.sent.answers': 'What it answers',
  'letter.sent.answers.none': 'Nothing in particular',
  'letter.sent.text': 'Text of the letter',
  'letter.sent.to': 'Name and address',
  'letter.sent.how': 'How it goes',
  'letter.sent.on': 'Day of the letter',
  'letter.sent.record': 'Make the PDF and record it as sent',
  'letter.sent.recording': 'Making the PDF…',
  'letter.sent.recorded': 'Recorded. Download the PDF below and send it: nothing is sent from here.',
  'letter.sent.open': 'Download the PDF',
  'letter.sent.reset': 'Start again from the template',
  'problem.letter-of-the-future':
    '{on} has not come yet. A letter bears the day on which it leaves, today at the latest.',
  'problem.letter-recorded-otherwise':
    'A letter of {on} was recorded here already, with other words, another day or another address: its answer was lost on the way. You find it below. Press again to record this text as a letter of its own.',
  'problem.letter-unprintable':
    'The letter’s typeface has no sign for {signs}: on paper each would be a question mark. Write it in Latin letters, or leave it out.',
  'problem.no-such-letter': 'There is no letter of this kind.',
} as const;
