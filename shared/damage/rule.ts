import type { DamageClass } from '../strikes/damage.ts';
import type { Finding, FindingKey, Findings, ValueOf } from './finding.ts';

/** How sure an answer is: a sign, nothing worse left open, or the damage itself was seen. */
export const levels = ['possible', 'likely', 'seen'] as const;
export type Level = (typeof levels)[number];

interface Condition {
  readonly key: FindingKey;
  readonly values: readonly string[];
}

export interface DamageRule {
  /** Words: `damage.rule.<id>`. */
  readonly id: string;
  /** Where the rule is from, or that it has no source. */
  readonly source: string;
  readonly conditions: readonly Condition[];
  readonly damage: readonly DamageClass[];
  /** Null: it speaks against its classes. */
  readonly level: Level | null;
}

/** A rule that fired, and the findings that it rests on. */
export interface Reason {
  readonly rule: string;
  readonly findings: readonly Finding[];
}

interface Sentence {
  readonly and: <K extends FindingKey>(key: K, ...values: readonly ValueOf<K>[]) => Sentence;
  readonly pointsTo: (damage: DamageClass) => DamageRule;
  readonly makesLikely: (damage: DamageClass) => DamageRule;
  readonly shows: (damage: DamageClass) => DamageRule;
  readonly speaksAgainst: (...damage: readonly DamageClass[]) => DamageRule;
}

/** Begins a rule: `rule(id, source).when(key, value).and(key, value).pointsTo(damage)`. All its findings must be there. */
export function rule(id: string, source: string): { readonly when: Sentence['and'] } {
  const sentence = (conditions: readonly Condition[]): Sentence => {
    const says = (level: Level | null, damage: readonly DamageClass[]): DamageRule => ({
      id,
      source,
      conditions,
      damage,
      level,
    });
    return {
      and: (key, ...values) => sentence([...conditions, { key, values }]),
      pointsTo: (damage) => says('possible', [damage]),
      makesLikely: (damage) => says('likely', [damage]),
      shows: (damage) => says('seen', [damage]),
      speaksAgainst: (...damage) => says(null, damage),
    };
  };
  return { when: sentence([]).and };
}

/** The reason that a rule gives on these findings; null while one that it asks for is not there. */
export function fires({ id, conditions }: DamageRule, findings: Findings): Reason | null {
  const held: Finding[] = [];
  for (const { key, values } of conditions) {
    const finding = findings[key] as Finding | undefined;
    if (!finding || !values.includes(finding.value)) return null;
    held.push(finding);
  }
  return { rule: id, findings: held };
}
