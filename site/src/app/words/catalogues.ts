import type { Locale } from '../../../../shared/words/locales.ts';
import { observable } from '../core/observable.ts';

/**
 * Stands in the place of `shared/words/catalogues.ts` in the browser's build (`astro.config.ts`): a phone carries the
 * language it shows, and first what its first screens say. `load.ts` fills it.
 */
export const catalogues: Record<Locale, Record<string, string>> = { en: {}, es: {} };

/** Counts what has been filled in; screens follow it. */
export const filled = observable(0);

const rest: { ask: (() => void) | null } = { ask: null };
/** Called once, when a word is wanted that is not here yet. */
export const whenMissing = (ask: (() => void) | null): void => {
  rest.ask = ask;
};

/** Nothing while the rest is on its way, which is asked for now; then, as everywhere, the key in brackets. */
export function missing(key: string): string {
  if (rest.ask === null) return `[${key}]`;
  rest.ask();
  return '';
}
