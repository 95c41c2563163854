import { effectiveFacts } from './effective.ts';
import type { Recorded } from './recorded.ts';
import { streamOfSubmission, type Submission } from './submission.ts';

/** What became of an entry: it stands, a correction replaced it, or a correction withdrew it. */
export type Standing = 'stands' | 'corrected' | 'withdrawn';

export interface HistoryEntry {
  readonly recorded: Recorded;
  readonly standing: Standing;
}

interface Place {
  readonly standing: Standing;
  /** When the entry at the start of the chain happened, as first said, and its id. */
  readonly at: number;
  readonly rootId: string;
}

const nameOf = (submission: Submission): string =>
  `${streamOfSubmission(submission)} ${submission.submissionId}`;

/**
 * Everything that was ever said, in the order it happened, each with what became of it. Nothing is left out: a
 * corrected entry is followed by its correction, also when that moves the time itself. A correction that changes
 * nothing (of another kind than its target, or before its target has arrived) stands by itself.
 */
export function history(recorded: readonly Recorded[]): HistoryEntry[] {
  const first = new Map(recorded.map((item) => [nameOf(item.submission), item]));
  const places = new Map<string, Place>();
  const { facts, withdrawn } = effectiveFacts(recorded);
  for (const { fact, corrections } of [...facts, ...withdrawn]) {
    const root = first.get(nameOf(fact));
    if (root === undefined) continue;
    const at = Date.parse(root.submission.occurredAt);
    [root, ...corrections].forEach((item, index) => {
      const next = corrections[index];
      const standing = !next
        ? 'stands'
        : next.submission.body.replacement === null
          ? 'withdrawn'
          : 'corrected';
      places.set(nameOf(item.submission), { standing, at, rootId: fact.submissionId });
    });
  }
  return recorded
    .map((item) => ({ item, place: places.get(nameOf(item.submission)) ?? alone(item) }))
    .sort((a, b) => a.place.at - b.place.at || inOrder(a.place.rootId, b.place.rootId) || byMaking(a, b))
    .map(({ item, place }) => ({ recorded: item, standing: place.standing }));

  /** Of one chain: the entry itself, then its corrections as they were made. */
  function byMaking(a: { item: Recorded; place: Place }, b: { item: Recorded; place: Place }): number {
    const rank = ({ item, place }: { item: Recorded; place: Place }): string =>
      item.submission.submissionId === place.rootId ? '' : nameOf(item.submission);
    return inOrder(rank(a), rank(b));
  }
}

const alone = ({ submission }: Recorded): Place => ({
  standing: 'stands',
  at: Date.parse(submission.occurredAt),
  rootId: submission.submissionId,
});

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
