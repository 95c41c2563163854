/** English words: what the crew's app says of this device: whether it opens with no signal, and what is on it. */
export const offline = {
  'offline.newer': 'A newer version of this app is ready.',
  'offline.newer-more': 'What you typed is kept.',
  'offline.newer-take': 'Open it now',

  'offline.title': 'This device',
  'offline.app': 'With no signal',
  'offline.app.ready': 'The app opens.',
  'offline.app.preparing': 'The app is being put on this device. Keep it open until this line changes.',
  'offline.app.none':
    'The app does not open: this browser cannot keep it, or the address has no HTTPS. What is open stays usable.',
  'offline.nearby': 'Hydrants',
  'offline.nearby.known':
    '{more, select, yes {The nearest {count}} other {All {count}}} within {distance} of your last place, as of {when}.',
  'offline.nearby.none': 'None on this device yet.',
  'offline.nearby.here': 'Take the hydrants around here',
  'offline.nearby.denied':
    'This device does not share its position. Open a hydrant once: those around it follow.',
  'offline.lists': 'Models, kits and codes',
  'offline.lists.here': 'On this device.',
  'offline.lists.none': 'Not on this device yet: a repair form could offer no kit and no torque.',
  'offline.keeping': 'What waits here',
  'offline.keeping.kept': 'The browser has promised to keep it.',
  'offline.keeping.refused':
    'The browser has not promised to keep it: it may delete it when the device runs short of room. Send it as soon as there is a signal. Adding the app to the home screen helps.',
  'offline.keeping.unknown': 'The browser has not been asked to keep it.',
  'offline.keeping.ask': 'Ask it to keep it',
  'offline.room': 'Room left',
  'offline.room.low': '{size}. Photos may not fit: make room on the device.',
  'offline.short.ready':
    'Ready with no signal: {count, plural, =0 {no hydrants yet} one {# hydrant} other {# hydrants}} on this device.',
  'offline.short.not': 'Not ready yet for no signal.',

  'offline.local-strike': 'Not sent yet. This is what this device knows.',
  'offline.waiting-here': 'Waiting on this device',
  'offline.go-on': 'Go on with this strike',
  'offline.unsent-out': 'A report on this device takes this hydrant out of service. It is not sent.',
  'offline.partial': 'From the list on this device, as of {when}. Whether it is in service now is not known.',
  'finder.on-device':
    'No answer from the server. {count, plural, =0 {None found} one {# hydrant found} other {# hydrants found}} on this device, as of {when}.',
  'outbox.delivered': 'Written by {author}, delivered by {by}.',
  'outbox.error.device-full': 'This device has no room left.',
  'problem.within-not-a-number': 'Give "within" as a whole number of feet from 1 to {maximum}.',
};
