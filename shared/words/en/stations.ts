/** English words: station areas on the public pages. */
export const stations = {
  'stations.nav': 'By station',
  'stations.title': 'Station areas',
  'stations.lead':
    'Where each fire station is the first to be sent. Each area has a page that prints on one sheet.',
  'stations.back': 'All station areas',
  'stations.page-title': '{name}: hydrants out of service',
  'stations.headline':
    '{out, plural, =0 {No hydrant of {total} is out of service} one {1 hydrant of {total} is out of service} other {{count} hydrants of {total} are out of service}}',
  'stations.headline.none': 'No hydrant of the inventory stands in this area',
  'stations.others':
    '{count, plural, one {One more report names a hydrant or a place in this area that the inventory does not have; it is on the list, too.} other {# more reports name hydrants or places in this area that the inventory does not have; they are on the list, too.}}',
  'stations.unplaced':
    '{count, plural, one {One report has no place and may lie here. It is on the list of all.} other {# reports have no place and may lie here. They are on the list of all.}}',
  'stations.in-service': 'In service, by class',
  'stations.class': 'Class',
  'stations.count': 'Hydrants',
  'stations.no-class': 'No class on record',
  'stations.list': 'Out of service',
  'stations.list.none': 'Every hydrant of this area is in service, as far as is known at the check.',
  'stations.hydrant': 'Hydrant',
  'stations.since': 'Out since, cause, expected back',
  'stations.instead': 'Use instead',
  'stations.expected': 'back {when}',
  'stations.not-expected': 'no time given yet',
  'stations.by.streets': 'Distances are along streets.',
  'stations.by.straight': 'Distances are straight lines. Hose along streets is longer.',
  'stations.straight': 'straight line',
  'stations.rest': '{count, plural, one {One more, not on this sheet:} other {# more, not on this sheet:}}',
  'stations.unnamed': '{count, plural, one {and one more} other {and # more}} on the page itself',
  'stations.map': 'Map of the area of {name}',
  'stations.map.alt':
    '{out, plural, =0 {None is out of service.} one {One is out of service, with a numbered sign.} other {# are out of service, with numbered signs.}} The list has every place in words.',
  'stations.map.outline': 'Border of the area',
  'stations.row':
    '{out, plural, =0 {none out of service} one {1 out of service} other {{count} out of service}}, of {total}',
};
