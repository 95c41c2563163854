import { effectiveFacts, type Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { Recorded } from '../submissions/recorded.ts';

export interface OutageTimes {
  readonly since: string;
  readonly returnedAt: string | null;
}

/** What is recorded from a hydrant's own page and bears on a strike of it: a later look, a valve, an answer on the water. */
const kinds: readonly FactKind[] = ['inspection', 'valve-operation', 'water-quality-answer'];

/** Whether a record of the hydrant's own happened in an outage of it. An answer on the water may come after the return. */
export function bearsOn({ fact }: Effective, { since, returnedAt }: OutageTimes): boolean {
  const at = Date.parse(fact.occurredAt);
  const over = returnedAt !== null && at > Date.parse(returnedAt);
  return (
    kinds.includes(fact.kind) && at >= Date.parse(since) && (!over || fact.kind === 'water-quality-answer')
  );
}

/**
 * Of a hydrant's own records those that bear on one strike of it, with the corrections that led to what stands. What was
 * withdrawn is left out.
 *
 * @param recorded everything in the hydrant's own stream
 */
export function sinceStrike(recorded: readonly Recorded[], outage: OutageTimes): readonly Recorded[] {
  const wanted = new Set(
    effectiveFacts(recorded)
      .facts.filter((item) => bearsOn(item, outage))
      .flatMap(({ fact, corrections }) => [
        fact.submissionId,
        ...corrections.map(({ submission }) => submission.submissionId),
      ]),
  );
  return recorded.filter(({ submission }) => wanted.has(submission.submissionId));
}
