import type { IncomingMessage } from 'node:http';
import type { APIGatewayProxyEventV2 } from 'aws-lambda';

export interface Asked {
  /** API Gateway's name of the matched route: `GET /api/strikes/{strikeId}`. */
  readonly routeKey: string;
  readonly pathParameters: Readonly<Record<string, string>>;
  readonly body: Buffer;
  readonly now: Date;
}

/** A request as API Gateway's HTTP API hands it to Lambda (payload format version 2.0). */
export function eventOf(
  request: IncomingMessage,
  { routeKey, pathParameters, body, now }: Asked,
): APIGatewayProxyEventV2 {
  const [rawPath = '/', rawQueryString = ''] = splitOnce(request.url ?? '/', '?');
  const { cookie, ...headers } = Object.fromEntries(
    Object.entries(request.headers).map(([name, value]) => [
      name,
      Array.isArray(value) ? value.join(',') : value,
    ]),
  );
  const query = new URLSearchParams(rawQueryString);
  const text = textOf(body, request.headers['content-type']);
  return {
    version: '2.0',
    routeKey,
    rawPath,
    rawQueryString,
    ...(cookie === undefined ? {} : { cookies: cookie.split('; ') }),
    headers,
    ...(query.size > 0
      ? {
          queryStringParameters: Object.fromEntries(
            [...new Set(query.keys())].map((name) => [name, query.getAll(name).join(',')]),
          ),
        }
      : {}),
    ...(Object.keys(pathParameters).length > 0 ? { pathParameters: { ...pathParameters } } : {}),
    requestContext: {
      accountId: 'local',
      apiId: 'local',
      domainName: request.headers.host ?? 'localhost',
      domainPrefix: 'local',
      http: {
        method: request.method ?? 'GET',
        path: rawPath,
        protocol: `HTTP/${request.httpVersion}`,
        sourceIp: request.socket.remoteAddress ?? '',
        userAgent: request.headers['user-agent'] ?? '',
      },
      requestId: crypto.randomUUID(),
      routeKey,
      stage: '$default',
      time: now.toUTCString(),
      timeEpoch: now.getTime(),
    },
    ...(body.length === 0 ? {} : { body: text ?? body.toString('base64') }),
    isBase64Encoded: body.length > 0 && text === null,
  };
}

/** Text bodies travel as text when they are text; anything else, and text that is not UTF-8, as base64. */
function textOf(body: Buffer, contentType: string | undefined): string | null {
  if (!/^(text\/|application\/(json|[\w.+-]+\+json|x-www-form-urlencoded))/i.test(contentType ?? ''))
    return null;
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(body);
  } catch {
    return null;
  }
}

function splitOnce(text: string, mark: string): readonly string[] {
  const at = text.indexOf(mark);
  return at === -1 ? [text] : [text.slice(0, at), text.slice(at + 1)];
}
