import { isPdf } from './ends.ts';

/** What a file that somebody hands in seems to be, by its bytes and not by its name. */
export type HandedKind = 'pdf' | 'archive' | 'signature' | 'keys' | 'unknown';

const MOST_TEXT_BYTES = 1_000_000;

export function kindOf(bytes: Uint8Array): HandedKind {
  const latin1 = new TextDecoder('latin1');
  const head = latin1.decode(bytes.subarray(0, 4));
  if (isPdf(bytes)) return 'pdf';
  // Local file head, or the end of an archive that holds nothing.
  if (head.startsWith('PK\u0003\u0004') || head.startsWith('PK\u0005\u0006')) return 'archive';
  if (bytes.length > MOST_TEXT_BYTES) return 'unknown';
  const text = latin1.decode(bytes).trim();
  if (/^[\w-]+\.[\w-]+\.[\w-]+$/.test(text)) return 'signature';
  try {
    const value: unknown = JSON.parse(text);
    const isKeys = typeof value === 'object' && value !== null && ('keys' in value || 'kty' in value);
    return isKeys ? 'keys' : 'unknown';
  } catch {
    return 'unknown';
  }
}
