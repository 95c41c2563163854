import { IntlMessageFormat } from 'intl-messageformat';
import { catalogues, missing } from './catalogues.ts';
import type { en } from './en/index.ts';
import { localeTags, type Locale } from './locales.ts';

export { isLocale, locales, type Locale } from './locales.ts';
/** Every key of the catalogue. The English catalogue is the list; the Spanish one must have the same keys to compile. */
export type WordKey = keyof typeof en;

const compiled = new Map<string, IntlMessageFormat>();

export type WordParams = Record<string, string | number | boolean | null | undefined>;

/**
 * The words for a key (ICU MessageFormat, so plurals and choices live in the catalogue). A key that is not in the
 * catalogue comes back as itself in brackets: seen on screen and in tests, never an empty label.
 */
export function say(locale: Locale, key: WordKey | (string & {}), params: WordParams = {}): string {
  const text = textOf(locale, key);
  if (text === undefined) return missing(key);
  const cacheKey = `${locale}\u0000${text}`;
  let format = compiled.get(cacheKey);
  if (!format) {
    format = new IntlMessageFormat(text, localeTags[locale]);
    compiled.set(cacheKey, format);
  }
  return String(format.format(params));
}

/** In the language asked for, else in the one that is there: an app may not have read both yet. */
const textOf = (locale: Locale, key: string): string | undefined =>
  catalogues[locale][key] ?? catalogues.en[key] ?? catalogues.es[key];

/**
 * The words for a key as the catalogue has them, with nothing filled in: for text with merge fields, which a person may
 * edit before they are.
 */
export const wordsAsWritten = (locale: Locale, key: WordKey): string => textOf(locale, key) ?? missing(key);

export function hasWords(key: string): key is WordKey {
  return key in catalogues.en || key in catalogues.es;
}

/** The sentence for a problem, in the user's language. */
export function sayProblem(locale: Locale, problem: { code: string; params: WordParams }): string {
  const key = `problem.${problem.code}`;
  return hasWords(key) ? say(locale, key, problem.params) : say(locale, 'problem.not-valid', {});
}
