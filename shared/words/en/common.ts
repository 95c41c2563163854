/** English words: common. What several screens share. */
export const common = {
  'app.name': 'Hydrant Strike Ledger',
  'problem.uuid-v7': 'This must be a UUID of version 7.',
  'problem.not-a-submission': 'Send one submission as a JSON object.',
  'problem.newer-schema':
    'This was written by a newer version than the server knows (newest known: {newest}). Ask for the server to be updated; keep the entry.',
  'problem.wrong-subject': 'This form is about one of: {allowed}.',
  'problem.interval-ends-before-start': 'The end must be after the start.',
  'problem.jet-without-flow': 'You said no water was flowing. Leave this empty, or change what was flowing.',
  'problem.hydrant-or-place': 'Say which hydrant: its number, or your position, or where it stands in words.',
  'problem.basis-needs-time': 'Give the time of the strike, or say that it is not known.',
  'problem.before-the-strike': 'This is earlier than the strike itself. Check both times.',
  'problem.work-overlaps': 'This overlaps another stretch of work of the same person.',
  'problem.break-outside-work': 'This break is outside the hours worked.',
  'problem.completed-needs-reassembled': 'Say when the hydrant was closed up; the proofs must come after it.',
  'problem.worker-twice': 'This person is listed twice. Put all their hours on one line.',
  'problem.residual-not-below-static':
    'Residual must be below static. If it is not, no water was flowing or the readings are swapped: retake both.',
  'problem.target-not-below-static': 'The rating pressure must be below static.',
  'problem.flow-or-outlets': 'Give the pitot readings of at least one flowing outlet, or the metered flow.',
  'problem.deferred-needs-reason': 'Say why this proof is put off.',
  'problem.deferred-needs-name': 'Say who allowed this proof to be put off.',
  'problem.marked-or-told': 'Say when the hydrant was marked, or when dispatch was told.',
} as const;
