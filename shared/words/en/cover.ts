/** English words: fire cover on the public pages. */
export const cover = {
  'cover.summary': 'At a glance',
  'cover.oldest': 'Out longest',
  'cover.oldest.none': 'Nothing is recorded as out of service.',
  'cover.returns': 'Time to return',
  'cover.returns.median':
    '{count, plural, one {{length}, by the only one that came back in the {days} days before this check.} other {{length}: of the {shown} that came back in the {days} days before this check, half took less and half took more.}}',
  'cover.returns.none':
    'No return yet in the {days} days before this check, so there is no usual time to state.',
  'cover.inactive':
    '{count, plural, one {# more hydrant is marked as not in use in the inventory. It is not counted here and never offered.} other {{shown} more hydrants are marked as not in use in the inventory. They are not counted here and never offered.}}',

  'cover.lost': 'Lost cover',
  'cover.lost.count': '{count, plural, one {1 area lost its cover} other {{shown} areas lost their cover}}',
  'cover.lost.no-area': 'No area was found to have lost its cover',
  'cover.not-counted':
    '{count, plural, one {# report is of a hydrant that the inventory does not have: what cover it took away is not known.} other {# reports are of hydrants that the inventory does not have: what cover they took away is not known.}}',

  'cover.here': 'Hydrants in service around here',
  'cover.within': 'Within',
  'cover.now': 'Now',
  'cover.before': 'Before',
  'cover.credit': 'Credit for distance: {left} now, {before} before.',
  'cover.credit.at-most': 'at most {flow}',

  'cover.hose.perhaps':
    '{all, select, true {{hose} of hose may reach from each of these.} other {{hose} of hose may reach from {count, plural, one {one of these} other {# of these}}.}}',
  'cover.hose.reaches':
    '{all, select, true {{hose} of hose reaches from each of these.} other {{hose} of hose reaches from {count, plural, one {one of these} other {# of these}}.}}',
  'cover.hose.none': '{hose} of hose reaches from none of these.',
  'cover.hose.too-far': 'beyond {hose} of hose',
  'cover.straight-only': 'straight line, no street known',

  'cover.sure': 'How sure this is',
  'cover.by.straight':
    'Distances are straight lines. Hose along streets is longer, so credit is at most this.',
  'cover.by.streets': 'Distances are along streets.',
  'cover.doubt.flow':
    '{count, plural, one {1 hydrant in service within {reach} has no flow on record.} other {# hydrants in service within {reach} have no flow on record.}}',
  'cover.doubt.outlets':
    '{count, plural, one {1 hydrant in service has no outlets on record.} other {# hydrants in service have no outlets on record.}}',
  'cover.doubt.not-retested':
    '{count, plural, one {1 hydrant in service within {reach} came back without its tests.} other {# hydrants in service within {reach} came back without their tests.}}',
  'cover.doubt.maybe-struck':
    '{count, plural, one {1 hydrant counted here may be the struck one itself.} other {# hydrants counted here may be the struck one itself.}}',
  'cover.doubt.class-only': 'Flows are not published: each hydrant counts as the most of its class.',
  'cover.doubt.none': 'Flow and outlets of each hydrant are on record.',

  'cover.title': 'Areas that lost cover',
  'cover.what':
    'Places that had a hydrant in service within {reach} or a credit of {need}, and do not have it while the hydrants listed are out.',
  'cover.what.no-need':
    'Places that had a hydrant in service within {reach}, and do not have one while the hydrants listed are out.',
  'cover.looked.grid':
    '{points, plural, =0 {Nothing was looked at, because no hydrant of the inventory is out.} one {One point was looked at: of a grid of {step}, the only one within {reach} of what is out.} other {{shown} points were looked at: a grid of {step}, wherever a hydrant that is out stands within {reach}.}}',
  'cover.looked.places':
    '{points, plural, =0 {No place that must have cover lies within {reach} of what is out.} one {The one place that must have cover within {reach} of what is out was looked at.} other {The {shown} places that must have cover within {reach} of what is out were looked at.}}',
  'cover.found.none': 'At this check, none of them had lost its cover.',
  'cover.found':
    '{lost, plural, one {One of them lost its cover} other {{lostShown} of them lost their cover}}{none, plural, =0 {; each still has a hydrant in service within {reach}.} one {; at one every hydrant within {reach} is out.} other {; at {noneShown} every hydrant within {reach} is out.}}',
  'cover.straight-note':
    'By straight lines, which reach farther than hose: what is named here has lost its cover, and more places may have.',
  'cover.area.around': 'Around {name}',
  'cover.area.none': 'Every hydrant within {reach} is out.',
  'cover.area.none-part':
    '{none, plural, one {At 1 of {points} points} other {At {none} of {points} points}} every hydrant within {reach} is out; the others have less than {need}.',
  'cover.area.short': 'Credit below {need}: {left} left where it is worst, {before} before.',
  'cover.area.size.grid':
    '{points, plural, one {1 point of the grid} other {# points of the grid}}, about {ground}',
  'cover.acres': '{value} acres',
  'cover.hectares': '{value} ha',
  'cover.area.name': '{place} ({hydrant})',
  'cover.area.size.places': '{points, plural, one {1 place} other {# places}}',
  'cover.area.because':
    '{count, plural, one {Because this hydrant is out: {hydrants}.} other {Because these hydrants are out: {hydrants}.}}',
  'cover.area.because-more': 'Because {count} hydrants are out, among them {hydrants}.',
  'cover.area.more':
    '{count, plural, one {One more area is smaller than those listed.} other {# more areas are smaller than those listed.}}',
  'cover.area.all': 'All areas, drawn',
  'cover.area.map': 'Where cover was lost: around {name}',
  'cover.area.map.alt':
    'Filled squares: every hydrant within {reach} is out. Hatched squares: credit below the need. Numbered signs: hydrants out of service, as in the list. Circles: hydrants in service. North is up.',
  'cover.legend.none': 'no hydrant within {reach}',
  'cover.legend.short': 'credit below {need}',
  'cover.legend.in': 'in service',
  'cover.legend.out': 'out of service, numbered as in the list',
  'cover.not-drawn':
    'The areas are not drawn, because this utility publishes the places of hydrants only roughly.',

  'cover.help.streets':
    'Distances are along streets as far as streets are loaded. Fences, tracks and closed streets are not taken into account.',
  'cover.rule': 'How cover is counted',
  'cover.rule.credit':
    'Each hydrant in service is credited by its distance: up to {first} within {firstTo}, up to {second} within {secondTo}, up to {third} within {thirdTo}, nothing beyond. It is never credited with more than its last rated flow, nor with more than its outlets allow. This is the published rule by which cities are rated for fire insurance (hydrant distribution of the ISO Fire Suppression Rating Schedule).',
  'cover.rule.at-most':
    '“At most” stands before a credit that could be lower: because distances are straight lines, or because a flow or the outlets are not on record.',
  'cover.rule.hose':
    'An engine is taken to carry {hose} of hose. On a straight line, hose “may reach”, never “reaches”.',
  'cover.rule.not':
    'Credit is no promise of water: what hydrants give together depends on the mains behind them.',
  'cover.back': 'All hydrants out of service',
  'cover.no-inventory': 'No list of hydrants has been loaded, so nothing can be said of cover.',
} as const;
