/**
 * English words: problems. Each sentence names what is wrong and what would be right; the screen puts it beside
 * the field, the API sends it with the field's path.
 */
export const problems = {
  'problem.required':
    'Fill this in{expected, select, string { (text)} number { (a number)} int { (a whole number)} other {}}.',
  'problem.wrong-type':
    'This must be {expected, select, string {text} number {a number} int {a whole number} boolean {yes or no} array {a list} object {a group of fields} other {another kind of value}}.',
  'problem.too-short': 'Use at least {minimum} characters.',
  'problem.too-long': 'Use no more than {maximum} characters.',
  'problem.too-few': 'Give at least {minimum}.',
  'problem.too-many': 'Give no more than {maximum}.',
  'problem.below-minimum': 'This must be {minimum} or more.',
  'problem.above-maximum': 'This must be {maximum} or less.',
  'problem.not-above': 'This must be more than {minimum}.',
  'problem.not-multiple': 'This must be a multiple of {divisor}.',
  'problem.not-one-of': 'Choose one of: {values}.',
  'problem.no-such-choice': 'This is not one of the choices.',
  'problem.unknown-field': 'There is no field "{field}" here. Check its spelling, or leave it out.',
  'problem.not-valid': 'This is not valid.',
  'problem.format-datetime': 'Give a date and time in UTC, like 2026-03-04T02:10:00Z.',
  'problem.format-date': 'Give a date like 2026-03-04.',
  'problem.format-uuid': 'This must be a UUID.',
  'problem.format-guid': 'This must be a UUID.',
  'problem.format-email': 'Give an email address, like name@water.example.',
  'problem.format-url': 'Give a whole address, like https://water.example/.',
  'problem.format-regex': 'This is not in the right form.',
  'problem.still-to-come': 'This lies in the future. Check the date and the time.',
  'problem.year-out-of-range': 'Check the year: it must be from {from} to {to}.',
  'problem.correction-not-trial':
    'A correction is never a trial: it would take the only place for a real one. Leave out "test".',
  'problem.correction-of-trial':
    'What this corrects is a trial, which counts nowhere: there is nothing to correct.',
  'problem.format-json_string': 'This is not valid JSON.',
} as const;
