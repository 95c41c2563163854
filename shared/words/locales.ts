export const locales = ['en', 'es'] as const;
export type Locale = (typeof locales)[number];

export function isLocale(value: unknown): value is Locale {
  return locales.includes(value as Locale);
}

/**
 * What numbers and times are written by. One country, one way: Spanish as it is written in the United States (1,234.5).
 * The comma and point of Spain in a claim paper would turn 1,234 gallons into one and a bit for whoever reads the
 * English copy.
 */
export const localeTags: Readonly<Record<Locale, string>> = { en: 'en-US', es: 'es-US' };
