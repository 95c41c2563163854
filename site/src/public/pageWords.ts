import { isLocale, type Locale } from '../../../shared/words/locales.ts';

export type Say = (name: string, params?: Readonly<Record<string, string | number>>) => string;

/**
 * What a page's script says. The words stand in a template of the page, written by whoever made it, so that the
 * catalogue and its reader of messages need not travel: `{name}` in them is filled in here.
 */
export function pageWords(template: HTMLTemplateElement): Say {
  const texts = new Map(
    [...template.content.querySelectorAll<HTMLElement>('[data-word]')].map((element) => [
      element.dataset['word'],
      element.textContent,
    ]),
  );
  return (name, params = {}) => {
    const text = texts.get(name);
    if (text === undefined) throw new Error(`the page has no word ${name}`);
    return text.replaceAll(/\{(\w+)\}/g, (whole, key: string) => String(params[key] ?? whole));
  };
}

/** Parameters that are left in braces for the page's script to fill in. */
export const leftOpen = (...names: readonly string[]): Record<string, string> =>
  Object.fromEntries(names.map((name) => [name, `{${name}}`]));

/** The language that the page is written in. */
export function pageLocale(): Locale {
  const { lang } = document.documentElement;
  return isLocale(lang) ? lang : 'en';
}
