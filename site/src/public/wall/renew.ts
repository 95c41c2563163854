/** The wall's page as the service has it now. */
export interface Wall {
  readonly document: Document;
}

const TIMEOUT_MS = 20_000;

const assets = (page: Document): string =>
  [...page.querySelectorAll('script[src], link[rel="stylesheet"]')]
    .map((element) => element.getAttribute('src') ?? element.getAttribute('href') ?? '')
    .toSorted()
    .join(' ');

/**
 * Asks for this same page. `same`: what came is no newer (a cache on the way still has it). `other-build`: it was made
 * with other scripts or styles, and must be loaded whole.
 *
 * @throws whatever went wrong: no network, no answer in time, an answer that is no wall
 */
export async function askAgain(): Promise<Wall | 'same' | 'other-build'> {
  const response = await fetch(window.location.pathname, {
    cache: 'no-cache',
    credentials: 'omit',
    signal: AbortSignal.timeout(TIMEOUT_MS),
  });
  if (!response.ok) throw new Error(`the wall answers ${response.status}`);
  const page = new DOMParser().parseFromString(await response.text(), 'text/html');
  const { checkedAt, relyUntil } = page.documentElement.dataset;
  if (checkedAt === undefined || relyUntil === undefined || !page.querySelector('[data-renewed="list"]'))
    throw new Error('what came is no wall');
  if (assets(page) !== assets(document)) return 'other-build';
  const here = document.documentElement.dataset['checkedAt'] ?? '';
  return Date.parse(checkedAt) > Date.parse(here) ? { document: page } : 'same';
}

/** Puts the new page's parts in the place of this one's, and its times with them. */
export function adopt({ document: page }: Wall): void {
  for (const part of document.querySelectorAll<HTMLElement>('[data-renewed]')) {
    const next = page.querySelector(`[data-renewed="${part.dataset['renewed'] ?? ''}"]`);
    if (next) part.replaceChildren(...document.adoptNode(next).childNodes);
  }
  const { checkedAt, relyUntil } = page.documentElement.dataset;
  Object.assign(document.documentElement.dataset, { checkedAt, relyUntil });
}
