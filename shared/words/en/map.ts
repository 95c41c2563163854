/** The public map: what the page says by itself, and what its script fills in (`{…}` is filled in by the browser). */
export const map = {
  'map.title': 'Map of hydrants',
  'map.nav': 'Map',
  'map.open': 'Larger map, and hydrants near you',
  'map.lead': 'Every numbered sign is a hydrant that is out of service; the list has each with its facts.',
  'map.list-link': 'List of hydrants out of service',
  'map.further':
    '{count, plural, one {# more is out of service: a square without a number.} other {# more are out of service: squares without a number.}}',
  'map.placeless':
    '{count, plural, one {# hydrant out of service is not on the map, because its place is not known. It is in the list.} other {# hydrants out of service are not on the map, because their places are not known. They are in the list.}}',

  'map.group': 'Map. The arrow keys move it, plus and minus zoom, zero shows all of it.',
  'map.buttons': 'Move the map',
  'map.in': 'Zoom in',
  'map.out': 'Zoom out',
  'map.whole': 'Show the whole map',
  'map.left': 'Move to the west',
  'map.right': 'Move to the east',
  'map.up': 'Move to the north',
  'map.down': 'Move to the south',
  'map.hint':
    'Drag to move; hold Ctrl and turn the wheel, or use two fingers, to zoom. A touch on the map lists what is nearest to that point.',
  'map.streets': 'Show streets',
  'map.streets-from':
    'Streets come from {host}, which then sees which part of the map you look at. They stay off until you ask for them.',
  'map.streets-by': 'Streets: {attribution}',
  'map.streets-failed': 'Some of the streets could not be loaded from {host}.',
  'map.streets-off':
    'Streets were turned off, because asking for those around your position would tell {host} where you are.',

  'map.near': 'Hydrants near you',
  'map.find': 'Find hydrants near me',
  'map.middle': 'Nearest to the middle of the map',
  'map.privacy':
    'Your position is used on this device alone and is not sent. The page asks this site for lists of whole districts, and in a small town for all of them.',
  'map.locating': 'Asking the device where it is…',
  'map.reading': 'Reading the list of hydrants…',
  'map.denied':
    'The device did not give its position: it is not allowed for this page. Move the map to where you are and choose “Nearest to the middle of the map”.',
  'map.insecure':
    'The browser gives no position to a page that came without encryption (https). Move the map to where you are and choose “Nearest to the middle of the map”.',
  'map.failed':
    'The device could not find its position. Move the map to where you are and choose “Nearest to the middle of the map”.',
  'map.unreachable':
    'The list of hydrants could not be read: there is no connection, or the service does not answer. Nothing can be said about what is near. Call {phone}.',
  'map.from-before':
    'There is no connection. This is from the list read before: it was checked {checked} and may have changed.',
  'map.renewed': 'The list is being renewed at this moment. Try again in a few seconds.',
  'map.broken': 'The list of hydrants could not be understood, which is a fault of this page. Call {phone}.',
  'map.old': 'Do not rely on this list: it was checked {checked} and was good until {until}. Call {phone}.',
  'map.behind':
    'Reports received since {since} are not in this list yet: a hydrant that it offers may be out of service. Call {phone}.',
  'map.early':
    'Your device’s clock is earlier than the check of this list ({checked}), so it cannot tell whether the list is still good.',
  'map.times': 'Checked {checked}. Do not rely on it after {until}.',
  'map.here': 'Nearest to your position',
  'map.at-point': 'Nearest to the point on the map',
  'map.line': 'Distances are straight lines, not along streets.',
  'map.accuracy': 'The device gives its position to within {distance}.',
  'map.coarse':
    'The device gives its position only to within {distance}: the order below may be wrong, and a hydrant may be nearer than it says.',
  'map.found': '{hydrant} is the nearest in service: {away}.',
  'map.none': 'The list holds no hydrant in service.',
  'map.passed': 'Do not use these on the way',
  'map.out-since': 'OUT OF SERVICE since {since}',
  'map.you': 'the point from which distances are measured',
  'map.mark': '{number}: {hydrant}, {away}',

  'problem.tile-address':
    "Give an https address with one host and '{z}', '{x}' and '{y}' once each, like https://tiles.example.gov/streets/'{z}'/'{x}'/'{y}'.png.",
} as const;
