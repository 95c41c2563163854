import { beforeAll, describe, expect, it } from 'vitest';
import { createFamilyApp, type App, type HttpDeps } from '../../functions/http/app.ts';
import { MOST_BODY_BYTES, problemsInJson, readJson } from '../../functions/http/json.ts';
import { lambdaHandler, requestOf, resultOf } from '../../functions/http/lambda.ts';
import { localeOf } from '../../functions/http/locale.ts';
import { statusOf, type ProblemDocument } from '../../functions/http/problemDocument.ts';
import { reasons, refuse } from '../../functions/http/refused.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { StoreUnavailable, TooLarge } from '../../functions/stores/faults.ts';
import { problem } from '../../shared/problems/problem.ts';
import { hasWords } from '../../shared/words/index.ts';
import { testIssuer, type TestIssuer } from './support/issuer.ts';

let tokens: TestIssuer;
let logged: LogEntry[];
let deps: HttpDeps;
beforeAll(async () => {
  tokens = await testIssuer();
  logged = [];
  deps = { verify: tokens.verify, log: (entry) => logged.push(entry), now: () => new Date(), locale: 'en' };
});

describe('the language of an answer', () => {
  it.each([
    [undefined, 'en', 'en'],
    [undefined, 'es', 'es'],
    ['es', 'en', 'es'],
    ['es-MX,es;q=0.9,en;q=0.8', 'en', 'es'],
    ['fr, en;q=0.2, es;q=0.7', 'en', 'es'],
    ['es;q=0, en', 'es', 'en'],
    ['fr', 'es', 'es'],
    ['*', 'es', 'es'],
    ['x'.repeat(5000), 'en', 'en'],
    [';;q=,,', 'en', 'en'],
  ] as const)('Accept-Language %j with fallback %s is %s', (header, fallback, expected) => {
    expect(localeOf(header, fallback)).toBe(expected);
  });
});

describe('what JSON allows and we do not', () => {
  it.each([
    ['half a surrogate pair', '{"a":"\\ud800"}', 'text-not-unicode', 'a'],
    ['a number past every scale', '{"a":{"b":1e300}}', 'number-out-of-reach', 'a.b'],
    ['a number that JSON makes infinite', '{"a":1e999}', 'number-out-of-reach', 'a'],
    ['a number next to nothing', '{"a":[1e-300]}', 'number-out-of-reach', 'a.0'],
    ['a prototype', '{"__proto__":{"x":1}}', 'unknown-field', '__proto__'],
    ['nesting without end', `${'['.repeat(100_000)}${']'.repeat(100_000)}`, 'nested-too-deep', '0.0.0.0.0.0'],
  ])('%s', (_name, text, code, path) => {
    expect(problemsInJson(JSON.parse(text)).map((found) => [found.code, found.path])).toEqual([[code, path]]);
  });

  it('lets ordinary values through', () => {
    expect(problemsInJson({ a: [0, -1.5, 1e15, 'ñ 🚒', null, true, { b: '' }] })).toEqual([]);
  });
});

