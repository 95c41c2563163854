import { constants, brotliCompressSync, gzipSync } from 'node:zlib';
import type { IncomingMessage } from 'node:http';

/** Text; pictures and fonts are packed already. */
const textual = /^(?:text\/|image\/svg|application\/(?:[\w.+-]*(?:json|xml)|wasm))/;
/** What CloudFront compresses: nothing smaller than this. */
const LEAST_BYTES = 1000;
/** Assets are asked for again by each new device; a built site has some hundred of them. */
const MOST_KEPT = 1000;
const kept = new Map<string, Uint8Array>();

const packers = {
  br: (bytes: Uint8Array) =>
    brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }) as Uint8Array,
  gzip: (bytes: Uint8Array) => gzipSync(bytes) as Uint8Array,
} as const;

/** What of ours the caller takes, as it says (RFC 9110, section 12.5.3); null for neither. */
function encodingFor(request: IncomingMessage): keyof typeof packers | null {
  const taken = (request.headers['accept-encoding'] ?? '')
    .toLowerCase()
    .split(',')
    .map((part) => part.trim())
    .filter((part) => !/;\s*q=0(?:\.0*)?$/.test(part))
    .map((part) => part.split(';')[0]);
  return taken.includes('br') ? 'br' : taken.includes('gzip') ? 'gzip' : null;
}

/**
 * The body as it travels, compressed as the content delivery network does it, so that a phone tried on this server
 * waits no longer than it would there. `etag` names the bytes.
 */
export function compressed(
  request: IncomingMessage,
  { bytes, contentType, etag }: { bytes: Uint8Array; contentType: string; etag: string },
): { readonly body: Uint8Array; readonly headers: Readonly<Record<string, string>> } {
  if (!textual.test(contentType) || bytes.length < LEAST_BYTES) return { body: bytes, headers: {} };
  // Whoever keeps the answer must not give it to somebody who takes another.
  const vary = { vary: 'accept-encoding' };
  const encoding = encodingFor(request);
  if (encoding === null) return { body: bytes, headers: vary };
  const name = `${encoding} ${etag}`;
  const body = kept.get(name) ?? packers[encoding](bytes);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(name, body);
  // Other bytes than the tag was made of: the same page, and so a weak tag (RFC 9110, section 8.8.3.3).
  return { body, headers: { ...vary, 'content-encoding': encoding, etag: `W/${etag}` } };
}
