/** English words: the inventory, its import and the nearest hydrants. */
export const inventory = {
  'bearing.N': 'north',
  'bearing.NE': 'northeast',
  'bearing.E': 'east',
  'bearing.SE': 'southeast',
  'bearing.S': 'south',
  'bearing.SW': 'southwest',
  'bearing.W': 'west',
  'bearing.NW': 'northwest',

  // The file as a whole.
  'problem.inventory-empty': 'The file holds no rows. Export it again and look that it is not empty.',
  'problem.inventory-format-unknown':
    'This is not a CSV, GeoJSON or OSM XML file. Export the hydrants as one of these.',
  'problem.inventory-is-zip':
    'This is a ZIP archive (a spreadsheet or a zipped shapefile). Save the sheet as CSV, or export the layer as GeoJSON.',
  'problem.inventory-is-database': 'This is a database file. Export its hydrant layer as GeoJSON or CSV.',
  'problem.inventory-is-shapefile':
    'This is a shapefile. Export the layer as GeoJSON (in WGS 84), or as CSV with its coordinates.',
  'problem.inventory-is-old-spreadsheet':
    'This is a spreadsheet in an old binary format. Save the sheet as CSV.',
  'problem.inventory-no-delimiter':
    'The first line does not split into columns at a comma, semicolon, tab or bar. Export as CSV with a header line.',
  'problem.inventory-no-header':
    'Line {line} looks like data, not like column names. Put a header line above it.',
  'problem.inventory-quote-never-closed':
    'A quotation mark opened on line {line} is never closed, so the lines behind it read as one field. Nothing was taken. Close or remove it.',
  'problem.inventory-not-json': 'Near line {line} the file is no JSON, or no list of features: {detail}',
  'problem.inventory-json-cut-off':
    'The file ends on line {line} in the middle of its data. Download or export it again.',
  'problem.inventory-record-never-closed':
    'The record that begins near line {line} never ends: a bracket or quotation mark is missing.',
  'problem.inventory-no-features':
    'The file is JSON but has no list of "features". Export it as a GeoJSON FeatureCollection.',
  'problem.inventory-not-xml': 'The file stops being XML on line {line}: {detail}',
  'problem.inventory-xml-not-osm':
    'The file is XML of the kind "{element}". Only OSM XML is read; export the layer as GeoJSON.',
  'problem.inventory-too-many-rows': 'The file holds more than {most} rows. Cut it to your own hydrants.',
  'problem.inventory-none-accepted':
    'No row of the file could be used; the reasons are listed above. The inventory in force stays.',
  'problem.inventory-shrinks':
    'The file gives {count} hydrants and the inventory in force has {current}. If the rest are really gone, run the import again with --allow-fewer. The inventory in force stays.',
  'problem.inventory-older-edition':
    'An inventory loaded later ({editionAt}) is already in force, and an older one never replaces a newer. Nothing was changed.',

  // Coordinates.
  'problem.inventory-no-coordinate-columns':
    'No column looks like coordinates. Name them: --map latitudeDeg=COLUMN --map longitudeDeg=COLUMN. The columns are: {columns}.',
  'problem.inventory-no-numbers-for-coordinates': 'The coordinate columns hold no numbers.',
  'problem.inventory-no-such-column': 'There is no column "{column}". The columns are: {columns}.',
  'problem.inventory-projected':
    'The coordinates are not degrees (x {xFrom} to {xTo}, y {yFrom} to {yTo}): they are projected. Say in what, with --crs EPSG:CODE. The code stands in the layer’s properties or its .prj file. It is not guessed, because a near miss puts every hydrant in the wrong place.',
  'problem.inventory-already-degrees':
    'You stated {crs}, but the coordinates are degrees (x {xFrom} to {xTo}, y {yFrom} to {yTo}). Leave --crs out, or map the projected columns.',
  'problem.inventory-axes-swapped':
    'Latitude and longitude are the wrong way round (x {xFrom, number, ::.####} to {xTo, number, ::.####}, y {yFrom, number, ::.####} to {yTo, number, ::.####}). GeoJSON has the longitude first: export the file again. The columns of a table can be named: --map latitudeDeg=COLUMN --map longitudeDeg=COLUMN.',
  'problem.inventory-outside-area':
    'In {crs} the hydrants would stand around {latitude}, {longitude}, outside where that system is used ({area}). State the system the file is really in.',
  'problem.inventory-crs-unknown':
    '"{value}" is not in the list that comes with this program. Give its definition instead: --crs "+proj=… +datum=… +units=…". It stands beside the code in the registry that defined it.',
  'problem.inventory-crs-not-readable': 'The definition "{value}" cannot be used: {detail}.',
  'problem.inventory-datum-not-stated':
    '{value} stands on an older datum, and how that datum is shifted to WGS 84 here is not stated. Guessing can put every hydrant 200 m off. Convert the file to WGS 84 in your GIS, or give a definition with its +towgs84=… parameters.',
  'problem.inventory-crs-overrides-file':
    'The file says its coordinates are in {file}; they were read in {crs}, as you stated.',
  'problem.inventory-datum-assumed':
    'The file does not say which datum its degrees are on. They were taken as WGS 84 (NAD 83 differs by less than 2 m). Degrees on an older datum such as NAD 27 can be 200 m off: check one hydrant on the map.',

  // Columns.
  'problem.inventory-no-id-column':
    'No column looks like the hydrant’s number. If there is one, name it: --map hydrantId=COLUMN. Otherwise each hydrant is named by its place.',
  'problem.inventory-no-id-column-source':
    'No column looks like the hydrant’s number. If there is one, name it: --map hydrantId=COLUMN. Otherwise each hydrant is named by the id of its record.',
  'problem.inventory-not-what-it-says':
    'named like {field}, but its values are not ({examples}); left alone. To use it all the same: --map {field}="{column}"',
  'problem.inventory-unit-not-shown':
    'looks like {field}, but nothing shows its unit ({examples}); left alone. State it: --unit {field}=in, mm, ft or tenth-in',
  'problem.inventory-maker-not-kept': 'the maker; kept in the hydrant model’s record, not here',
  'problem.inventory-make-year-not-install':
    'when it was made, which is not when it was put in the ground. To take it as that: --map installedOn="{column}"',

  // The bytes and the lines.
  'problem.inventory-not-utf8':
    'The file is not UTF-8. It was read as Windows-1252 (Latin-1): look whether names with accents are right, such as "{example}".',
  'problem.inventory-blank-lines':
    '{count, plural, one {# blank line was} other {# blank lines were}} passed over.',
  'problem.inventory-other-elements':
    '{count, plural, one {# element that is no tagged point was} other {# elements that are no tagged points were}} passed over (corners of ways, ways, relations).',

  // Rows that are not in the inventory.
  'problem.inventory-too-many-columns':
    '{found} fields under {expected} column names: a delimiter inside a field has shifted the rest. Put that field in quotation marks.',
  'problem.inventory-broken-feature': 'cannot be read: {detail}',
  'problem.inventory-not-a-point': 'is a {geometry}, not a point.',
  'problem.inventory-no-coordinates': 'has no coordinates.',
  'problem.inventory-not-a-coordinate': 'these coordinates are not numbers.',
  'problem.inventory-at-zero': 'stands at 0, 0, which is what an empty form leaves.',
  'problem.inventory-not-in-degrees':
    'these coordinates are not degrees, as most of the file is. Convert this row.',
  'problem.inventory-latitude-range':
    'has the latitude {latitude, number, ::.######}: latitude must be from −90 to 90.',
  'problem.inventory-longitude-range':
    'has the longitude {longitude, number, ::.######}: longitude must be from −180 to 180.',
  'problem.inventory-row-outside-area': 'falls at {latitude}, {longitude}, where no hydrant of {crs} can be.',
  'problem.inventory-swapped-axes':
    'latitude and longitude look exchanged; the other way round it stands at {latitude}, {longitude}. Put it right in the source, or take it so with --accept swapped-axes.',
  'problem.inventory-not-a-hydrant': 'is not a hydrant.',
  'problem.inventory-deleted-asset': 'the source says it is gone.',
  'problem.inventory-duplicate-row':
    'is the same as {kind, select, feature {feature} other {line}} {first} in everything but its record number.',
  'problem.inventory-duplicate-id-same-place':
    'has the id and the place of {kind, select, feature {feature} other {line}} {first}, but other values; that one was kept.',
  'problem.inventory-duplicate-place':
    'has no id and stands exactly where {kind, select, feature {feature} other {line}} {first} does; that one was kept.',
  'problem.inventory-breaks-schema': 'cannot be kept: {detail}',

  // Rows to look at.
  'problem.inventory-too-few-columns':
    '{found} fields under {expected} column names; the missing ones were taken as blank.',
  'problem.inventory-swapped-axes-taken':
    'latitude and longitude were exchanged, as you said; it stands at {latitude}, {longitude}.',
  'problem.inventory-far-from-rest':
    'stands {miles} miles from the middle of all the others. Kept; check its coordinates.',
  'problem.inventory-same-place':
    'stands on the same spot as hydrant {other}. Both were kept; one may be misplaced.',
  'problem.inventory-duplicate-id':
    'is the id of {rows} rows at different places. Each was kept under an id of its own; this one is now "{given}".',
  'problem.inventory-duplicate-id-first':
    'is the id of {rows} rows at one place. This row, the first, was kept.',
  'problem.inventory-duplicate-place-first':
    'stands exactly where {kind, select, feature {feature} other {line}} {other} does. This row, the first, was kept.',
  'problem.inventory-placeholder-id':
    '{rows, plural, one {is a placeholder, not an id} other {stands on # rows, so it is no id}}. It was given the id "{given}".',
  'problem.inventory-odd-id':
    'holds more than a number, unlike the other ids. It was kept as the id; if part of it is a remark, move that to another column before people use it.',
  'problem.inventory-id-not-usable':
    'is too long for an id or holds control characters. It was given the id "{given}".',
  'problem.inventory-says-out-of-service':
    'the source says out of service. It is kept as inactive and never offered as the nearest hydrant.',
  'problem.inventory-abandoned':
    'the source says abandoned. It is kept as abandoned and never offered as the nearest hydrant.',
  'problem.inventory-planned':
    'the source says planned. It is kept as planned and never offered as the nearest hydrant.',
  'problem.inventory-perhaps-blow-off':
    'may be a blow-off and not a fire hydrant. It was kept; take it out of the source if it is not for fire.',
  'problem.inventory-not-for-fire':
    'the remark says it is not for fire use. It was kept; mark it inactive in the source if that is so.',
  'problem.inventory-perhaps-gone':
    'the remark says it is gone. It was kept; take it out of the source if that is so.',
  'problem.inventory-place-uncertain':
    'the remark says its place is uncertain. It was kept; check it on the map.',
  'problem.inventory-not-from-main':
    'its water does not come from a main: a drafting point, with no pressure of its own. It was kept; take it out of the source if it is not yours to keep.',
  'problem.inventory-unknown-word': 'is not a word known here; taken as unknown.',
  'problem.inventory-not-a-number': 'is not a number. Left out.',
  'problem.inventory-unknown-unit': '"{unit}" is not a unit of this known here. Left out.',
  'problem.inventory-unit-missing':
    'has no unit, and the column’s others are in {units}. Left out. State the unit of bare numbers with --unit {field}=UNIT.',
  'problem.inventory-mixed-units':
    'is in {unit} ({converted} {target}), but most of the column is in {usual}, where the same number would do as well. Left out. To take such values as written: --accept mixed-units.',
  'problem.inventory-mixed-units-taken':
    'is in {unit}, unlike most of the column ({usual}); taken as written, {converted} {target}.',
  'problem.inventory-unit-unlikely':
    'as {unit}, like the rest of the column, it would be {converted} {target}; between {minimum} and {maximum} {target} was expected. Left out.',
  'problem.inventory-out-of-range':
    'is {converted} {target}; between {minimum} and {maximum} {target} was expected. Left out.',
  'problem.inventory-not-a-count': 'is not a count from 0 to 8. Left out.',
  'problem.inventory-unreadable-outlets':
    'cannot be read as counts and sizes. Write it like 2 x 2.5, 1 x 4.5. Left out.',
  'problem.inventory-outlet-counts-differ':
    'counts {counted} outlets, but {listed} are listed with sizes. The list was kept.',
  'problem.inventory-not-a-date': 'is not a date. Left out.',
  'problem.inventory-ambiguous-date':
    'could be two dates, and nothing in the column shows whether the day or the month comes first. Left out. State it with --date-order mdy or dmy.',
  'problem.inventory-impossible-date': 'is not a possible date. Left out.',
  'problem.inventory-future-date': 'lies after today ({today}). Left out.',
  'problem.inventory-placeholder-date': 'is what programs write for "no date". Left out.',
  'problem.inventory-text-too-long': 'was cut to {longest} characters.',

  // How rows were read.
  'problem.inventory-id-from-source':
    'no id of its own; took the id that the source gives the record (such as node/123456)',
  'problem.inventory-id-from-place':
    'no id; took its place, rounded to about a meter (such as @35.06239,-85.30722), which stays the same at every import',
  'problem.inventory-coordinates-as-text': 'coordinates were written as text, read as numbers',
  'problem.inventory-type-not-specific': 'says hydrant but not which barrel; type left unknown',
  'problem.inventory-count-as-word': 'a count in words, read as a number',
  'problem.inventory-outlet-size-without-count': 'a size, but not how many outlets; sizes left out',
  'problem.inventory-zero-as-blank': 'zero, taken as blank',
  'problem.inventory-unit-misspelled': 'a misspelled unit, read as meant',
  'problem.inventory-year-only': 'a year only; stored as 1 January of it',
  'problem.inventory-two-digit-year':
    'a year of two digits; taken as the latest such year that is not in the future',

  // The command's arguments.
  'problem.inventory-no-file': 'Name the file to import: npm run import -- FILE [--dry-run]',
  'problem.inventory-one-file':
    'Name one file at a time. An import is the whole inventory, so join several files first.',
  'problem.inventory-file-not-found': 'There is no file "{file}" that can be read.',
  'problem.inventory-report-not-written':
    '{file} cannot be written ({code}). Name a file in a folder that exists and that you may write in.',
  'problem.inventory-unknown-option': 'There is no option "{option}". npm run import -- --help lists them.',
  'problem.inventory-option-needs-value': '{option} needs a value: {form}',
  'problem.inventory-unknown-field': 'There is no field "{field}". The fields are: {fields}.',
  'problem.inventory-map-form':
    '"{value}" is not of the form field=column (several columns: field=column+column; none: field=).',
  'problem.inventory-field-has-no-unit': '"{field}" has no unit. These have: {fields}.',
  'problem.inventory-no-such-unit': '"{unit}" is not a unit of {field}. Choose one of: {units}.',
  'problem.inventory-no-such-date-order':
    '"{value}" is not a date order. Use mdy (4/23/2013) or dmy (23/4/2013).',
  'problem.inventory-not-acceptable': '"{value}" cannot be accepted. Choose one of: {values}.',
  'problem.inventory-no-such-language': '"{value}" is not a language of this program. Use en or es.',

  // What the command prints.
  'inventory.help': `npm run import -- FILE [options]

Reads the whole hydrant inventory from CSV, GeoJSON or OSM XML, says what it makes of every column and of every doubtful row, and puts it in force.

  --dry-run              show everything, write nothing
  --crs EPSG:2263        what projected coordinates are in (or a proj4 definition)
  --map field=COLUMN     feed a field from this column; field= leaves it out; A+B joins two columns
  --unit field=mm        the unit of a field's bare numbers
  --date-order mdy|dmy   what 04/05/2021 means where nothing shows it
  --accept REASON        take values left out for this reason: {acceptable}
  --allow-fewer          replace the inventory in force by a much smaller one
  --by NAME              who loads it (default: the account that runs this)
  --report FILE          write every finding to FILE (.csv or .json)
  --json                 print the whole report as JSON
  --lang en|es           language of the report

Fields: {fields}

DEPLOYMENT_URL=https://… and INVENTORY_URL=s3://BUCKET/ load into a deployment (docs/operations/inventory.md); without them it goes into the data folder of this machine.`,
  'inventory.title.file': '{file}: {format}, {rows} rows',
  'inventory.format.csv': 'CSV',
  'inventory.format.geojson': 'GeoJSON',
  'inventory.format.osm': 'OSM XML',
  'inventory.title.place': 'Coordinates',
  'inventory.place.points': 'each feature’s own point, {crs} ({why})',
  'inventory.place.columns': 'columns {columns}, {crs} ({why})',
  'inventory.why.stated': 'stated by you',
  'inventory.why.file': 'stated by the file',
  'inventory.why.format': 'by the format’s rule',
  'inventory.why.values': 'taken from the values',
  'inventory.title.mapping': 'Columns used',
  'inventory.mapping.line': '{field} ← {columns} · {filled} of {rows} rows · {examples}',
  'inventory.mapping.cut-name': 'name cut to ten characters, so a guess: check it',
  'inventory.mapping.by-values': 'found by its values',
  'inventory.mapping.stated': 'stated by you',
  'inventory.unit.stated': 'bare numbers in {unit}, stated by you',
  'inventory.unit.column-name': 'bare numbers in {unit}, from the column’s name',
  'inventory.unit.osm-tag': 'bare numbers in {unit}, by the tag’s definition',
  'inventory.unit.written': 'unit written beside the numbers: {written}',
  'inventory.unit.mixed': 'units differ from row to row: {written}',
  'inventory.unit.values': 'bare numbers in {unit}, shown by the sizes',
  'inventory.unit.usual': 'bare numbers taken as {unit}',
  'inventory.unit.not-shown': 'nothing shows the unit',
  'inventory.date.mdy': 'month first, as its values show or you stated',
  'inventory.date.dmy': 'day first, as its values show or you stated',
  'inventory.decimal-comma': 'comma as decimal mark',
  'inventory.title.unmapped': 'Columns not used',
  'inventory.unmapped.line': '{column} · {filled} of {rows} rows · {examples}',
  'inventory.makers': '{column}: {spellings} spellings of about {names} makers; for example {example}',
  'inventory.title.remarks': 'About the file',
  'inventory.title.notes': 'How rows were read',
  'inventory.note.line':
    '{rows, plural, one {# row} other {# rows}}{column, select, none {} other { · {column}}}: {what}{examples, select, none {} other { ({examples})}}',
  'inventory.title.rejected': 'Rejected: {rows, plural, one {# row} other {# rows}}, not in the inventory',
  'inventory.title.doubtful':
    'Doubtful: {rows, plural, one {# row} other {# rows}}, in the inventory; please look',
  'inventory.finding.code': '{rows, plural, one {# row} other {# rows}} · {code}',
  'inventory.finding.more': '… and {count} more; --report FILE lists every one',
  'inventory.at.line': 'line {line}',
  'inventory.at.feature': 'feature {row} (line {line})',
  'inventory.at.element': 'line {line}, {element}',
  'inventory.sum':
    '{rows} rows read = {clean} clean + {doubtful} with doubts + {rejected} rejected. {accepted} hydrants.',
  'inventory.dry-run': 'Dry run: nothing was written.',
  'inventory.loaded': 'In force now: edition {edition}, {accepted} hydrants, manifest {manifest}.',
  'inventory.fact-posted': 'The load is recorded in the ledger.',
  'inventory.fact-pending': 'The server records the load in the ledger when it next reads the inventory.',
  'inventory.report-written': 'Every finding: {file}',
  'inventory.column.level': 'level',
  'inventory.column.where': 'where',
  'inventory.column.row': 'row',
  'inventory.column.element': 'record id',
  'inventory.column.field': 'field',
  'inventory.column.column': 'column',
  'inventory.column.value': 'value',
  'inventory.column.reason': 'reason',
  'inventory.column.sentence': 'what to do',
  'inventory.level.rejected': 'rejected',
  'inventory.level.doubt': 'doubtful',
} as const;