describe('a family of routes', () => {
  const ok = async () => new Response('ok');
  const evidence = (upload: Parameters<typeof createFamilyApp>[2][string]): App =>
    createFamilyApp('evidence', deps, {
      'POST /api/evidence/uploads': upload,
      'GET /api/evidence/{sha256}': ok,
    });
  const post = async (app: App, body: BodyInit, headers: Record<string, string> = {}) => {
    const response = await app.request('/api/evidence/uploads', {
      method: 'POST',
      headers: {
        authorization: `Bearer ${await tokens.tokenFor('crew')}`,
        'content-type': 'application/json',
        ...headers,
      },
      body,
    });
    return {
      status: response.status,
      headers: response.headers,
      document: (await response.json()) as ProblemDocument,
    };
  };

  it('is refused at start when a route has no handler, or a handler no route', () => {
    expect(() => createFamilyApp('evidence', deps, { 'GET /api/evidence/{sha256}': ok })).toThrow(
      'no handler for POST /api/evidence/uploads',
    );
    expect(() => createFamilyApp('health', deps, { 'GET /api/health': ok, 'GET /api/other': ok })).toThrow(
      'not in the route table: GET /api/other',
    );
  });

  it('answers an unknown path, method and HEAD with a 404 problem', async () => {
    const app = evidence(ok);
    for (const [method, path] of [
      ['GET', '/api/nothing'],
      ['DELETE', '/api/evidence/uploads'],
      ['GET', '/'],
    ] as const) {
      const response = await app.request(path, { method });
      expect([method, path, response.status, response.headers.get('content-type')]).toEqual([
        method,
        path,
        404,
        'application/problem+json',
      ]);
    }
    expect((await app.request('/api/evidence/uploads', { method: 'HEAD' })).status).toBe(404);
  });

  it('refuses a body over the limit, declared or not', async () => {
    const app = evidence(async (call) => call.json(await readJson(call)));
    const large = JSON.stringify('x'.repeat(MOST_BODY_BYTES));
    expect(await post(app, large)).toMatchObject({
      status: 413,
      document: { problems: [{ code: 'body-too-large' }] },
    });
    const undeclared = new Request('http://x/api/evidence/uploads', {
      method: 'POST',
      headers: { authorization: `Bearer ${await tokens.tokenFor('crew')}` },
      body: new Blob([large]).stream(),
      duplex: 'half',
    } as RequestInit);
    expect((await app.request(undeclared)).status).toBe(413);
  });

  it.each([
    ['nothing', '', 'body-missing'],
    ['half of it', '{"a":', 'not-json'],
    ['words', 'hello', 'not-json'],
    ['bytes that are not UTF-8', new Uint8Array([0x22, 0xff, 0x22]), 'not-json'],
  ])('answers %s with 400', async (_name, body, code) => {
    const app = evidence(async (call) => call.json(await readJson(call)));
    expect(await post(app, body)).toMatchObject({
      status: 400,
      document: { status: 400, type: '/problems/not-json', problems: [{ code }] },
    });
  });

  it('says a problem in the language that was asked for, with its path and numbers', async () => {
    const app = evidence(async () => refuse('invalid', problem('above-maximum', 'body.x', { maximum: 5 })));
    const english = await post(app, '{}');
    const spanish = await post(app, '{}', { 'accept-language': 'es-ES' });
    expect(english.document).toEqual({
      type: '/problems/invalid',
      title: 'Some fields need attention',
      status: 422,
      detail: 'Nothing was stored. Put these right and send it again.',
      problems: [
        { path: 'body.x', code: 'above-maximum', params: { maximum: 5 }, message: 'This must be 5 or less.' },
      ],
    });
    expect(spanish.document['title']).toBe('Hay campos que revisar');
    expect(spanish.headers.get('content-language')).toBe('es');
    expect(english.headers.get('cache-control')).toBe('no-store');
  });

  it('answers a store outage with 503, Retry-After and no inside', async () => {
    const app = evidence(async () => {
      throw new StoreUnavailable('table submissions at 10.0.0.7');
    });
    const { status, headers, document } = await post(app, '{}');
    expect([status, headers.get('retry-after')]).toEqual([503, '5']);
    expect(JSON.stringify(document)).not.toContain('10.0.0.7');
  });

  it('answers an item too large to store with 413', async () => {
    const app = evidence(async () => {
      throw new TooLarge(500_000, 400_000);
    });
    expect(await post(app, '{}')).toMatchObject({
      status: 413,
      document: { problems: [{ code: 'item-too-large', params: { kilobytes: 489 } }] },
    });
  });

  it('answers our own fault with a reference that the log has too, and keeps the inside inside', async () => {
    const app = evidence(async () => {
      throw new TypeError('cannot read plate ABC-123 of Jane Roe');
    });
    logged.length = 0;
    const { status, document } = await post(app, '{}');
    expect(status).toBe(500);
    expect(logged).toHaveLength(1);
    expect(logged[0]).toMatchObject({
      level: 'error',
      event: 'request-failed',
      reference: document['reference'],
      errorName: 'TypeError',
    });
    expect(logged[0]?.['errorAt']).toContain('pattern.test.ts');
    for (const text of [JSON.stringify(logged), JSON.stringify(document)])
      expect(text).not.toMatch(/ABC-123|Jane/);
  });

  it('has words for every reason', () => {
    for (const reason of reasons) {
      expect(hasWords(`refused.${reason}.title`) && hasWords(`refused.${reason}.detail`), reason).toBe(true);
      expect(statusOf[reason]).toBeGreaterThanOrEqual(400);
    }
  });
});

describe('the Lambda adapter', () => {
  // The event's shape: AWS, "Create AWS Lambda proxy integrations for HTTP APIs", payload format version 2.0.
  const event = (over: object) =>
    ({
      version: '2.0',
      routeKey: 'POST /api/x',
      rawPath: '/api/x',
      rawQueryString: '',
      headers: { 'content-type': 'application/json' },
      requestContext: { http: { method: 'POST', path: '/api/x' } },
      isBase64Encoded: false,
      ...over,
    }) as unknown as Parameters<typeof requestOf>[0];

  it('hands over method, path, query, headers and body, plain or base64', async () => {
    const plain = requestOf(event({ body: '{"ñ":1}', rawQueryString: 'near=1,2&limit=3' }));
    expect([plain.method, new URL(plain.url).pathname, new URL(plain.url).search]).toEqual([
      'POST',
      '/api/x',
      '?near=1,2&limit=3',
    ]);
    expect(await plain.json()).toEqual({ ñ: 1 });
    const encoded = requestOf(
      event({ body: Buffer.from([0xff, 0]).toString('base64'), isBase64Encoded: true }),
    );
    expect([...new Uint8Array(await encoded.arrayBuffer())]).toEqual([0xff, 0]);
  });

  it('keeps a path with escapes as it came', () => {
    expect(new URL(requestOf(event({ rawPath: '/api/hydrants/H%2F1%20b' })).url).pathname).toBe(
      '/api/hydrants/H%2F1%20b',
    );
  });

  it('drops a body on GET instead of failing', () => {
    expect(
      requestOf(event({ body: 'x', requestContext: { http: { method: 'GET', path: '/' } } })).body,
    ).toBeNull();
  });

  it('answers text as text and bytes as base64, cookies apart', async () => {
    const headers = new Headers({ 'content-type': 'application/problem+json' });
    headers.append('set-cookie', 'a=1');
    headers.append('set-cookie', 'b=2');
    expect(await resultOf(new Response('{"ñ":1}', { status: 422, headers }))).toEqual({
      statusCode: 422,
      headers: { 'content-type': 'application/problem+json' },
      cookies: ['a=1', 'b=2'],
      body: '{"ñ":1}',
      isBase64Encoded: false,
    });
    const binary = await resultOf(
      new Response(new Uint8Array([255, 0]), { headers: { 'content-type': 'application/pdf' } }),
    );
    expect([binary.body, binary.isBase64Encoded]).toEqual(['/wA=', true]);
  });

  it('makes its app once, on the first event', async () => {
    let made = 0;
    const handler = lambdaHandler(() => {
      made += 1;
      return { fetch: async () => new Response('ok') };
    });
    expect(made).toBe(0);
    await handler(event({}));
    await handler(event({}));
    expect(made).toBe(1);
  });
});
