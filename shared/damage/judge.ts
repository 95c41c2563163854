import { damageClasses, type DamageClass } from '../strikes/damage.ts';
import type { FindingKey, Findings } from './finding.ts';
import type { Found } from './findings.ts';
import { fires, levels, type Level, type Reason } from './rule.ts';
import { contradictions, damageRules } from './rules.ts';

/** One answer with everything that speaks for it and against it. */
export interface Ranked {
  readonly damage: DamageClass;
  readonly level: Level;
  readonly reasons: readonly Reason[];
  readonly against: readonly Reason[];
}

export interface Judgement {
  /** Nothing is sure: there are signs at most, or nothing was found at all. */
  readonly cannotTell: boolean;
  /** The surest first; of equally sure ones the deepest, which decides what is brought. */
  readonly ranked: readonly Ranked[];
  /** Damage was seen, and nobody has yet ruled out that it goes deeper. */
  readonly atLeast: boolean;
  /** What nobody has looked at and what would change the answer, in the order in which to look. */
  readonly look: readonly FindingKey[];
  readonly disagree: Found['disagree'];
}

const depth = (damage: DamageClass): number => damageClasses.indexOf(damage);
const sureness = (level: Level): number => levels.indexOf(level);
const surer = (a: Level, b: Level): Level => (sureness(b) > sureness(a) ? b : a);

/**
 * How far the damage goes, by the rules. A suggestion: the crew decides. Adding a finding never takes sureness from an
 * answer and leaving one out never adds any, because every rule asks only for what was seen.
 */
export function judgeDamage({ findings, disagree }: Found): Judgement {
  const ranked = damageClasses
    .flatMap((damage): Ranked[] => {
      const held = damageRules.flatMap((each) => {
        const reason = each.damage.includes(damage) ? fires(each, findings) : null;
        return reason && each.level ? [{ reason, level: each.level }] : [];
      });
      if (held.length === 0) return [];
      const level = held.map((each) => each.level).reduce(surer);
      const against = contradictions.flatMap((each) =>
        each.damage.includes(damage) ? (fires(each, findings) ?? []) : [],
      );
      return [{ damage, level, reasons: held.map(({ reason }) => reason), against }];
    })
    .sort((a, b) => sureness(b.level) - sureness(a.level) || depth(b.damage) - depth(a.damage));
  const [first] = ranked;
  return {
    cannotTell: first === undefined || first.level === 'possible',
    ranked,
    atLeast: first?.level === 'seen' && deeperOpen(first.damage, findings),
    look: lookAt(findings, first),
    disagree,
  };
}

/** What must be known of everything deeper than a class before it can be called the end of the damage. */
const excludes: Partial<Record<FindingKey, string>> = {
  lowerBarrel: 'sound',
  barrelStands: 'upright',
  ground: 'firm',
  belowGrade: 'no-sign',
  main: 'no-sign',
};

const deeperOpen = (damage: DamageClass, findings: Findings): boolean =>
  Object.entries(excludes).some(
    ([key, sound]) =>
      depthOf[key as FindingKey] > depth(damage) && findings[key as FindingKey]?.value !== sound,
  );

/** The depth of damage that a thing speaks of. */
const depthOf: Readonly<Record<FindingKey, number>> = {
  type: depth('replace-whole'),
  breakawayFlangeParted: depth('breakaway-kit'),
  stemCouplingParted: depth('breakaway-kit'),
  nozzleSection: depth('nozzle-section'),
  lowerBarrel: depth('lower-barrel'),
  mainValve: depth('lower-barrel'),
  checkValve: depth('lower-barrel'),
  stem: depth('lower-barrel'),
  seat: depth('lower-barrel'),
  drain: depth('below-grade'),
  dig: depth('below-grade'),
  barrelStands: depth('below-grade'),
  ground: depth('below-grade'),
  belowGrade: depth('below-grade'),
  main: depth('main'),
  isolationValve: depth('main'),
};

/** From what can be seen at arm's length to what needs the water off; what shows only with the top open is not here. */
const order: readonly FindingKey[] = [
  'type',
  'ground',
  'barrelStands',
  'breakawayFlangeParted',
  'stemCouplingParted',
  'nozzleSection',
  'lowerBarrel',
  'belowGrade',
  'mainValve',
  'checkValve',
  'main',
];

/** What a hydrant of a type does not have; of a type that nobody knows everything is asked. */
function absentIn(type: string | undefined): readonly FindingKey[] {
  switch (type) {
    case 'dry-barrel':
      return ['checkValve'];
    case 'wet-barrel':
      return ['stemCouplingParted', 'mainValve'];
    case 'underground':
    case 'wall':
    case 'standpipe':
      return ['breakawayFlangeParted', 'stemCouplingParted', 'checkValve'];
    default:
      return ['checkValve'];
  }
}

function lookAt(findings: Findings, first: Ranked | undefined): FindingKey[] {
  const absent = absentIn(findings.type?.value);
  return order
    .filter((key) => findings[key] === undefined && !absent.includes(key))
    .filter((key) => {
      if (first?.level !== 'seen') return true;
      // What was seen decides the least of it; only what may go deeper is left to look at.
      return key !== 'type' && depthOf[key] > depth(first.damage);
    });
}
