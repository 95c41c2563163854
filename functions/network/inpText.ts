/**
 * The text of an EPANET file. The format names no encoding: UTF-8 where the bytes are that, else the Western code page
 * that its Windows programs write.
 */
export function inpText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
