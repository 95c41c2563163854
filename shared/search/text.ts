/** How texts are compared when a case is looked up. */

/** Letters and digits only, upper case: plates are written with spaces, dots and hyphens as anybody likes. */
export const plateKey = (plate: string): string =>
  plate
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** The least of a plate that is looked for: fewer signs would match half the town. */
const LEAST_PLATE = 3;
/** The most signs of a plate of letters alone: a longer word is none (states print seven or eight; from memory). */
const MOST_LETTERS = 8;

/** Whether what was typed may be a plate, or part of one. */
export function mayBePlate(find: string): boolean {
  const wanted = plateKey(find);
  return wanted.length >= LEAST_PLATE && (/\d/.test(wanted) || wanted.length <= MOST_LETTERS);
}

/**
 * Whether a plate answers what was typed. Part of a plate will do, since a witness rarely has all of it; letters alone
 * must be the whole, or a word of any street would find plates.
 */
export function plateMatches(plate: string | null, find: string): boolean {
  if (plate === null || !mayBePlate(find)) return false;
  const [key, wanted] = [plateKey(plate), plateKey(find)];
  return /\d/.test(wanted) ? key.includes(wanted) : key === wanted;
}

/** Upper case, without accents, one space between words. */
export const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toUpperCase().replace(/\s+/g, ' ').trim();
