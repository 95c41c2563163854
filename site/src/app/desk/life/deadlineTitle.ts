import { hasWords } from '../../../../../shared/words/index.ts';
import type { Wording } from '../../core/words.ts';

/** A date by its clock. Its id holds the clock first: `limitation`, `answer-by:<submission id>`. */
export function deadlineTitle(id: string, words: Wording): string {
  const key = `clock.${id.split(':')[0] ?? ''}`;
  return hasWords(key) ? words.t(key) : id;
}
