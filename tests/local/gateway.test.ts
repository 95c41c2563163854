import { createServer } from 'node:http';
import type { APIGatewayProxyEventV2 } from 'aws-lambda';
import { describe, expect, it } from 'vitest';
import { eventOf } from '../../infra/local/events.ts';
import { matchRoute } from '../../infra/local/router.ts';
import { terminalLocale } from '../../infra/local/terminal.ts';
import { families, routes } from '../../shared/deployment/routes.ts';

describe('the gateway', () => {
  it('finds every route of the table by its own path', () => {
    for (const route of routes) {
      const match = matchRoute(route.method, route.path.replaceAll(/\{\w+\}/g, 'x1'));
      expect(match?.route).toBe(route);
      expect(families).toContain(match?.route.family);
    }
  });

  it('decodes parameters and leaves bad escapes as they are', () => {
    expect(matchRoute('GET', '/api/hydrants/H%2F1%20b')?.pathParameters).toEqual({ hydrantId: 'H/1 b' });
    expect(matchRoute('GET', '/api/hydrants/%E0%A4%A')?.pathParameters).toEqual({ hydrantId: '%E0%A4%A' });
  });

  it.each([
    ['PUT', '/api/submissions'],
    ['HEAD', '/api/strikes'],
    ['GET', '/api/strikes/'],
    ['GET', '/api'],
    ['GET', '/api/strikes/a/b'],
  ])('has no route for %s %s', (method, path) => {
    expect(matchRoute(method, path)).toBeNull();
  });

  // Field by field from AWS, "Create AWS Lambda proxy integrations for HTTP APIs in API Gateway", payload format 2.0.
  it('makes the event that API Gateway makes', async () => {
    let event: APIGatewayProxyEventV2 | undefined;
    const server = createServer((request, response) => {
      event = eventOf(request, {
        routeKey: 'POST /api/x/{id}',
        pathParameters: { id: '7' },
        body: Buffer.from('{"ñ":1}'),
        now: new Date(0),
      });
      response.end();
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as { port: number };
    await fetch(`http://127.0.0.1:${port}/api/x/7?a=1&a=2&b=`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: 'k=v; l=w', 'X-Thing': 'y' },
    });
    await new Promise((resolve) => server.close(resolve));
    expect(event).toMatchObject({
      version: '2.0',
      routeKey: 'POST /api/x/{id}',
      rawPath: '/api/x/7',
      rawQueryString: 'a=1&a=2&b=',
      queryStringParameters: { a: '1,2', b: '' },
      pathParameters: { id: '7' },
      cookies: ['k=v', 'l=w'],
      headers: { 'x-thing': 'y', 'content-type': 'application/json' },
      requestContext: {
        http: { method: 'POST', path: '/api/x/7', protocol: 'HTTP/1.1' },
        stage: '$default',
        timeEpoch: 0,
      },
      body: '{"ñ":1}',
      isBase64Encoded: false,
    });
    expect(event?.headers['cookie']).toBeUndefined();
  });
});

describe('the language of the terminal (POSIX: LC_ALL before LC_MESSAGES before LANG)', () => {
  it.each([
    [{}, 'en'],
    [{ LANG: 'es_MX.UTF-8' }, 'es'],
    [{ LANG: 'es_MX.UTF-8', LC_ALL: 'C' }, 'en'],
    [{ LANG: 'en_US.UTF-8', LC_ALL: '', LC_MESSAGES: 'es_ES' }, 'es'],
  ])('%j is %s', (variables, locale) => {
    expect(terminalLocale(variables)).toBe(locale);
  });
});
