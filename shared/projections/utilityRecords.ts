import { effectiveFacts, ofKind } from '../submissions/effective.ts';
import type { Recorded } from '../submissions/recorded.ts';
import type { BodyOf } from '../submissions/submission.ts';
import { withoutTrials } from '../submissions/trials.ts';

/** What the utility's own stream says stands: rates, hydrant models, the inventory in force. */
export interface UtilityRecords {
  /** By edition. Two facts of one edition id: the earlier stands, because a later edition never edits an earlier one. */
  readonly rateBooks: ReadonlyMap<string, BodyOf<'rate-book'>>;
  /** By model. The latest record of a model stands. */
  readonly models: ReadonlyMap<string, BodyOf<'hydrant-model'>>;
  /** The inventory loaded last; null before the first. */
  readonly inventory: BodyOf<'inventory-loaded'> | null;
}

export function foldUtility(recorded: readonly Recorded[]): UtilityRecords {
  const { facts } = effectiveFacts(
    withoutTrials(recorded).filter(({ submission }) => submission.subject.type === 'utility'),
  );
  const rateBooks = new Map<string, BodyOf<'rate-book'>>();
  for (const { fact } of ofKind(facts, 'rate-book'))
    if (!rateBooks.has(fact.body.editionId)) rateBooks.set(fact.body.editionId, fact.body);
  const loads = ofKind(facts, 'inventory-loaded').sort(
    (a, b) => Date.parse(a.fact.body.loadedAt) - Date.parse(b.fact.body.loadedAt),
  );
  return {
    rateBooks,
    models: new Map(ofKind(facts, 'hydrant-model').map(({ fact }) => [fact.body.modelId, fact.body])),
    inventory: loads.at(-1)?.fact.body ?? null,
  };
}
