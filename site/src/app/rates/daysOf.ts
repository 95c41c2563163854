import type { RateBookEdition } from '../../../../shared/costs/rateBook.ts';
import type { Wording } from '../core/words.ts';

/** The days of an edition, in words. */
export function daysOf({ effectiveFrom, effectiveTo }: RateBookEdition, words: Wording): string {
  return effectiveTo === null
    ? words.t('rates.from', { from: words.day(effectiveFrom) })
    : words.t('rates.from-to', { from: words.day(effectiveFrom), to: words.day(effectiveTo) });
}
