import type { Leaf, List } from './nodes.ts';

/** The catalogue key of a field: its own words, or `field.<kind>.<path>` with the rows left out. */
export function wordsOf(kind: string, entry: Leaf | List, path: string): string {
  if (entry.words !== undefined) return entry.words;
  const named = path
    .split('.')
    .filter((part) => !/^\d+$/.test(part))
    .join('.');
  return `field.${kind}.${named}`;
}

export const valueWords = (list: string, choice: string): string => `value.${list}.${choice}`;
