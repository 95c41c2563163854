import { correctionKind } from './kinds.ts';
import type { Recorded } from './recorded.ts';
import type { Correction } from './submission.ts';

/** What became of an entry: it stands, a correction replaced it, or a correction withdrew it. */
export type Standing = 'stands' | 'corrected' | 'withdrawn';

export interface HistoryEntry {
  readonly recorded: Recorded;
  readonly standing: Standing;
}

const isCorrection = (recorded: Recorded): recorded is Recorded<Correction> =>
  recorded.submission.kind === correctionKind;
const kindOf = ({ submission }: Recorded): string =>
  submission.kind === correctionKind ? submission.body.targetKind : submission.kind;

/**
 * Everything that was ever said, in the order it happened, each with what became of it. Nothing is left out: a
 * corrected entry is followed by its correction. A correction of another kind than its target changes nothing.
 */
export function history(recorded: readonly Recorded[]): HistoryEntry[] {
  const byId = new Map(recorded.map((item) => [item.submission.submissionId, item]));
  const correctionOf = new Map<string, Recorded<Correction>>();
  for (const item of recorded) if (isCorrection(item)) correctionOf.set(item.submission.body.targetId, item);

  const standingOf = (item: Recorded): Standing => {
    const body = correctionOf.get(item.submission.submissionId)?.submission.body;
    if (!body || body.targetKind !== kindOf(item)) return 'stands';
    return body.replacement === null ? 'withdrawn' : 'corrected';
  };
  // A correction stands after what it corrects, even when it moves the time itself; its id says when it was made.
  const orderOf = (item: Recorded): string => {
    let root = item;
    for (let steps = 0; isCorrection(root) && steps < recorded.length; steps += 1) {
      const target = byId.get(root.submission.body.targetId);
      if (!target) break;
      root = target;
    }
    return `${root.submission.occurredAt} ${root.submission.submissionId} ${item === root ? '' : item.submission.submissionId}`;
  };
  return recorded
    .map((item) => ({ entry: { recorded: item, standing: standingOf(item) }, order: orderOf(item) }))
    .sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
    .map(({ entry }) => entry);
}
