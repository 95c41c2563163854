import { locales, type Locale } from '../../shared/words/index.ts';

/**
 * The language of an answer: the first of ours that `Accept-Language` names (RFC 9110 §12.5.4; `es-MX` means `es`),
 * by weight and then by order; else the utility's.
 */
export function localeOf(acceptLanguage: string | undefined, fallback: Locale): Locale {
  const wanted = (acceptLanguage ?? '')
    .slice(0, 500)
    .split(',')
    .map((part, index) => {
      const [range = '', ...parameters] = part.trim().toLowerCase().split(';');
      const weight = parameters
        .map((text) => /^\s*q=([01](?:\.\d{0,3})?)\s*$/.exec(text)?.[1])
        .find((text) => text !== undefined);
      return {
        language: range.trim().split('-')[0] ?? '',
        weight: weight === undefined ? 1 : Number(weight),
        index,
      };
    })
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight || a.index - b.index);
  for (const { language } of wanted) {
    const found = locales.find((locale) => locale === language);
    if (found !== undefined) return found;
    if (language === '*') return fallback;
  }
  return fallback;
}
