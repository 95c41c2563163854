/** The wall display of a watch room: few words, large. */
export const wall = {
  'wall.title': 'Hydrants out of service: wall display',
  'wall.link': 'Wall display for a watch room',
  'wall.back': 'Page for reading',
  'wall.out-of':
    '{out, plural, one {of {total} hydrants is out of service} other {of {total} hydrants are out of service}}',
  'wall.beyond':
    '{count, plural, one {# more was reported that is not in the inventory} other {# more were reported that are not in the inventory}}',
  'wall.behind':
    '{count, plural, one {One report received since {since} is not on this screen yet. A hydrant may be out that it does not name: call {phone}.} other {# reports received since {since} are not on this screen yet. Hydrants may be out that it does not name: call {phone}.}}',
  'wall.none': 'No hydrant in the inventory was recorded as out of service at this check.',
  'wall.not-set-up': 'Not set up: no list of hydrants has been loaded.',
  'wall.oldest': 'Longest out',
  'wall.median': 'Half of those of the past year were back within {length}',
  'wall.in-service': 'Use instead',
  'wall.checked': 'Checked',
  'wall.rely': 'Do not rely on after',
  'wall.now': 'Now, by this screen’s clock',
  'wall.call': 'Call',
  'wall.list': 'Out of service now, newest first',
  'wall.new': 'NEW',
  'wall.page': '{page} of {pages}',
  'wall.hold': 'Stay on this part',
  'wall.go-on': 'Go on turning',
  'wall.next': 'Next part',
  'wall.more':
    '{count, plural, one {# more is out, longer than these. It is in the list.} other {# more are out, longer than these. They are in the list.}}',

  'wall.old.title': 'DO NOT RELY ON THIS SCREEN',
  'wall.old.why': 'It was good until {until}. What it shows was checked {checked} and may have changed.',
  'wall.old.alive':
    'The service answers, but its page has not been made anew since {checked}. Tell the utility.',
  'wall.old.gone': 'The service cannot be reached since {since}. Check this screen’s network.',
  'wall.early.why':
    'This screen’s clock is earlier than the check ({checked}), so it cannot tell whether what it shows is still good. Set the clock.',
  'wall.gone.title': 'The service cannot be reached',
  'wall.gone.why': 'No answer since {since}. What is shown was checked {checked} and is good until {until}.',
  'wall.stopped.title': 'THIS SCREEN HAS STOPPED RENEWING ITSELF',
  'wall.stopped.why':
    'It has shown the same page for more than five minutes. Do not rely on it. Load the page again; if that does not help, call {phone}.',
  'wall.again': 'Load again',
  'wall.mark': 'DO NOT RELY',
  'wall.mark-gone': 'NO ANSWER',
  'wall.announce': '{count, plural, one {New on the list: {names}} other {New on the list: {names}}}',
} as const;
