/** English words: lists that are too long for one page, and the areas they are told apart by. */
export const lists = {
  'public.not-yet-shown':
    '{count, plural, one {One report received since {since} is not on this page yet. A hydrant may be out of service that it does not name: call {phone}.} other {# reports received since {since} are not on this page yet. Hydrants may be out of service that it does not name: call {phone}.}}',

  'lists.work': 'Planned work',
  'lists.work.why': 'What is planned may be put off or done sooner.',
  'lists.work.more': '{count, plural, one {# more is planned later.} other {# more are planned later.}}',
  'lists.work.calendar': 'All of it as a calendar (iCalendar)',

  'lists.newest':
    'The {listed} latest of {total} are listed here. All of them stand in the lists of the areas.',
  'lists.owing.all': 'All {total} that were not re-tested',
  'lists.areas': 'Areas of the town',
  'lists.areas.why':
    'The town is laid out in squares, letters from west to east and numbers from north to south. Each leads to everything that is out of service in it.',
  'lists.areas.square': '{code} {count} out of service',
  'lists.areas.figures': 'The areas in figures',
  'lists.areas.map': 'The squares, each with how many hydrants are out of service in it',
  'lists.areas.map-alt': 'The table below has the same figures. North is up.',
  'lists.area': 'Area {code}',
  'lists.area.elsewhere': 'Place not known, or outside the town',
  'lists.area.around': 'around {place}',
  'lists.area.out': 'Out of service',
  'lists.area.hydrants': 'Hydrants there',
  'lists.area.place': 'Where it is',
  'lists.area.headline':
    '{out, plural, =0 {Nothing is out of service in area {code}} one {One place out of service in area {code}} other {{count} places out of service in area {code}}}',
  'lists.area.elsewhere-headline':
    '{out, plural, one {One place out of service that is on no map} other {{count} places out of service that are on no map}}',
  'lists.area.of':
    '{hydrants, plural, =0 {The inventory has no hydrant there.} one {The inventory has one hydrant there.} other {The inventory has {count} hydrants there.}}',
  'lists.area.none': 'No hydrant of this area was recorded as out of service at this check.',
  'lists.area.part': 'Part {part} of {parts}, the latest first',
  'lists.parts': 'Parts of this list',
  'lists.part': 'Part {part}',
  'lists.whole': 'All areas',
  'lists.gone.title': 'This list is no longer kept',
  'lists.gone.text':
    'What is still so stands on the page of all hydrants out of service, or in a list that it leads to.',
} as const;
