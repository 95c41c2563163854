import type { PacketContent } from '../../packet/schema.ts';
import { WORDING_NAME } from '../../packet/wording.ts';
import type { EmbeddedFile } from '../file/attachments.ts';
import { plain } from './plain.ts';

/** The words that a file carries, and what of its data no wording may change. */
export interface Wording {
  /** Whether the file itself words it so, with the figures and facts that this edition words otherwise. */
  excuses(own: string, printed: string): boolean;
}

/** Numbers with their signs and units, in order. */
const figures = (text: string): string =>
  (text.match(/[-\u2212]?[$]?\d[\d.,:]*\s*(?:%|\u00b0|(?:ft|m|in|mm|psi|kPa|gpm|gal|L|h|min)\b)?/g) ?? [])
    .map((figure) => figure.replace(/\s/g, '').replace(/[.,:]+$/, ''))
    .join(' ');

/** Names, captions and other words that somebody recorded; codes of the program are words of ours. */
function recordedIn(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'string') {
    const text = plain(value);
    if (text.length > 2 && !/^[a-z][a-z0-9-]*$/.test(value)) found.add(text);
  } else if (typeof value === 'object' && value !== null)
    for (const inside of Object.values(value)) recordedIn(inside, found);
  return found;
}

/**
 * Another edition of this program words things otherwise. A text that the file carries among its own words, with the
 * same figures and the same recorded names as ours, is the same statement. A file without its words is excused nothing.
 */
export function wordingFrom(content: PacketContent, files: readonly EmbeddedFile[]): Wording {
  const file = files.find(({ name }) => name === WORDING_NAME);
  const told = file ? readTexts(file.bytes) : '';
  const facts = [...recordedIn(content)];
  const named = (text: string): string => facts.filter((fact) => text.includes(fact)).join(' ');
  return {
    excuses(own, printed) {
      const [a, b] = [plain(own), plain(printed)];
      return told !== '' && told.includes(b) && figures(own) === figures(printed) && named(a) === named(b);
    },
  };
}

function readTexts(bytes: Uint8Array): string {
  try {
    const texts: unknown = JSON.parse(new TextDecoder().decode(bytes));
    return Array.isArray(texts) ? texts.map((text) => plain(String(text))).join('') : '';
  } catch {
    return '';
  }
}
