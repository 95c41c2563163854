/**
 * English words: the steps of a dry-barrel breakaway repair, each with the caution that belongs to it. Our own words
 * for common practice; the maker's manual, local codes and licensed practice decide, and the screen says so.
 */
export const procedure = {
  'step.traffic-and-protection': 'Traffic controlled, protective gear on',
  'step.traffic-and-protection.caution':
    'Set cones and lights before you step into the road. Leave the vehicle where it is until energized lines and water are under control.',
  'step.isolated': 'Isolation valve closed',
  'step.isolated.caution':
    'Count the turns and write them down. If it does not hold, close the next valve and list who loses water.',
  'step.pressure-gone': 'Pressure proved gone',
  'step.pressure-gone.caution':
    'Water held under pressure can throw a bonnet. Open a nozzle cap slowly, standing to the side, and see that nothing comes.',
  'step.drained': 'Barrel drained',
  'step.drained.caution':
    'If the drain is blocked, pump it out. Do not take anything apart over standing water.',
  'step.taken-down': 'Parted hardware taken down',
  'step.taken-down.caution':
    'The nozzle section is heavy: lift it with a strap or two people, and keep hands out of the flange.',
  'step.stem-freed': 'Stem freed',
  'step.stem-freed.caution': 'A stem under tension can spring. Keep your face and hands out of its line.',
  'step.top-opened': 'Top opened',
  'step.top-opened.caution': 'Loosen bolts in turn and stay clear until you know no pressure is behind them.',
  'step.hidden-damage-checked': 'Checked for hidden damage',
  'step.hidden-damage-checked.caution':
    'Look for a bent stem, cracked barrel, scored seat or blocked drain. Any of them may mean a dig: locate other utilities first.',
  'step.faces-cleaned-gaskets-new': 'Faces cleaned, gaskets new',
  'step.faces-cleaned-gaskets-new.caution':
    'Wear eye protection while scraping. Use only lubricant approved for drinking water.',
  'step.breakaway-parts-fitted': 'New breakaway parts fitted',
  'step.breakaway-parts-fitted.caution': 'They have a right way up: follow the maker’s drawing.',
  'step.nozzle-section-set': 'Nozzle section set and facing the road',
  'step.nozzle-section-set.caution': 'Heavy lift, pinch point: guide it with a bar, not with fingers.',
  'step.tightened-to-torque': 'Bolts tightened crosswise to torque',
  'step.tightened-to-torque.caution':
    'Use the maker’s torque for this model; too tight can crack the flange.',
  'step.thrust-nut-set': 'Thrust nut set, turns freely',
  'step.thrust-nut-set.caution': 'If it binds, take it apart again: a forced stem hides a bend.',
  'step.top-closed': 'Top closed up',
  'step.top-closed.caution': 'Follow the maker’s order for bonnet, seals and weather cover.',
  'step.refilled-slowly': 'Refilled slowly',
  'step.refilled-slowly.caution':
    'Open the isolation valve a little at a time with a cap loose to let air out. Trapped air can burst a cap off.',
  'step.caps-on': 'Caps on',
  'step.caps-on.caution': 'Flush first, with the stream aimed away from traffic, people and energized lines.',
} as const;
