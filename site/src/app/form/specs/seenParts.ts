import type { Leaf } from '../nodes.ts';
import { seen } from './parts.ts';

/** What can be seen of a struck hydrant's parts: asked by the strike report, and by an inspection after it. */
export const isolationValve: Leaf = {
  type: 'choice',
  name: 'found.isolationValve',
  list: 'isolationValve',
  choices: ['holds', 'does-not-hold', 'not-tried', 'none-fitted'],
  whenBlank: 'not-tried',
};

export const strikeParts: readonly Leaf[] = [
  {
    type: 'choice',
    name: 'found.barrelStands',
    list: 'barrelStands',
    choices: ['upright', 'leans', 'out-of-place', 'unknown'],
    optional: true,
  },
  {
    type: 'choice',
    name: 'found.ground',
    list: 'ground',
    choices: ['firm', 'washed-out', 'water-rising', 'unknown'],
    optional: true,
  },
  seen('found.breakawayFlangeParted'),
  seen('found.stemCouplingParted'),
  {
    type: 'choice',
    name: 'found.nozzleSection',
    list: 'soundness',
    choices: ['sound', 'damaged', 'unknown'],
    whenBlank: 'unknown',
  },
  {
    type: 'choice',
    name: 'found.lowerBarrel',
    list: 'soundness',
    choices: ['sound', 'damaged', 'unknown'],
    whenBlank: 'unknown',
  },
  {
    type: 'choice',
    name: 'found.belowGrade',
    list: 'belowGrade',
    choices: ['no-sign', 'suspected', 'found', 'unknown'],
    whenBlank: 'unknown',
  },
  {
    type: 'choice',
    name: 'found.mainValve',
    list: 'mainValve',
    choices: ['holds', 'does-not-hold', 'unknown'],
    whenBlank: 'unknown',
  },
  {
    type: 'choice',
    name: 'found.checkValve',
    list: 'checkValve',
    choices: ['holds', 'does-not-hold', 'none-fitted', 'unknown'],
    optional: true,
  },
  {
    type: 'choice',
    name: 'found.main',
    list: 'belowGrade',
    choices: ['no-sign', 'suspected', 'found', 'unknown'],
    optional: true,
  },
];

/** The same, asked of a later look: in the same words, and whatever it does not say is left out. */
export const laterParts: readonly Leaf[] = [...strikeParts, isolationValve].map((leaf) => ({
  ...leaf,
  words: `field.strike.${leaf.name}`,
  optional: true,
}));
