/** English words: messages to fire dispatch, and how they stand on the screens. */
export const dispatch = {
  // The text message. Short words, and no sign that the GSM alphabet lacks.
  'dispatch.text.out': 'HYDRANT OUT OF SERVICE: {where}.',
  'dispatch.text.back': 'HYDRANT BACK IN SERVICE: {where}.',
  'dispatch.text.corrected': 'CORRECTION: hydrant {where} is NOT out of service. It was reported by mistake.',
  'dispatch.text.since': '{cause}, {when}.',
  'dispatch.text.back-since': 'Since {when}.',
  'dispatch.text.nearest': 'Nearest in service, straight line: {list}.',
  'dispatch.text.not-shown': 'Not tested again: {proofs}.',
  'dispatch.text.end': 'Ref {reference}. Call {callBack}.',
  'dispatch.replaces': 'This replaces hydrant {hydrantId}, ref {reference}.',
  'dispatch.out-instead':
    'Out of service instead: {hydrantId}{reference, select, none {} other {, ref {reference}}}.',
  'dispatch.no-number': 'number not known yet',
  'dispatch.no-place': 'place not known: call',
  'dispatch.maybe': 'It may be {list}.',
  'dispatch.class': 'class {className}',
  'dispatch.cause.none': 'Out of service',
  'dispatch.cause.other': 'Another cause',
  'dispatch.not-rated': 'not rated',
  'dispatch.tested': 'tested {on}',
  'dispatch.private': 'private',

  'dispatch.email.subject.out': 'Hydrant out of service: {name}, {place} (ref {reference})',
  'dispatch.email.subject.back': 'Hydrant back in service: {name}, {place} (ref {reference})',
  'dispatch.email.subject.corrected':
    'Correction: hydrant {name}, {place} is not out of service (ref {reference})',
  'dispatch.email.lead.out':
    'HYDRANT OUT OF SERVICE. Do not rely on {known, select, yes {{name}, {place}} other {the hydrant at {place}}}.',
  'dispatch.email.lead.back': 'HYDRANT BACK IN SERVICE: {name}, {place}.',
  'dispatch.email.lead.corrected':
    'CORRECTION. Hydrant {name}, {place}, is NOT out of service. It was reported by mistake.',
  'dispatch.email.line': '{what}: {value}',
  'dispatch.email.hydrant': 'Hydrant',
  'dispatch.email.place': 'Place',
  'dispatch.email.position': 'Position (WGS 84)',
  'dispatch.email.cause': 'Cause',
  'dispatch.email.since': 'Since',
  'dispatch.email.expected': 'Expected back',
  'dispatch.email.not-known': 'not known yet',
  'dispatch.email.back-since': 'Back since',
  'dispatch.email.nearest': 'Nearest hydrants in service:',
  'dispatch.email.no-nearest': 'No hydrant in service is known near by.',
  'dispatch.email.straight-line':
    'Distances are straight lines over ground; hose lies longer. Flows are those on record, dated where a test gave them.',
  'dispatch.email.reference': 'Reference: {reference}',
  'dispatch.email.call':
    'Please call {utilityName} at {callBack} and say that you have taken this. Until somebody has, its crew will call you.',
  'dispatch.email.page': 'Every hydrant that is out of service: {address}',
  'dispatch.email.footer': 'Made by the utility’s records at {made}. Nobody reads answers to this address.',

  // On the screens of crew and desk.
  'dispatch.title': 'Messages to dispatch',
  'dispatch.off': 'This utility sends no messages to dispatch by itself. Tell dispatch by radio or phone.',
  'dispatch.none': 'No message has gone to dispatch about this. Tell dispatch by radio or phone.',
  'dispatch.what.out': 'Out of service: {what}',
  'dispatch.what.back': 'Back in service: {what}',
  'dispatch.what.corrected': 'Correction, not out of service: {what}',
  'dispatch.reference': 'Reference {reference}',
  'dispatch.says': 'What the text says',
  'dispatch.state.waiting': '{label}, by {by, select, email {email} other {text message}}: about to be sent',
  'dispatch.state.claimed': '{label}, by {by, select, email {email} other {text message}}: being sent',
  'dispatch.state.sent': '{label}, by {by, select, email {email} other {text message}}: sent {when}',
  'dispatch.state.failed':
    '{label}, by {by, select, email {email} other {text message}}: NOT sent, {tries, plural, one {tried once} other {tried # times}}; tried again soon',
  'dispatch.state.dead':
    '{label}, by {by, select, email {email} other {text message}}: NOT sent, {tries, plural, one {tried once} other {tried # times}}; not tried again',
  'dispatch.state.overtaken':
    '{label}, by {by, select, email {email} other {text message}}: not sent, because a later message says otherwise',
  'dispatch.held.too-old':
    'Not sent: it happened more than {hours, plural, one {# hour} other {# hours}} before it was recorded.',
  'dispatch.held.nothing-sent': 'Not sent: dispatch had not been sent the message that it corrects.',
  'dispatch.confirmed': 'Dispatch was told by a person on {when}.',
  'dispatch.unconfirmed': 'Nobody has confirmed yet: call {name}.',
  'dispatch.unconfirmed.why':
    'A message that was sent may still not have been read. Call, and record who took it.',
  'dispatch.record': 'Record who took it',
  'dispatch.retry': 'Send again now',
  'dispatch.send-anyway': 'Send it all the same',
  'dispatch.retrying': 'It goes out within a minute.',
  'dispatch.earlier': '{count, plural, one {# earlier message} other {# earlier messages}}',
  'dispatch.failed.title': 'Messages to dispatch that did not go out',
  'dispatch.failed.do': 'Call {name} about each, and record who took it.',
  'problem.no-such-notice': 'There is no such message to dispatch.',
  'problem.notice-overtaken':
    'A later message about this hydrant says otherwise, so this one is not sent any more.',
  'problem.notice-past': 'This message is more than {days} days old. Tell dispatch by phone instead.',
  'problem.notice-went': 'This message has gone to everybody, or is being sent now.',
  'problem.messages-off': 'No messages to dispatch are set up, or they are turned off.',
  'problem.recipient-id': 'Use small letters, digits and hyphens, a letter or digit first, no more than 40.',
  'problem.phone-e164': 'Give the number with its country and no spaces, like +12025550101.',
  'problem.recipient-twice': 'Two recipients have the same id. Give each its own.',
};
