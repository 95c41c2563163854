import type { IncomingMessage, OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { contentPolicy, pageHeaders } from '../../shared/deployment/pageHeaders.ts';

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

/** For a page that may show streets, in the place of the policy of every other answer. */
export const withStreets = (streets: string | null): Readonly<Record<string, string>> =>
  streets === null ? {} : { 'content-security-policy': contentPolicy({ streets }) };

/** On every answer, the same as in a deployment (`infra/aws/service/securityHeaders.ts`). */
export const securityHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy(),
  ...pageHeaders,
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
