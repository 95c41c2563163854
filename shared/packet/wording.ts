import type { Block } from './blocks.ts';

/** Names of a block that hold no words. */
const noWords = new Set(['type', 'sha256', 'look', 'align', 'role']);

/** Every text of a packet as this edition of the program worded it, to be kept in the file. */
export function wordingOf(blocks: readonly Block[]): string[] {
  const texts: string[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === 'string') texts.push(value);
    else if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === 'object' && value !== null)
      for (const [name, inside] of Object.entries(value)) if (!noWords.has(name)) walk(inside);
  };
  walk(blocks);
  return texts;
}

/** The attachment that holds them. */
export const WORDING_NAME = 'words.json';
