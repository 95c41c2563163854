import type { DamageClass } from '../strikes/damage.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { Judgement } from './judge.ts';

/** What a crew says the damage is, in its own name. */
export interface CrewJudgement {
  readonly damage: DamageClass;
  readonly personId: string;
  readonly at: string;
  readonly submissionId: string;
}

/** The last judgement that a repair's record gives; null while none does. */
export function crewJudgement(facts: readonly Effective[]): CrewJudgement | null {
  const last = ofKind(facts, 'repair')
    .filter(({ fact }) => fact.body.damage !== null)
    .at(-1)?.fact;
  return last?.body.damage
    ? {
        damage: last.body.damage,
        personId: last.person.personId,
        at: last.occurredAt,
        submissionId: last.submissionId,
      }
    : null;
}

/** How a crew's word stands to the rules: the same, another, or there is nothing sure to compare it with. */
export function compared(damage: DamageClass, { cannotTell, ranked }: Judgement): 'same' | 'other' | 'open' {
  if (cannotTell) return 'open';
  return ranked[0]?.damage === damage ? 'same' : 'other';
}
