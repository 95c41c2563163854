import { problem, type Problem } from '../problems/problem.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import type { LocalDate } from './days.ts';
import type { RateBookEdition } from './rateBook.ts';

export type EditionFound =
  | { readonly edition: RateBookEdition; readonly problem: null }
  | { readonly edition: null; readonly problem: Problem };

/**
 * The edition in force on a day: of those that cover it, the one in force from the latest day. Two different ones from
 * the same day are not chosen between: a bill may not hang on the order in which they were typed.
 */
export function editionOn(date: LocalDate, editions: readonly RateBookEdition[]): EditionFound {
  const covering = editions.filter(
    ({ effectiveFrom, effectiveTo }) =>
      effectiveFrom <= date && (effectiveTo === null || date <= effectiveTo),
  );
  const latest = covering.reduce(
    (from, { effectiveFrom }) => (effectiveFrom > from ? effectiveFrom : from),
    '',
  );
  const candidates = covering.filter(({ effectiveFrom }) => effectiveFrom === latest);
  const [edition] = candidates;
  if (!edition) return { edition: null, problem: problem('no-rate-edition', '', { date }) };
  if (candidates.length > 1 && new Set(candidates.map(canonicalJson)).size > 1)
    return {
      edition: null,
      problem: problem('two-rate-editions', '', {
        date,
        editions: [...new Set(candidates.map(({ editionId }) => editionId))].sort().join(', '),
      }),
    };
  return { edition, problem: null };
}
