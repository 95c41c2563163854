import { finding, type Finding } from '../finding.ts';

/**
 * Whether the bytes begin as a PDF does (ISO 32000-2, 7.5.2). Readers look for that anywhere in the first 1,024 bytes;
 * a packet begins with it, and an archive that bears a paper there is none.
 */
export const isPdf = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, 64)).trimStart().startsWith('%PDF-');

/** Whether its trailer names a way of encryption (ISO 32000-2, 7.6.2), be the password empty or not. */
export const isEncrypted = (bytes: Uint8Array): boolean =>
  /\/Encrypt\s+\d+\s+\d+\s+R\b/.test(new TextDecoder('latin1').decode(bytes));

/** Where a file says that it ends (ISO 32000-2, 7.5.5). A changed file may bear its changes after the first end. */
const END = /startxref\s+\d+\s+%%EOF/g;

/**
 * What the end of a file tells: that it has none (it was cut short), or that something was added after it (an
 * incremental update, ISO 32000-2, 7.5.6, or bytes of no meaning). A packet is written once and ends once.
 */
export function endFindings(bytes: Uint8Array): Finding[] {
  const text = new TextDecoder('latin1').decode(bytes);
  const ends = [...text.matchAll(END)].map((match) => match.index + match[0].length);
  const [first] = ends;
  const last = ends.at(-1);
  if (first === undefined || last === undefined) return [finding('cut-short', '', { bytes: bytes.length })];
  if (ends.length > 1)
    return [finding('appended', '', { at: first, bytes: bytes.length - first, times: ends.length - 1 })];
  const rest = text.slice(last).trim().length;
  return rest > 0 ? [finding('bytes-after-end', '', { at: last, bytes: rest })] : [];
}
