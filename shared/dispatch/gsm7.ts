/**
 * Text messages. The default alphabet of 3GPP TS 23.038 (GSM 03.38), clause 6.2.1, packs 160 characters into one
 * message; a single sign outside it makes the whole message UCS-2 with 70. So our messages stay inside.
 */

/** The 127 signs of the basic table (its escape code left out), in the table's order. */
const basic =
  '@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !"#¤%&\'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà';
/** Clause 6.2.1.1: these go as the escape code and one more, and count twice. */
const extended = '\f^{}\\[~]|€';

const one = new Set(basic);
const two = new Set(extended);

/** Septets of one message that stands alone, and of each part of one that does not (clause 9.2.3.24 of TS 23.040). */
export const ALONE_SEPTETS = 160;
export const PART_SEPTETS = 153;

/** Typographic signs that have a plain one; everything else loses its accent or becomes `?`. */
const plain: Readonly<Record<string, string>> = {
  '–': '-',
  '—': '-',
  '‐': '-',
  '‑': '-',
  '−': '-',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '«': '"',
  '»': '"',
  '…': '...',
  '·': '-',
  '•': '-',
  '×': 'x',
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '°': 'deg',
  º: 'o',
  ª: 'a',
  ç: 'Ç',
};
/** Spaces of other widths, and signs that nobody sees. */
const blank = /[\p{Zs}\t\u2028\u2029]/gu;
const unseen = /[\p{Cf}\p{Cc}]/gu;

/** The text in signs of the alphabet alone: `Peñón` keeps its `ñ`, and loses the accent that the alphabet lacks. */
export function toGsm7(text: string): string {
  const clean = text
    .normalize('NFC')
    .replaceAll(blank, ' ')
    .replaceAll(unseen, (sign) => (sign === '\n' ? sign : ''));
  return Array.from(clean, inAlphabet).join('');
}

function inAlphabet(sign: string): string {
  if (one.has(sign) || two.has(sign)) return sign;
  const known = plain[sign];
  if (known !== undefined) return known;
  const bare = Array.from(sign.normalize('NFKD'))
    .filter((part) => one.has(part) || two.has(part))
    .join('');
  return bare === '' ? '?' : bare;
}

/** Septets of each sign, or null for a text that has a sign outside the alphabet. */
function septetsOf(text: string): number[] | null {
  const septets: number[] = [];
  for (const sign of text) {
    if (one.has(sign)) septets.push(1);
    else if (two.has(sign)) septets.push(2);
    else return null;
  }
  return septets;
}

/**
 * How many messages a text takes.
 *
 * @throws RangeError for a text with a sign outside the alphabet; `toGsm7` has none
 */
export function segmentsOf(text: string): number {
  const septets = septetsOf(text);
  if (septets === null) throw new RangeError('a sign outside the GSM alphabet');
  if (septets.reduce((sum, of) => sum + of, 0) <= ALONE_SEPTETS) return 1;
  // An escape code and its sign stand in one part.
  let parts = 1;
  let used = 0;
  for (const of of septets) {
    if (used + of > PART_SEPTETS) {
      parts += 1;
      used = 0;
    }
    used += of;
  }
  return parts;
}
