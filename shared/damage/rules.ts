import { rule, type DamageRule } from './rule.ts';

const practice = 'common practice, no source';
const breakawayDesign =
  'a traffic hydrant parts at its flange and stem coupling so that barrel and valve stay whole: AWWA C502 and M17, from memory';

/**
 * What a finding says of the damage, a sentence each. All rest on what somebody saw: no rule is moved by a thing that
 * nobody has looked at, so that knowing less never makes an answer surer. Words: `damage.rule.<id>`.
 */
export const damageRules: readonly DamageRule[] = [
  // Parted where it is made to part.
  rule('flange-parted', breakawayDesign).when('breakawayFlangeParted', 'yes').pointsTo('breakaway-kit'),
  rule('coupling-parted', breakawayDesign).when('stemCouplingParted', 'yes').pointsTo('breakaway-kit'),
  rule('clean-break', breakawayDesign)
    .when('type', 'dry-barrel')
    .and('breakawayFlangeParted', 'yes')
    .and('stemCouplingParted', 'yes')
    .and('nozzleSection', 'sound')
    .and('lowerBarrel', 'sound')
    .and('barrelStands', 'upright')
    .and('ground', 'firm')
    .and('belowGrade', 'no-sign')
    .and('main', 'no-sign')
    .and('mainValve', 'holds')
    .makesLikely('breakaway-kit'),
  // A wet barrel has no stem coupling and no main valve below; its break-off bolts or spool part, and the water is
  // held by a check valve or by nothing.
  rule('wet-clean-break', practice)
    .when('type', 'wet-barrel')
    .and('breakawayFlangeParted', 'yes')
    .and('nozzleSection', 'sound')
    .and('lowerBarrel', 'sound')
    .and('barrelStands', 'upright')
    .and('ground', 'firm')
    .and('belowGrade', 'no-sign')
    .and('main', 'no-sign')
    .and('checkValve', 'holds', 'none-fitted')
    .makesLikely('breakaway-kit'),

  // The part above the ground.
  rule('nozzle-section-damaged', practice).when('nozzleSection', 'damaged').shows('nozzle-section'),

  // The barrel, and what is worked from above through it.
  rule('barrel-damaged', practice).when('lowerBarrel', 'damaged').shows('lower-barrel'),
  rule('barrel-leans', practice).when('barrelStands', 'leans').pointsTo('lower-barrel'),
  rule('main-valve-leaks', practice).when('mainValve', 'does-not-hold').pointsTo('lower-barrel'),
  rule('check-valve-leaks', practice).when('checkValve', 'does-not-hold').pointsTo('lower-barrel'),
  rule('stem-bent', practice).when('stem', 'bent').pointsTo('lower-barrel'),
  rule('seat-scored', practice).when('seat', 'scored').pointsTo('lower-barrel'),

  // Below grade: a dig.
  rule('below-grade-found', practice).when('belowGrade', 'found').shows('below-grade'),
  rule('below-grade-suspected', practice).when('belowGrade', 'suspected').pointsTo('below-grade'),
  rule('barrel-leans-below', practice).when('barrelStands', 'leans').pointsTo('below-grade'),
  rule('out-of-place', practice).when('barrelStands', 'out-of-place').pointsTo('below-grade'),
  rule('flange-held', breakawayDesign)
    .when('type', 'dry-barrel')
    .and('breakawayFlangeParted', 'no')
    .and('nozzleSection', 'damaged')
    .pointsTo('below-grade'),
  rule('washed-out', practice).when('ground', 'washed-out').pointsTo('below-grade'),
  rule('water-rising', practice).when('ground', 'water-rising').pointsTo('below-grade'),
  rule('drain-blocked', practice).when('drain', 'blocked').pointsTo('below-grade'),
  rule('dig-asked-for', practice).when('dig', 'needed').pointsTo('below-grade'),

  // The main.
  rule('main-found', practice).when('main', 'found').shows('main'),
  rule('main-suspected', practice).when('main', 'suspected').pointsTo('main'),
  rule('water-rising-main', practice).when('ground', 'water-rising').pointsTo('main'),
  rule('out-of-place-main', practice).when('barrelStands', 'out-of-place').pointsTo('main'),

  // More of it is gone than is left.
  rule('both-halves', practice)
    .when('nozzleSection', 'damaged')
    .and('lowerBarrel', 'damaged')
    .makesLikely('replace-whole'),
  rule('barrel-and-below', practice)
    .when('lowerBarrel', 'damaged')
    .and('belowGrade', 'found')
    .makesLikely('replace-whole'),
  rule('out-of-place-whole', practice).when('barrelStands', 'out-of-place').pointsTo('replace-whole'),
];

/** What speaks against an answer. It is shown beside it; it never makes another answer surer. */
export const contradictions: readonly DamageRule[] = [
  rule('flange-not-parted', breakawayDesign)
    .when('breakawayFlangeParted', 'no')
    .speaksAgainst('breakaway-kit'),
  rule('coupling-held', practice)
    .when('breakawayFlangeParted', 'yes')
    .and('stemCouplingParted', 'no')
    .speaksAgainst('breakaway-kit'),
  rule('main-valve-passes', practice).when('mainValve', 'does-not-hold').speaksAgainst('breakaway-kit'),
  rule('check-valve-passes', practice).when('checkValve', 'does-not-hold').speaksAgainst('breakaway-kit'),
  rule('more-than-the-kit', practice)
    .when('lowerBarrel', 'damaged')
    .speaksAgainst('breakaway-kit', 'nozzle-section'),
  rule('stem-bent-too', practice).when('stem', 'bent').speaksAgainst('breakaway-kit', 'nozzle-section'),
  rule('seat-scored-too', practice).when('seat', 'scored').speaksAgainst('breakaway-kit', 'nozzle-section'),
  rule('dig-asked-for-too', practice).when('dig', 'needed').speaksAgainst('breakaway-kit', 'nozzle-section'),
  rule('not-upright', practice)
    .when('barrelStands', 'leans', 'out-of-place')
    .speaksAgainst('breakaway-kit', 'nozzle-section'),
  rule('deeper-than-the-barrel', practice)
    .when('belowGrade', 'found')
    .speaksAgainst('breakaway-kit', 'nozzle-section', 'lower-barrel'),
  rule('wet-has-no-coupling', practice)
    .when('type', 'wet-barrel')
    .and('stemCouplingParted', 'yes')
    .speaksAgainst('breakaway-kit'),
  rule('type-has-no-flange', practice)
    .when('type', 'underground', 'wall', 'standpipe')
    .and('breakawayFlangeParted', 'yes')
    .speaksAgainst('breakaway-kit'),
  rule('barrel-sound', practice).when('lowerBarrel', 'sound').speaksAgainst('lower-barrel', 'replace-whole'),
  rule('main-valve-holds', practice).when('mainValve', 'holds').speaksAgainst('lower-barrel'),
  rule('no-sign-below', practice)
    .when('belowGrade', 'no-sign')
    .speaksAgainst('below-grade', 'main', 'replace-whole'),
  rule('stands-upright', practice).when('barrelStands', 'upright').speaksAgainst('below-grade'),
  rule('no-sign-on-the-main', practice).when('main', 'no-sign').speaksAgainst('main'),
  rule('valve-stops-it', practice)
    .when('isolationValve', 'holds')
    .and('ground', 'water-rising')
    .speaksAgainst('main'),
];
