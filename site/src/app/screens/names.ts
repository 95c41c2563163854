import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import { formOf } from '../../../../shared/submissions/submission.ts';
import { nameOf } from '../core/people.ts';
import { useStatement } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { deadlineTitle } from '../desk/life/deadlineTitle.ts';
import { lineTitle } from '../desk/lineWords.ts';
import type { Names } from '../form/describe.ts';

/** What a record's ids stand for, as far as this screen knows: colleagues, events of the claim, lines, dates. */
export function useNames(
  history: readonly HistoryEntry[],
  from: readonly string[],
  days: ReadonlyMap<string, string> | undefined,
): Names {
  const words = useWords();
  const statement = useStatement(from[0] === 'claim' ? (from[1] ?? null) : null);
  return (leaf, id) => {
    if (leaf.type === 'person') return nameOf(id);
    if (leaf.type !== 'pick') return null;
    switch (leaf.of) {
      case 'event': {
        const found = history.find(({ recorded }) => recorded.submission.submissionId === id);
        if (!found) return null;
        const day = days?.get(id);
        const { submission } = found.recorded;
        return `${words.t(`kind.${formOf(submission).kind}`)}, ${day === undefined ? words.when(submission.occurredAt) : words.day(day)}`;
      }
      case 'line': {
        const line = statement.value?.lines.find(({ lineId }) => lineId === id);
        return line ? lineTitle(line, words) : null;
      }
      case 'deadline':
        return deadlineTitle(id, words);
      default:
        return null;
    }
  };
}
