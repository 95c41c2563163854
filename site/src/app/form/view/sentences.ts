import type { Problem } from '../../../../../shared/problems/problem.ts';
import { sayDiffuserConstant } from '../../../../../shared/hydraulics/diffuser.ts';
import { convert } from '../../../../../shared/units/convert.ts';
import { displays, formatNumber, formatQuantity } from '../../../../../shared/units/format.ts';
import type { UnitId } from '../../../../../shared/units/units.ts';
import { hasWords, sayProblem, type WordParams } from '../../../../../shared/words/index.ts';
import type { Wording } from '../../core/words.ts';
import type { Leaf, List } from '../nodes.ts';

const limits = ['minimum', 'maximum'] as const;

/** A limit in the reader's unit, rounded inward, so that whoever types the limit as it is shown is within it. */
function sayLimit(which: (typeof limits)[number], value: number, unit: UnitId, words: Wording): string {
  const shown = displays[unit][words.system];
  const step = 10 ** shown.decimals;
  const steps = Number((convert(value, unit, shown.unit) * step).toPrecision(12));
  return formatQuantity(
    (which === 'minimum' ? Math.ceil(steps) : Math.floor(steps)) / step,
    shown.unit,
    words,
  );
}

/** Limits of a quantity, an amount or a share, written out in what the reader types. */
function readable(entry: Leaf | List, params: WordParams, words: Wording): WordParams {
  const written = (which: (typeof limits)[number], value: number): string | number => {
    switch (entry.type) {
      case 'quantity':
        return sayLimit(which, value, entry.unit, words);
      case 'money':
        return words.money(value);
      case 'diffuser-constant':
        return sayDiffuserConstant(value, words);
      case 'number':
        return entry.percent ? `${formatNumber(value * 100, words.locale, 4)}%` : value;
      default:
        return value;
    }
  };
  const shown: Record<string, WordParams[string]> = { ...params };
  for (const name of limits) {
    const value = params[name];
    if (typeof value !== 'number') continue;
    shown[name] = written(name, value);
  }
  return shown;
}

/** The code of a problem, said for this kind of field: "choose one" rather than "must be text". */
function codeFor(entry: Leaf | List, { code, params }: Problem): string {
  const missing = code === 'required' || code === 'wrong-type';
  switch (entry.type) {
    case 'coefficient':
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
  // What is missing may have a reason of its own, such as a stretch of work that still runs.
  if (codeFor(entry, found) === 'give-a-time' && hasWords(`${fieldWords}.missing`))
    return words.t(`${fieldWords}.missing`);
  return sayProblem(words.locale, {
    code: codeFor(entry, found),
    params: readable(entry, found.params, words),
  });
}
