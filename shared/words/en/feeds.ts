/** English words of the feeds for machines. */
export const feeds = {
  'feeds.statement': '{count} Checked {checked}. Do not rely on this after {until}.',
  'feeds.not-set-up':
    'Not set up: no list of hydrants has been loaded, so nothing here says which hydrants are in service.',
  'feeds.reported':
    '{count, plural, one {# hydrant was reported out of service.} other {# hydrants were reported out of service.}}',

  'feeds.not-yet-shown':
    '{count, plural, one {One report received since {since} is not in this yet. A hydrant may be out of service that it does not name: call {phone}.} other {# reports received since {since} are not in this yet. Hydrants may be out of service that it does not name: call {phone}.}}',

  'feeds.title.out': 'Out of service: {hydrant}',
  'feeds.title.back': 'Back in service: {hydrant}',
  'feeds.title.still-out': 'One outage over, still out of service: {hydrant}',
  'feeds.title.unlisted': 'No longer listed as out of service: {hydrant}',
  'feeds.cause': 'Cause: {cause}.',
  'feeds.since': 'Out since {at}.',
  'feeds.ended': 'This outage was over at {at}.',
  'feeds.unlisted':
    'This outage is not on the list any more: it is over, or its report was withdrawn or joined with another.',
  'feeds.still-out': 'The hydrant is still out of service for another outage.',
  'feeds.expected': 'Expected back {at}. This is an estimate.',
  'feeds.not-listed': 'A hydrant that is not listed is not thereby known to be in service.',
  'feeds.overdue': 'It was expected back {at}. That time has passed.',
  'feeds.not-expected': 'No time for its return is given yet.',
  'feeds.position': 'Position: {latitudeDeg, number, ::.00000}, {longitudeDeg, number, ::.00000}.',

  'feeds.alert.title': 'Alerts of {utility}: fire hydrants out of service',
  'feeds.alert.event': 'Fire hydrant out of service',
  'feeds.alert.instruction':
    'Do not plan on this hydrant. Look on the page for the nearest ones in service. To report a hydrant, call the number given here.',

  'feeds.calendar.name': '{utility}: hydrants, expected returns and planned work',
  'feeds.calendar.expected': 'Expected back: {hydrant}',
  'feeds.calendar.work': 'Planned: {work}. {hydrant}',
  'feeds.calendar.takes-out': 'The hydrant is to be out of service for this work.',
  'feeds.calendar.stays-in': 'The hydrant is to stay in service.',

  'feeds.name.index': 'All feeds',
  'feeds.name.snapshot': 'Everything on the list, with the nearest hydrants in service (JSON)',
  'feeds.name.geojson': 'Hydrants out of service for maps (GeoJSON)',
  'feeds.name.csv': 'Hydrants out of service for spreadsheets (CSV)',
  'feeds.name.changes': 'What changed and when (JSON)',
  'feeds.name.openapi': 'Description of these addresses for programs (OpenAPI)',
  'feeds.name.atom': 'News of outages for feed readers (Atom)',
  'feeds.name.jsonFeed': 'News of outages for feed readers (JSON Feed)',
  'feeds.name.calendar': 'Expected returns and planned work for calendars (iCalendar)',
  'feeds.name.alerts': 'Alerts (CAP)',

  'feeds.api.description':
    'Files that are made anew at each check. Compare relyUntil with the clock before any use: after it, nothing in them may be relied on. A hydrant that is not listed is not thereby known to be in service.',

  'feeds.list.text':
    'The same facts at fixed addresses, with the same times. Each says when it was checked and after when not to rely on it.',

  'problem.cap-sender':
    'Use no space, comma, less-than sign or ampersand; mostly it is a domain, like water.millrace.example.',
} as const;
