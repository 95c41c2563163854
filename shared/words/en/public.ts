/** English words: public. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const publicPages = {
  'public.skip': 'Skip to the content',
  'public.app-needs-script': 'This page needs a script to work, and your browser has scripts turned off.',
  'public.language-name': 'English',
  'public.pages': 'Pages',
  'public.nav.out': 'Out of service now',
  'public.nav.help': 'How to read this page',
  'public.emergency': 'Hydrant hit, leaking or open? Call at any hour:',
  'public.both-units': '{own} ({other})',

  'public.title': 'Hydrants out of service',
  'public.description':
    'Which fire hydrants of {utility} cannot be used now, and which is the nearest that can.',
  'public.headline':
    '{out, plural, one {{count} of {total} hydrants is out of service} other {{count} of {total} hydrants are out of service}}',
  'public.beyond':
    '{count, plural, one {# more was reported that is not in the inventory.} other {# more were reported that are not in the inventory.}}',
  'public.owing':
    '{count, plural, one {# hydrant is back in service but was not re-tested.} other {# hydrants are back in service but were not re-tested.}}',
  'public.checked': 'Checked',
  'public.rely': 'Do not rely on this page after',
  'public.instant': '{day}, {time} {zone}',
  'public.none-out': 'No hydrant in the inventory was recorded as out of service at this check.',

  'public.stale.title': 'Do not rely on this page',
  'public.stale.old': 'It was to be relied on until {until}. Your device’s clock says',
  'public.stale.early':
    'Your device’s clock is earlier than this page’s check ({checked}), so it cannot tell whether the page is still good. It says',
  'public.stale.then': 'What it says below was checked at {checked}, and may have changed.',
  'public.stale.again': 'Load the page again',
  'public.stale.call': 'If it stays like this, call {phone}.',
  'public.stale.mark': 'OUT OF DATE',

  'public.map': 'Map of hydrants in service and out of service',
  'public.map.alt':
    '{out, plural, =0 {No hydrant is marked as out of service.} one {One numbered sign marks the hydrant that is out of service.} other {# numbered signs mark the hydrants that are out of service.}} Each is in the list below with its place. North is up.',
  'public.map.in': 'in service',
  'public.map.out': 'out of service, numbered as in the list',
  'public.map.north': 'N',
  'public.map.beyond':
    '{count, plural, one {# hydrant lies outside this map.} other {# hydrants lie outside this map.}}',
  'public.map.show': '{number}: show {name} in the list',
  'public.near-map': 'Where the nearest hydrants in service are',
  'public.near-map.alt': 'The hydrant that is out of service is in the middle. {places} North is up.',
  'public.near-map.place': '{number}: {hydrant}, {away}.',
  'public.near-map.note': 'Rings show straight-line distance.',

  'public.index': 'Hydrants out of service, at a glance',
  'public.list': 'Out of service now',
  'public.number': 'Number {number} on the map.',
  'public.unknown-hydrant': 'Hydrant not in the inventory',
  'public.reported-as': 'Reported as {hydrant}, which is not in the inventory',
  'public.position': 'Position',
  'public.no-position': 'Its place is not known to this page. Call {phone}.',
  'public.since': 'Out since',
  'public.for':
    '{days, plural, =0 {} one {# day } other {# days }}{hours, plural, =0 {} one {# hour} other {# hours}}',
  'public.under-an-hour': 'less than an hour',
  'public.for-label': '({length} at this check)',
  'public.cause': 'Cause',
  'public.doing': 'What is being done',
  'public.expected': 'Expected back',
  'public.not-expected': 'No time given yet',
  'public.overdue': 'that time has passed',
  'public.rating': 'Class before it went out',
  'public.rating-now': 'Class',
  'public.class': 'class {hydrantClass}, {color}',
  'public.no-class': 'no class on record',
  'public.flow': 'rated {flow}',
  'public.tested': 'tested {date}',
  'public.untested': 'test date not known',
  'public.open-page': 'History of {hydrant}',

  'public.nearest': 'Nearest hydrants in service',
  'public.nearest-of': 'Nearest hydrants in service to {hydrant}',
  'public.nearest.line': 'Distances are straight lines, not along streets.',
  'public.nearest.none': 'None can be named, because the place is not known.',
  'public.nearest.far':
    'None can be named: it stands far from the utility’s other hydrants, or its position is wrong.',
  'public.nearest.no-inventory': 'None can be named: no inventory has been loaded.',
  'public.nearest.nobody': 'There is no other hydrant in service in the inventory.',
  'public.away': '{distance} {direction}',
  'public.not-retested': 'not re-tested',
  'public.private': 'private hydrant',

  'public.maybe-struck': 'may be the struck hydrant itself',
  'public.rating-after': 'Class, tested after it went out',
  'public.repaired': 'Repaired.',
  'public.held.valve': 'A valve that shuts it is still recorded as closed.',
  'public.held.test': 'A test that it needs is not passed yet.',
  'public.held.open': 'It was opened up again since.',
  'public.held.record': 'Its return is recorded, and the records do not agree; the utility checks them.',
  'public.map.out-beyond':
    '{count, plural, one {# hydrant out of service stands far from the others, or its position is wrong. It is in the list and not on this map.} other {# hydrants out of service stand far from the others, or their positions are wrong. They are in the list and not on this map.}}',
  'public.hydrant.curve-note-repaired':
    'Tested after the repair. The hydrant is not back in service: see above why.',
  'public.hydrant.curve-note-during': 'Tested after the outage that is still recorded began.',

  'public.owing.title': 'Back in service, but not re-tested',
  'public.owing.why': 'These were put back although a test was put off. Treat what they give as unknown.',
  'public.owing.line': 'Back since {day}. Not tested since: {proofs}.',

  'public.cause.strike': 'Struck by a vehicle',
  'public.cause.main-break': 'Water main break',
  'public.cause.main-shut': 'Water main shut off',
  'public.cause.valve-fault': 'Faulty valve',
  'public.cause.hydrant-fault': 'Fault in the hydrant',
  'public.cause.frozen': 'Frozen',
  'public.cause.access-blocked': 'Access blocked',
  'public.cause.construction': 'Construction work',
  'public.cause.low-pressure': 'Low pressure',
  'public.cause.valve-closed': 'Its valve is shut',
  'public.cause.other': 'Another cause',

  'public.stage.reported': 'Reported. No repair recorded yet.',
  'public.stage.shut-off': 'Its water is shut off. It waits for repair.',
  'public.stage.waiting': 'Not being worked on now.',
  'public.stage.under-repair': 'Being repaired.',
  'public.stage.repaired': 'Repaired. It is not back until its tests are passed and its return is recorded.',
  'public.stage.other': 'Nothing more recorded yet.',

  'public.waiting.kit': 'Waiting for a repair kit.',
  'public.waiting.parts': 'Waiting for parts.',
  'public.waiting.crew': 'Waiting for a crew.',
  'public.waiting.utility-locate': 'Waiting for buried lines to be marked.',
  'public.waiting.contractor': 'Waiting for a contractor.',
  'public.waiting.weather': 'Waiting for the weather.',
  'public.waiting.other': 'Waiting.',

  'public.proof.no-leaks': 'leaks',
  'public.proof.opens-and-closes-fully': 'opening and closing fully',
  'public.proof.drains-down': 'draining down',
  'public.proof.flow-test': 'flow',

  'public.bearing.N': 'north',
  'public.bearing.NE': 'northeast',
  'public.bearing.E': 'east',
  'public.bearing.SE': 'southeast',
  'public.bearing.S': 'south',
  'public.bearing.SW': 'southwest',
  'public.bearing.W': 'west',
  'public.bearing.NW': 'northwest',

  'public.not-set-up.title': 'This page is not set up yet',
  'public.not-set-up.text':
    'No list of hydrants has been loaded, so this page cannot say which hydrants are in service. It must not be used to find one.',
  'public.not-set-up.call':
    'To ask about a hydrant, or to report one, call {phone}. It is answered at any hour.',
  'public.not-set-up.reports': 'Reported out of service so far',

  'public.hydrant.title': 'Hydrant {hydrant}',
  'public.hydrant.out': 'Out of service',
  'public.hydrant.in': 'In service',
  'public.hydrant.owing': 'In service, not re-tested',
  'public.hydrant.not-in-inventory': 'This hydrant is not in the inventory.',
  'public.hydrant.type': 'Type',
  'public.type.dry-barrel': 'dry barrel',
  'public.type.wet-barrel': 'wet barrel',
  'public.type.underground': 'underground',
  'public.type.wall': 'wall hydrant',
  'public.type.standpipe': 'standpipe',
  'public.type.unknown': 'not known',
  'public.hydrant.now': 'Now',
  'public.hydrant.past': 'Earlier outages',
  'public.hydrant.no-past': 'None recorded.',
  'public.hydrant.past-line': '{cause}, from {from} to {to}.',
  'public.hydrant.past-deferred': 'Came back without a test of: {proofs}.',
  'public.hydrant.tests': 'Flow tests',
  'public.hydrant.rated': 'Rated capacity {capacity} at a residual of {pressure}, by the test of {date}.',
  'public.hydrant.rated-class': 'Class by the test of {date}.',
  'public.hydrant.range': '{low} to {high} {unit}',
  'public.hydrant.interval':
    'The readings of that test allow {range} (95%). Class {hydrantClass} is {chance} sure.',
  'public.hydrant.basis':
    'From the readings alone: gauges, diameters and coefficients. Pumps, tanks and other draws change what flows on the day.',
  'public.hydrant.none-rates': 'None of these tests rates the hydrant.',
  'public.hydrant.last-not-rated': 'The latest test, of {date}, had too small a pressure drop to rate it.',
  'public.hydrant.change.loss':
    'It gives {percent}% less than on {from}: {fromFlow} then, {toFlow} on {to}. The readings do not explain it.',
  'public.hydrant.change.possible-loss':
    'It gave {percent}% less on {to} than on {from}: {fromFlow} then, {toFlow} after. The readings might explain it.',
  'public.hydrant.change.gain': 'It gives {percent}% more than on {from}: {fromFlow} then, {toFlow} on {to}.',
  'public.hydrant.change.steady': 'It gives about what it gave on {from}: {fromFlow} then, {toFlow} on {to}.',
  'public.hydrant.change-bare.loss': 'It gave clearly less on {to} than on {from}.',
  'public.hydrant.change-bare.possible-loss':
    'It gave less on {to} than on {from}; the readings might explain it.',
  'public.hydrant.change-bare.gain': 'It gave more on {to} than on {from}.',
  'public.hydrant.change-bare.steady': 'It gave on {to} about what it gave on {from}.',
  'public.hydrant.loss': 'Less water than before',
  'public.hydrant.repair': 'Before and after the repair of {date}',
  'public.hydrant.before': 'Before',
  'public.hydrant.after': 'After',
  'public.hydrant.day': 'Day',
  'public.hydrant.static': 'Static pressure',
  'public.hydrant.residual': 'Residual pressure',
  'public.hydrant.measured': 'Measured flow',
  'public.hydrant.capacity': 'Rated capacity',
  'public.hydrant.interval-label': 'Interval at 95%',
  'public.hydrant.class': 'Class',
  'public.hydrant.no-figure': 'none',
  'public.hydrant.all-tests': 'All tests',
  'public.hydrant.chart':
    'Rated capacity over time. The bars are the intervals at 95%; dotted lines are where the classes begin. The table has the figures.',
  'public.hydrant.readings': 'Static {static}, residual {residual} at {flow}.',
  'public.hydrant.one': 'Read at one hydrant only, which is less certain.',
  'public.hydrant.curve':
    'Supply curve of the test of {date}. Square: static pressure. Circle: the test. Triangle: the flow at {pressure}. Gray: where the supply lies at 95%.',
  'public.hydrant.curve-note': 'The supply on the day of the test, before the outage now recorded.',
  'public.hydrant.back': 'All hydrants out of service',
  'public.hydrant.gone':
    'Nothing is recorded of this hydrant any more: what stood here was withdrawn as a mistake. Whether it is in service stands in the list of hydrants out of service.',

  'public.help.title': 'How to read this page',
  'public.help.says': 'What it says',
  'public.help.says.1':
    'It lists every fire hydrant that the utility has on record as out of service, whatever the cause, with the nearest ones that are in service.',
  'public.help.says.2':
    'It is made anew every {minutes, plural, one {minute} other {# minutes}}, even when nothing changed. Everything recorded before the time behind “Checked” is on it.',
  'public.help.says.3':
    'Behind “Do not rely on this page after” stands the time from which it is too old, whatever it says. A printed copy is good until then as well.',
  'public.help.not': 'What it does not promise',
  'public.help.not.1': 'A hydrant that nobody has reported is not on it. Not being listed is not a test.',
  'public.help.not.2':
    'Distances are straight lines on the ground. Streets, fences, tracks and rivers are not taken into account.',
  'public.help.not.3':
    'Class and flow are those of the last test on record. What a hydrant gives today depends on the main behind it.',
  'public.help.not.4':
    'Sending a message through this page is not possible. To report a hydrant, call {phone}.',
  'public.help.words': 'What the words mean',
  'public.help.word.out': 'Out of service',
  'public.help.word.out-text': 'Do not plan on this hydrant. Some outage of it is recorded and not ended.',
  'public.help.word.since': 'Out since',
  'public.help.word.since-text': 'The earliest time that any report gives for it.',
  'public.help.word.expected': 'Expected back',
  'public.help.word.expected-text':
    'The latest estimate. It is not a promise, and the hydrant stays listed until its tests are passed.',
  'public.help.word.repaired': 'Repaired',
  'public.help.word.repaired-text': 'The work is done, the tests are not. It cannot be relied on yet.',
  'public.help.word.owing': 'Not re-tested',
  'public.help.word.owing-text': 'Back in service although a test was put off, by a decision on record.',
  'public.help.word.unknown': 'Not in the inventory',
  'public.help.word.unknown-text':
    'Somebody reported a hydrant that the utility’s list does not have. It is shown where it was reported.',
  'public.help.classes': 'Hydrant classes',
  'public.help.classes-text':
    'The class tells how much water a hydrant gave at its last test, at a residual pressure of {pressure}. Letters and colors follow NFPA 291. The paint on a hydrant may differ.',
  'public.help.class': 'Class',
  'public.help.color': 'Color',
  'public.help.capacity': 'Rated capacity',
  'public.help.from': '{flow} and more',
  'public.help.between': '{from} to {to}',
  'public.help.below': 'less than {flow}',
  'public.help.times': 'Times and units',
  'public.help.times-text':
    'Times are in the utility’s time zone, {zone}, by the 24-hour clock. Quantities are in US units and in metric units.',
  'public.help.data': 'For other systems',

  'public.footer.data': 'Data for other systems (JSON)',
  'public.footer.license': 'Terms of use of the data:',
  'public.footer.every':
    '{minutes, plural, one {Made anew every minute.} other {Made anew every # minutes.}}',
  'public.data.note':
    'Check relyUntil before any use. A hydrant that is not listed is not thereby known to be in service.',

  'public.missing.title': 'There is no page here',
  'public.missing.text':
    'The address may be mistyped. A hydrant has a page of its own only when something is recorded of it: an outage or a flow test.',

  'problem.inventory-vanished':
    'No inventory could be found, although one was published before. The last good page stays.',
  'problem.inventory-empty': 'The inventory holds no hydrant that should serve. The last good page stays.',
  'problem.outage-vanished':
    'Outage {outageId} was published as open and is now in no projection, though the ledger still holds it. The last good page stays.',
  'problem.clock-behind':
    'The clock of this publisher ({now}) is behind the page that stands ({checkedAt}) by more than a minute.',
} as const;
