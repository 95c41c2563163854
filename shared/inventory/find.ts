import type { Hydrant } from './hydrant.ts';

const plain = (text: string): string => text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();

/** How well a hydrant answers what was typed; lower is better, null not at all. */
function rank(hydrant: Hydrant, typed: string, words: readonly string[]): number | null {
  const id = plain(hydrant.hydrantId);
  if (id === typed) return 0;
  if (id.startsWith(typed)) return 1;
  if (id.includes(typed)) return 2;
  if (hydrant.place === null) return null;
  const place = plain(hydrant.place);
  return words.every((word) => place.includes(word)) ? 3 : null;
}

/**
 * Hydrants whose number or place holds what was typed, best first: the number itself, numbers that begin with it,
 * numbers that hold it, places that hold all its words. Case and accents make no difference.
 */
export function findHydrants(hydrants: readonly Hydrant[], typed: string, most: number): Hydrant[] {
  const wanted = plain(typed.trim());
  if (wanted === '') return [];
  const words = wanted.split(/\s+/);
  const ranked: { hydrant: Hydrant; rank: number }[] = [];
  for (const hydrant of hydrants) {
    const found = rank(hydrant, wanted, words);
    if (found !== null) ranked.push({ hydrant, rank: found });
  }
  return ranked
    .sort((a, b) => a.rank - b.rank || (a.hydrant.hydrantId < b.hydrant.hydrantId ? -1 : 1))
    .slice(0, most)
    .map(({ hydrant }) => hydrant);
}
