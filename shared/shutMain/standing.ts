import type { ValveTurn } from '../outages/returnEffect.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';

/** One closing of a valve that shut a main. */
export interface ShutMain {
  /** The record of the closing. */
  readonly submissionId: string;
  readonly valveId: string;
  readonly at: string;
  /** When that valve is recorded as open again; null while it is not. */
  readonly reopenedAt: string | null;
  /** Somebody said how many customers are without water, or who they are. */
  readonly customersListed: boolean;
  readonly under20Psi: 'yes' | 'no' | 'unknown';
  /** False for a record of before these questions were asked. */
  readonly asked: boolean;
}

export interface ShutMainStanding {
  readonly closings: readonly ShutMain[];
  /** Closings after which nobody has finally said whether a water-quality notice is needed. */
  readonly unanswered: readonly string[];
}

const minuteOf = (at: string): number => Math.floor(Date.parse(at) / 60_000);

/**
 * The mains that were shut, and what is still to be said of them. The question of a notice stands unless pressure is
 * known not to have fallen: not known keeps it open. An answer that waits for samples does not close it, and one from
 * before a closing does not answer for it.
 *
 * @param turns every turn of a valve that is recorded, as `valveTurns` gives them
 */
export function shutMainStanding(
  facts: readonly Effective[],
  turns: readonly ValveTurn[],
): ShutMainStanding | null {
  const closings = ofKind(facts, 'valve-operation').flatMap(({ fact }): ShutMain[] => {
    const { action, valve, valveId, at, mainShut } = fact.body;
    if (action !== 'closed' || (valve !== 'main-line' && !mainShut)) return [];
    const reopened = turns
      .filter((turn) => !turn.closed && turn.valveId === valveId && Date.parse(turn.at) >= Date.parse(at))
      .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
    return [
      {
        submissionId: fact.submissionId,
        valveId,
        at,
        reopenedAt: reopened[0]?.at ?? null,
        // Not the addresses themselves: they are kept apart, and may be erased.
        customersListed: !!mainShut && (mainShut.customers !== null || (mainShut.addressLines ?? 0) > 0),
        under20Psi: mainShut?.under20Psi ?? 'unknown',
        asked: mainShut !== undefined,
      },
    ];
  });
  if (closings.length === 0) return null;
  const answers = ofKind(facts, 'water-quality-answer').filter(
    ({ fact }) => fact.body.decision !== 'samples-first',
  );
  return {
    closings,
    unanswered: closings
      .filter(({ under20Psi }) => under20Psi !== 'no')
      .filter(({ at }) => !answers.some(({ fact }) => minuteOf(fact.body.answeredAt) >= minuteOf(at)))
      .map(({ submissionId }) => submissionId),
  };
}
