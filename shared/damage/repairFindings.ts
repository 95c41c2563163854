import type { HiddenDamage } from '../procedure/ground.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { FindingKey } from './finding.ts';

type Said = readonly (readonly [FindingKey, unknown])[];

/** What the look for hidden damage showed, once the hydrant was open. */
const hidden: Readonly<Record<HiddenDamage, Said>> = {
  nothing: [
    ['stem', 'straight'],
    ['seat', 'sound'],
    ['drain', 'clear'],
    ['lowerBarrel', 'sound'],
  ],
  'bent-stem': [['stem', 'bent']],
  'cracked-barrel': [['lowerBarrel', 'damaged']],
  'scored-seat': [['seat', 'scored']],
  'blocked-drain': [['drain', 'blocked']],
  other: [],
};

/** What a repair found, as findings; a repair that says nothing of hidden damage gives none. */
export function repairFindings({ hiddenDamage = [], needsDig }: BodyOf<'repair'>): Said {
  return [
    ...hiddenDamage.flatMap((found) => hidden[found]),
    ...(needsDig === true ? [['dig', 'needed'] as const] : []),
  ];
}
