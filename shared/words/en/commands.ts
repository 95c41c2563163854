/** English words: what the API refuses with, and what the commands print. */
export const commands = {
  'refused.not-json.title': 'This is not JSON',
  'refused.not-json.detail': 'Nothing was stored. Send one JSON value, in UTF-8.',
  'refused.not-signed-in.title': 'Sign in first',
  'refused.not-signed-in.detail': 'Nothing was stored. Sign in and send this again.',
  'refused.not-allowed.title': 'Your role may not do this',
  'refused.not-allowed.detail': 'Nothing was stored. Ask somebody with the right role, or your manager.',
  'refused.not-found.title': 'Not found',
  'refused.not-found.detail': 'There is nothing at this address.',
  'refused.clash.title': 'This id is already used for something else',
  'refused.clash.detail':
    'A submission with this id is stored and says something else at "{field}". The stored one stands. To change it, send a correction.',
  'refused.already-corrected.title': 'This was already corrected',
  'refused.already-corrected.detail':
    'Submission {by} already corrects it. Correct that one, after reading what it says.',
  'refused.taken.title': 'This number is taken',
  'refused.taken.detail': 'Nothing was stored. Choose another number.',
  'refused.too-large.title': 'This is too large',
  'refused.too-large.detail': 'Nothing was stored. Photos are sent apart from the form that declares them.',
  'refused.too-many.title': 'This is more than one person may send today',
  'refused.too-many.detail': 'Nothing is lost: what waits on the device stays there and can be sent later.',
  'refused.invalid.title': 'Some fields need attention',
  'refused.invalid.detail': 'Nothing was stored. Put these right and send it again.',
  'refused.unavailable.title': 'The store did not answer',
  'refused.unavailable.detail': 'Try again in a moment, with the same id. Nothing you sent before is lost.',
  'refused.fault.title': 'Something went wrong on our side',
  'refused.fault.detail': 'Try again with the same id. If it happens again, report reference {reference}.',
  'problem.body-too-large': 'Send no more than {maximumKb} kB.',
  'problem.body-missing': 'The request has no body. Send JSON.',
  'problem.not-json': 'This could not be read as JSON in UTF-8.',
  'problem.nested-too-deep': 'This is nested more than {maximum} levels deep.',
  'problem.text-not-unicode': 'This text holds half a character. Type it again.',
  'problem.number-out-of-reach': 'This number is too large, or too close to zero, to be kept.',
  'problem.token-missing': 'Send the sign-in token as "Authorization: Bearer …".',
  'problem.token-expired': 'This sign-in has expired. Sign in again.',
  'problem.token-not-valid': 'This sign-in token is not valid here. Sign in again.',
  'problem.role-may-not': 'This needs one of these roles: {roles}.',
  'problem.role-may-not-write': 'A submission of kind "{kind}" is written by: {roles}.',
  'problem.server-writes-this': 'The server itself writes "{kind}"; it cannot be sent in or corrected.',
  'problem.test-needs-manager': 'Only a manager may mark a submission as a test.',
  'problem.no-such-route': 'There is no such address. Check its spelling and the method.',
  'problem.try-again': 'Send the same again in a moment.',
  'problem.our-fault': 'This is not your mistake. Reference: {reference}.',
  'problem.id-reused':
    'A submission with this id was stored at {recordedAt} with something else here. New content needs a new id.',
  'problem.already-corrected': 'Submission {by} already corrects this one.',
  'problem.unseen-signs':
    'This holds a sign that cannot be seen, such as one that turns the direction of writing. Type the number as it is painted.',
  'problem.claim-number-taken': 'Claim number {claimNumber} belongs to another claim.',
  'problem.item-too-large':
    'This submission takes {kilobytes} kB to store and the most is {maximumKb} kB. Split it in two.',
  'problem.no-such-submission':
    'Submission {submissionId} is not stored under this subject (yet). Send it first.',
  'problem.exhibit-not-declared': 'Submission {submissionId} declares no photo with this SHA-256.',
  'problem.no-such-exhibit': 'There is no such document.',
  'problem.exhibit-awaited': 'This photo was declared, but its bytes have not arrived yet.',
  'role.crew': 'Crew',
  'role.clerk': 'Claims clerk',
  'role.manager': 'Manager',
  'command.sign-in-title': 'Sign in for development',
  'command.folder-unwritable':
    'The folder {folder} cannot be written. Choose another with DATA_DIR, or change its permissions.',
  'command.folder-in-use':
    'The folder {folder} is used by the server at {origin}. Stop that one first (Ctrl-C in its terminal).',
  'command.folder-locked': 'The folder {folder} is used by another process. Stop that one first.',
  'command.folder-not-ours':
    'The folder {folder} holds files that are not from this program. Nothing was changed; choose another with DATA_DIR.',
  'command.port-taken': 'Port {port} is taken by another program. Choose another: PORT=4781 npm start',
  'command.port-wrong': 'PORT must be a whole number from 1 to 65535, and is "{port}".',
  'command.host-wrong':
    'HOST is "{host}", which is no address of this machine. Use 127.0.0.1, or 0.0.0.0 for the whole network.',
  'command.settings-not-json':
    'UTILITY_SETTINGS must be the settings themselves as JSON, not the name of a file: UTILITY_SETTINGS="$(cat FILE)" npm start',
  'command.settings-wrong': 'UTILITY_SETTINGS cannot be used: {reason}.',
  'command.building-site': 'Building the site (once, and after changes) …',
  'command.build-failed': 'The site could not be built:\n{output}',
  'command.site-built': 'The site is built: {folder}',
  'command.site-current': 'The site is already built from these sources: {folder}',
  'command.loading-demo': 'Loading the demo utility …',
  'command.replaying': 'The last server did not close: making good what it left undone …',
  'command.start-help':
    'npm start runs everything on this machine. It takes no options; these variables change it:',
  'command.start-help.PORT': 'the port; 4780 without it',
  'command.start-help.HOST':
    'the address to listen on; 127.0.0.1 without it, which only this machine reaches',
  'command.start-help.DATA_DIR': 'the folder for its data; .data without it',
  'command.start-help.UTILITY_SETTINGS':
    'your own utility as JSON, instead of the invented one with its demo',
  'command.start-help.example': 'for example',
  'command.no-such-option': 'There is no option {option}. npm start -- --help says what can be set.',
  'command.not-published':
    'The public pages could not be made: those that stand stay, and it is tried again. The reason is in {log}.',
  'command.ready': 'Ready in {seconds} s. Ctrl-C stops it; the data stay in {folder}.',
  'command.line-public': 'Public page',
  'command.line-crew': "Crew's forms",
  'command.line-desk': 'Claims desk',
  'command.line-sign-in': 'Sign in as {role, select, crew {crew} clerk {clerk} other {manager}}',
  'command.line-packet': 'Demo packet',
  'command.stopping': 'Stopping …',
  'command.reset-done': 'Deleted {folder}. The next npm start begins from nothing.',
  'command.reset-option':
    'npm run reset takes no options, and deletes nothing when it is given one ({option}). It deletes the data folder: .data, or the one in DATA_DIR.',
  'command.reset-nothing': 'There is no {folder}; nothing to delete.',
  'problem.no-such-strike': 'There is no strike with this id.',
  'problem.no-such-hydrant': 'There is no hydrant with this number in the inventory.',
  'problem.no-such-claim': 'There is no claim with this id.',
  'problem.near-not-a-place': 'Give "near" as latitude,longitude in decimal degrees, like 36.85,-76.29.',
  'problem.limit-not-a-number': 'Give "limit" as a whole number from 1 to {maximum}.',
  'problem.find-or-near':
    'Say what to look for: "find" with part of a number or place, or "near" with a position.',
  'command.rebuild-computed':
    'Computed anew: {items, plural, one {# item} other {# items}} from {facts, plural, one {# fact} other {# facts}}.',
  'command.rebuild-same': 'Everything kept for reading is what the facts say.',
  'command.rebuild-difference':
    '{kind, select, missing {missing} extra {too much} other {differs}}: {partition} {key}{path, select, none {} other { at {path}}}',
  'command.rebuild-differs':
    '{count, plural, one {# item differs} other {# items differ}}. To put right: npm run rebuild -- --write',
  'command.rebuild-repaired':
    '{count, plural, one {# item was} other {# items were}} put right; now everything kept for reading is what the facts say.',
  'command.rebuild-left':
    'After the repair {count, plural, one {# item still differs} other {# items still differ}}: facts came in meanwhile, or this is a fault of ours. Run it again.',
  'command.rebuild-option': 'There is no option {option}. There is one: --write, which repairs.',
  'command.tables-variable':
    'To work on the tables of a deployment set {name} too, as its functions have it.',
  'problem.correction-of-another':
    'What this corrects is no "{targetKind}". Take the form of what it corrects.',
  'problem.correction-of-other-kind':
    'What this corrects is a "{kind}", not a "{targetKind}". Take the form of what it corrects.',
} as const;
