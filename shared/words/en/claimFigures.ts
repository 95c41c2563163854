/** What the desk counts: ageing, recovery, what was lost to which objection; search. */
export const claimFigures = {
  'search.title': 'Look up',
  'search.find': 'Claim number, hydrant, day, payer, place or plate',
  'search.none': 'Nothing was found for “{find}”.',
  'search.more': 'and {count, plural, one {# more} other {# more}}; type more to narrow it',
  'search.claim': 'Claim {claimNumber}',
  'search.by.claim-number': 'claim number',
  'search.by.hydrant': 'hydrant',
  'search.by.day': 'day',
  'search.by.payer': 'payer',
  'search.by.place': 'place',
  'search.by.plate': 'plate',
} as const;
