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
