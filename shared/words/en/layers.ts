/** English words: layers (streets, places to be covered, station areas) and their loading. */
export const layers = {
  'layers.help': `npm run layers -- FILE --as streets | addresses | stations [options]

Reads a GeoJSON file, says of every feature what became of it, and puts the layer in force. Public pages use it from
their next publication. docs/layers-geojson.md has what each kind must hold.

  --crs EPSG:2263        the system of the coordinates, where they are not in degrees on WGS 84
  --snap FT              streets: how far off one a hydrant or an address may lie (300)
  --join-crossings       streets: streets that cross without a common position are joined
  --join-within FT       streets: an end that stops this near another street is joined to it (0: never)
  --name PROPERTY        stations: the property that holds the name
  --report FILE.csv      writes every finding to a file
  --dry-run              reads and reports, and writes nothing
  --take-out             takes the layer of this kind out again (without FILE)
  --by NAME              who loads it
  --lang en | es         language of this command

INVENTORY_URL=s3://BUCKET/ loads into a deployment's bucket, beside its inventory; without it the layer goes into the
data folder of this machine.`,
  'layers.file':
    '{file}: {kind, select, streets {streets} addresses {places that must be covered} other {station areas}}, coordinates in {crs}',
  'layers.counts':
    '{features, plural, one {# feature} other {# features}}: {accepted, number} accepted ({doubtful, number} doubtful), {rejected, number} rejected',
  'layers.level.rejected': '{count, plural, one {Rejected, # time} other {Rejected, # times}}:',
  'layers.level.doubt': '{count, plural, one {Doubtful, # time} other {Doubtful, # times}}:',
  'layers.where':
    '{featureId, select, none {feature {row, number} (line {line, number})} other {feature {row, number}, {featureId} (line {line, number})}}',
  'layers.more': '{count, plural, one {and # more} other {and # more}} (--report FILE.csv has all of them)',
  'layers.report-written': 'Every finding is in {file}.',
  'layers.dry-run': 'Nothing was written (--dry-run).',
  'layers.loaded':
    'In force: {kind, select, streets {streets} addresses {places that must be covered} other {station areas}}, edition {edition, number}. Public pages use it from their next publication.',
  'layers.taken-out':
    'Taken out: {kind, select, streets {streets} addresses {places that must be covered} other {station areas}}, edition {edition, number}.',
  'layers.column.level': 'level',
  'layers.column.feature': 'feature',
  'layers.column.line': 'line',
  'layers.column.id': 'id',
  'layers.column.field': 'field',
  'layers.column.reason': 'reason',
  'layers.column.sentence': 'sentence',

  // The command line.
  'problem.layers-option-unknown': 'There is no option {option}. --help lists them.',
  'problem.layers-option-needs-value': 'Say what: {option} {form}',
  'problem.layers-as-what':
    'Say what the file holds: --as streets, --as addresses or --as stations{value, select, none {} other { (not "{value}")}}.',
  'problem.layers-option-of-other-kind': '{option} is for --as {only}, and this is --as {kind}.',
  'problem.layers-file-and-take-out': 'To take a layer out, name no file.',
  'problem.layers-no-file': 'Name the file: npm run layers -- FILE.geojson --as streets',
  'problem.layers-one-file': 'One file at a time.',
  'problem.layers-number-wrong':
    '{option} takes a number of feet from {minimum} to {maximum}, not "{value}".',
  'problem.layers-none-in-force': 'There is no layer of {kind} in force.',

  // The file as a whole.
  'problem.layers-not-geojson': 'Layers are read from GeoJSON (RFC 7946). Export the layer as that.',
  'problem.layers-no-features':
    'The file is JSON but has no list of "features". Export it as a GeoJSON FeatureCollection.',
  'problem.layers-empty': 'The list of features is empty. Export it again and look that no filter is on.',
  'problem.layers-too-many-features':
    'The file holds more than {most, number} features. Cut it to your own area.',
  'problem.layers-none-accepted': 'No feature of the file can be taken. Each is told above with its reason.',
  'problem.layers-no-name-field':
    'No property looks like the name of a station. Say which: --name PROPERTY. The file has: {has}',
  'problem.layers-name-field-missing': 'No feature has a property "{field}". The file has: {has}',
  'problem.layers-too-many-stations': 'The file holds more than {most, number} areas.',
  'problem.layers-nowhere-near':
    'Nothing in the file lies within 2 miles of a hydrant of the inventory (the first place is {latitude}, {longitude}). Either it is another town’s, or its coordinates are in another system: state it with --crs.',

  // What was made of it.
  'problem.layers-streets-made':
    '{streets, plural, one {# street} other {# streets}} between {places, plural, one {# place} other {# places}} where streets meet or end.',
  'problem.layers-crossings-open':
    '{count, plural, one {# crossing has} other {# crossings have}} no position that both streets have, and {count, plural, one {does} other {do}} not join: a bridge, or a file that is not cut at its crossings. --join-crossings joins all that are on one level.',
  'problem.layers-crossings-joined':
    '{count, plural, one {# crossing} other {# crossings}} without a common position joined, as you asked.',
  'problem.layers-ends-open':
    '{count, plural, one {# end stops} other {# ends stop}} within {feet} ft of a street and {count, plural, one {does} other {do}} not join it. --join-within {feet} joins them.',
  'problem.layers-ends-joined':
    '{count, plural, one {# end} other {# ends}} within {feet} ft of a street joined to it, as you asked.',
  'problem.layers-parts':
    'The network falls into {count, number} parts with no way between them; the largest has {percent} % of the streets. Nobody is led from one part to another.',
  'problem.layers-places-made': '{places, plural, one {# place} other {# places}} that must be covered.',
  'problem.layers-places-shared':
    '{count, plural, one {# feature lies} other {# features lie}} where another one does and {count, plural, one {counts} other {count}} once with it.',
  'problem.layers-names-from':
    '{count, plural, one {# area} other {# areas}}, named by the property "{field}".',
  'problem.layers-no-inventory-yet':
    'No inventory is loaded, so nobody looked whether the layer lies where the hydrants are.',
  'problem.layers-some-far':
    '{percent} % of it lies more than 2 miles from every hydrant. Look whether the file is your own area.',
  'problem.layers-hydrants-on-streets':
    '{on, number} of {count, number} hydrants lie within {feet} ft of a street{examples, select, none {.} other {; not {examples}. Distances to the others are straight lines.}}',
  'problem.layers-hydrants-in-areas':
    '{inside, number} of {count, number} hydrants lie in an area{examples, select, none {} other {; not {examples}}}.',
  'problem.layers-areas-overlap':
    '{count, plural, one {# hydrant lies} other {# hydrants lie}} in two areas or more ({examples}), and {count, plural, one {stands} other {stand}} on the page of each.',

  // One feature.
  'problem.layers-broken-feature': 'This is not a GeoJSON feature: {detail}',
  'problem.layers-no-geometry': 'It has no geometry.',
  'problem.layers-wrong-geometry': 'It is a {type}. A {wanted} or Multi{wanted} is needed.',
  'problem.layers-no-positions': 'Here a list of positions is needed, not {value}.',
  'problem.layers-not-a-position': 'A position is two numbers, longitude and latitude, not {value}.',
  'problem.layers-not-in-degrees':
    'This is not a longitude and a latitude in degrees: {value}. If the file is in another system, state it with --crs.',
  'problem.layers-at-zero': 'It lies at 0, 0, which is how missing coordinates look.',
  'problem.layers-outside-area': '{value} is not in the area that {crs} is for.',
  'problem.layers-too-few-positions':
    '{least, number} positions are needed here, and there {count, plural, one {is #} other {are #}}.',
  'problem.layers-no-length': 'The line begins and ends at one place and has nothing between.',
  'problem.layers-date-line': 'It crosses the date line. RFC 7946 has such a geometry cut there.',
  'problem.layers-not-a-street': 'By its tag "{tag}" it is no street.',
  'problem.layers-not-built': 'It is not there yet or any more ({value}).',
  'problem.layers-motorway': 'Along a {value} nobody walks or lays hose.',
  'problem.layers-ring-open': 'The last position of a ring must be the same as its first.',
  'problem.layers-ring-crosses':
    'The ring crosses itself near {latitude}, {longitude}, so nobody can say what is inside. Mend it and export again.',
  'problem.layers-no-name': 'It has no name here. A name is what its page is called by.',
  'problem.layers-name-too-long': 'A name has at most {most, number} characters; this has {length, number}.',
  'problem.layers-name-not-usable':
    'An address is made of the name, and "{name}" has no letter from a to z and no digit.',
  'problem.layers-same-address':
    'The address of its page would be that of "{other}". Give one of them another name than "{name}".',
  'problem.layers-long-step':
    'Two positions in a row lie {feet, number} ft apart. Look whether one of them is wrong.',
  'problem.layers-same-name': 'Another feature has the name "{name}", too. Both are one area in two parts.',
  'problem.layers-end-near-street':
    'It ends beside the street of feature {other, number} without joining it, at {latitude}, {longitude}.',
  'problem.layers-crosses-unjoined':
    'It crosses the street of feature {other, number} without a common position, at {latitude}, {longitude}: taken for a bridge.',
};
