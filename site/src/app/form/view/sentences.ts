import type { Problem } from '../../../../../shared/problems/problem.ts';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { hasWords, sayProblem, type WordParams } from '../../../../../shared/words/index.ts';
import type { Wording } from '../../core/words.ts';
import type { Leaf, List } from '../nodes.ts';

const limits = ['minimum', 'maximum'] as const;

/** Limits of a quantity or an amount, written out in what the reader types. */
function readable(entry: Leaf | List, params: WordParams, words: Wording): WordParams {
  if (entry.type !== 'quantity' && entry.type !== 'money') return params;
  const shown: Record<string, WordParams[string]> = { ...params };
  for (const name of limits) {
    const value = params[name];
    if (typeof value !== 'number') continue;
    shown[name] = entry.type === 'money' ? words.money(value) : formatQuantity(value, entry.unit, words);
  }
  return shown;
}

/** The code of a problem, said for this kind of field: "choose one" rather than "must be text". */
function codeFor(entry: Leaf | List, { code, params }: Problem): string {
  const missing = code === 'required' || code === 'wrong-type';
  switch (entry.type) {
    case 'choice':
    case 'yes-no':
    case 'pick':
      return missing || code === 'not-one-of' || code === 'format-regex' ? 'choose-one' : code;
    case 'outages':
      return missing || code === 'too-few' ? 'choose-at-least-one' : code;
    case 'instant':
      return missing || code === 'format-datetime' ? 'give-a-time' : code;
    case 'date':
      return missing || code === 'format-date' ? 'give-a-day' : code;
    case 'people':
      return missing || code === 'too-few' ? 'give-at-least-one-person' : code;
    case 'hydrant':
      return missing ? 'give-a-hydrant' : code;
    case 'list':
      return missing && params['expected'] === 'array' ? 'too-few' : code;
    default:
      return missing ? 'fill-in' : code;
  }
}

/** A problem as a sentence beside its field. */
export function sentenceFor(
  entry: Leaf | List | null,
  found: Problem,
  words: Wording,
  fieldWords = '',
): string {
  if (!entry) return sayProblem(words.locale, found);
  // A pattern's own sentence says what would be right (`field.….form`).
  if (found.code === 'format-regex' && hasWords(`${fieldWords}.form`)) return words.t(`${fieldWords}.form`);
  return sayProblem(words.locale, {
    code: codeFor(entry, found),
    params: readable(entry, found.params, words),
  });
}
