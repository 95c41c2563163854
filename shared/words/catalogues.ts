import type { Locale } from './locales.ts';
import { en } from './en/index.ts';
import { es } from './es/index.ts';

/**
 * Every word of both languages. The apps in the browser have a module of their own in this one's place
 * (`site/src/app/words/catalogues.ts`), which is filled as they need it; see decision 0184.
 */
export const catalogues: Readonly<Record<Locale, Readonly<Record<string, string>>>> = { en, es };

/** What stands for a key that no catalogue has: itself in brackets, seen on screen and in tests, never an empty label. */
export const missing = (key: string): string => `[${key}]`;
