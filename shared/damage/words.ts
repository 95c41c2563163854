import type { Finding, FindingKey } from './finding.ts';

/** Keys of the catalogue for what was found: the thing's name, and the list that its values stand in. */
const lists: Readonly<Record<FindingKey, readonly [label: string, list: string]>> = {
  type: ['hydrant.type', 'hydrantType'],
  barrelStands: ['field.strike.found.barrelStands', 'barrelStands'],
  ground: ['field.strike.found.ground', 'ground'],
  breakawayFlangeParted: ['field.strike.found.breakawayFlangeParted', 'seen'],
  stemCouplingParted: ['field.strike.found.stemCouplingParted', 'seen'],
  nozzleSection: ['field.strike.found.nozzleSection', 'soundness'],
  lowerBarrel: ['field.strike.found.lowerBarrel', 'soundness'],
  belowGrade: ['field.strike.found.belowGrade', 'belowGrade'],
  main: ['field.strike.found.main', 'belowGrade'],
  mainValve: ['field.strike.found.mainValve', 'mainValve'],
  checkValve: ['field.strike.found.checkValve', 'checkValve'],
  isolationValve: ['field.strike.found.isolationValve', 'isolationValve'],
  stem: ['damage.thing.stem', 'stem'],
  seat: ['damage.thing.seat', 'seat'],
  drain: ['damage.thing.drain', 'drain'],
  dig: ['damage.thing.dig', 'dig'],
};

export const findingWords = ({
  key,
  value,
}: Pick<Finding, 'key' | 'value'>): { label: string; value: string } => ({
  label: lists[key][0],
  value: `value.${lists[key][1]}.${value}`,
});
