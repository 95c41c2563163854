import { sayProblem } from '../../../../shared/words/index.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { Answer } from '../core/api.ts';
import type { Wording } from '../core/words.ts';

/**
 * Why a request brought nothing, a sentence each. A fault is never shown as an empty result. `sayOne` says a problem in
 * its own way, where quantities are the reader's.
 */
export function sayFailed(
  answer: Exclude<Answer<never>, { outcome: 'ok' }>,
  words: Wording,
  sayOne: (found: Problem) => string = (found) => sayProblem(words.locale, found),
): readonly string[] {
  switch (answer.outcome) {
    case 'refused':
      return answer.problems.length > 0
        ? answer.problems.map(sayOne)
        : [answer.title || words.t('screen.failed.refused')];
    case 'sign-in':
      return [words.t('screen.failed.sign-in')];
    case 'unreachable':
      return [words.t(`screen.failed.${answer.reason}`)];
  }
}
