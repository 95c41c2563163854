import { hydrantOfFile } from '../public/address.ts';
import { newHydrantId } from './hydrant.ts';

/** Longer texts are no tag: a Data Matrix holds up to 2,335 letters (ISO/IEC 16022), a number has at most 64. */
const MOST_LETTERS = 2_335;

/**
 * What a scanned code says: the text itself, or the last part of an address that ends in it
 * (`https://water.example/hydrants/H-0042`, `…/crew/#/hydrant/H-0042?from=tag`, `…?id=H-0042`). The address is only
 * read; nothing here or after it may be opened because a code says so: anybody can put a sticker on a tag.
 *
 * Codes of parts follow the same rule. Null for a text that is blank, too long or holds signs that nobody sees.
 */
export function numberInCode(text: string): string | null {
  if (text.length > MOST_LETTERS) return null;
  // Some readers put the kind of code in front (ISO/IEC 15424: `]C1` for Code 128, `]Q3`, `]d2`).
  const plain = text.replace(/^\][A-Za-z]\w/, '').trim();
  const found = /^[a-z][a-z\d+.-]*:\/\//i.test(plain) ? endOfAddress(plain) : plain;
  return found === null || found === '' || found.length > 64 || /[\p{Cc}\p{Cf}\u2028\u2029]/u.test(found)
    ? null
    : found;
}

/** The number of the hydrant on its tag, spelt as the inventory spells it; null where the code holds none. */
export function hydrantOnTag(text: string): string | null {
  const number = numberInCode(text);
  const read = number === null ? null : newHydrantId.safeParse(number);
  return read?.success ? read.data : null;
}

function endOfAddress(address: string): string | null {
  try {
    const { pathname, hash, searchParams, search } = new URL(address);
    // Behind the `#` stands the place inside this project's own app; its own query is left off.
    const inside = hash.startsWith('#/') ? (hash.slice(1).split('?')[0] ?? '') : '';
    const path = lastPart(inside) ?? lastPart(pathname);
    const values = [...searchParams.values()];
    // `?id=H-0042` at the very end names it; a mark such as `?from=tag` behind a path does not.
    const named = search !== '' && lastPart(pathname) === null ? values.at(-1) : undefined;
    const byName = ['hydrant', 'number', 'id']
      .map((name) => searchParams.get(name))
      .find((each) => each !== null);
    const found = byName ?? named ?? decodeURIComponent(path ?? '');
    // This project's own public page of a hydrant spells its number as a file name.
    return /\/hydrants\/[^/]+\/?$/.test(pathname) ? (hydrantOfFile(found) ?? found) : found;
  } catch {
    return null;
  }
}

const lastPart = (path: string): string | null => path.split('/').findLast((part) => part !== '') ?? null;
