import type { IncomingMessage, OutgoingHttpHeaders, ServerResponse } from 'node:http';

/** What the local server answers with, before it is sent. */
export interface Answer {
  readonly status: number;
  readonly headers: OutgoingHttpHeaders;
  readonly body: Uint8Array | string;
}

export const answer = (
  status: number,
  headers: OutgoingHttpHeaders = {},
  body: Uint8Array | string = '',
): Answer => ({ status, headers, body });

/** Where a page may take pictures from besides its own host: the source of the map's streets, where one is set. */
const policy = (streets: string | null): string =>
  `default-src 'self'; img-src 'self' data: blob:${streets === null ? '' : ` ${streets}`}; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'`;

/** For a page that may show streets, in the place of the policy of every other answer. */
export const withStreets = (streets: string | null): Readonly<Record<string, string>> =>
  streets === null ? {} : { 'content-security-policy': policy(streets) };

/**
 * On every answer. Pages carry no script and no style inside, so the policy allows none; photos a phone has just
 * taken are shown from memory (`blob:`) before they are sent.
 */
export const securityHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': policy(null),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'strict-origin-when-cross-origin',
  'cross-origin-opener-policy': 'same-origin',
};

/** Sends an answer; a HEAD request gets its headers and no body. */
export function send(
  request: IncomingMessage,
  response: ServerResponse,
  { status, headers, body }: Answer,
): void {
  const bytes = typeof body === 'string' ? Buffer.from(body) : body;
  response.writeHead(status, {
    ...securityHeaders,
    ...headers,
    ...(status === 304 || status === 204 ? {} : { 'content-length': bytes.byteLength }),
  });
  response.end(request.method === 'HEAD' || status === 304 ? undefined : bytes);
}

/** The body grew past what the route takes. */
export class BodyTooLarge extends Error {
  override readonly name = 'BodyTooLarge';
}

/** Reads a body of at most so many bytes. Stops reading, and throws `BodyTooLarge`, at the first byte beyond. */
export async function readBody(request: IncomingMessage, mostBytes: number): Promise<Buffer> {
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) throw new BodyTooLarge();
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) throw new BodyTooLarge();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
