import type { Locale } from '../../../../shared/words/locales.ts';
import { catalogues, filled, whenMissing } from './catalogues.ts';

type Words = Readonly<Record<string, string>>;
const first: Readonly<Record<Locale, () => Promise<{ readonly words: Words }>>> = {
  en: () => import('./first.en.ts'),
  es: () => import('./first.es.ts'),
};
const whole: Readonly<Record<Locale, () => Promise<Words>>> = {
  en: async () => (await import('../../../../shared/words/en/index.ts')).en,
  es: async () => (await import('../../../../shared/words/es/index.ts')).es,
};

const begun = new Map<string, Promise<boolean>>();

/** Reads a part once; one that could not be had is asked for again the next time. */
function once(name: string, locale: Locale, read: () => Promise<Words>): Promise<boolean> {
  const known = begun.get(name);
  if (known) return known;
  const reading = read()
    .then((words) => {
      Object.assign(catalogues[locale], words);
      filled.set(filled.get() + 1);
      return true;
    })
    .catch(() => {
      begun.delete(name);
      return false;
    });
  begun.set(name, reading);
  return reading;
}

/** The words of the first screens. False when they could not be had. */
export const loadFirstWords = (locale: Locale): Promise<boolean> =>
  once(`first.${locale}`, locale, async () => (await first[locale]()).words);

/** All words of a language. False when they could not be had. */
export const loadAllWords = (locale: Locale): Promise<boolean> =>
  once(`all.${locale}`, locale, whole[locale]);

/** From now on a word that is not here is asked for, and stands empty until it comes. */
export function startWords(localeNow: () => Locale): void {
  whenMissing(() => {
    void loadAllWords(localeNow()).then((had) => {
      if (had) whenMissing(null);
    });
  });
}
