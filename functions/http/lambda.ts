import type { APIGatewayProxyEventV2, APIGatewayProxyStructuredResultV2 } from 'aws-lambda';
import { wordless } from '../log/wordless.ts';

export type HttpHandler = (event: APIGatewayProxyEventV2) => Promise<APIGatewayProxyStructuredResultV2>;

/** What a handler needs of an app: hono's `fetch`. */
interface Fetches {
  fetch(request: Request): Response | Promise<Response>;
}

/**
 * A Lambda handler for API Gateway's HTTP API events (payload version 2.0). The app is made on the first event, so
 * that importing a handler has no effect, and kept for the life of the process. An app that cannot be made (a missing
 * variable) fails the event and is tried again on the next.
 */
export function lambdaHandler(makeApp: () => Fetches | Promise<Fetches>): HttpHandler {
  let making: Promise<Fetches> | undefined;
  return wordless(async (event) => {
    making ??= Promise.resolve().then(makeApp);
    const app = await making.catch((error: unknown) => {
      making = undefined;
      throw error;
    });
    return resultOf(await app.fetch(requestOf(event)));
  });
}

/** The event as a web request. The host is a stand-in: nothing here depends on how the caller reached us. */
export function requestOf(event: APIGatewayProxyEventV2): Request {
  const { method } = event.requestContext.http;
  const query = event.rawQueryString === '' ? '' : `?${event.rawQueryString}`;
  const headers = new Headers();
  for (const [name, value] of Object.entries(event.headers))
    if (value !== undefined) headers.set(name, value);
  const body =
    event.body === undefined ? undefined : Buffer.from(event.body, event.isBase64Encoded ? 'base64' : 'utf8');
  // A web request cannot carry a body on GET or HEAD; a caller's stray one is left behind.
  const carried = body !== undefined && method !== 'GET' && method !== 'HEAD' ? { body } : {};
  return new Request(`https://api.invalid${event.rawPath}${query}`, { method, headers, ...carried });
}

/** The answer as API Gateway takes it: text as text, anything else as base64. */
export async function resultOf(response: Response): Promise<APIGatewayProxyStructuredResultV2> {
  const headers = Object.fromEntries([...response.headers].filter(([name]) => name !== 'set-cookie'));
  const cookies = response.headers.getSetCookie();
  const isText = /^(text\/|application\/([\w.+-]+\+)?json\b)/.test(
    response.headers.get('content-type') ?? 'text/',
  );
  const bytes = Buffer.from(await response.arrayBuffer());
  return {
    statusCode: response.status,
    headers,
    ...(cookies.length > 0 ? { cookies } : {}),
    body: bytes.toString(isText ? 'utf8' : 'base64'),
    isBase64Encoded: !isText,
  };
}
