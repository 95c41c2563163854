import { request } from 'node:http';
import { createRemoteJWKSet, jwtVerify } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { developmentAudience, developmentIssuer } from '../../infra/local/issuer.ts';
import { runningServer, type Running } from './support/running.ts';
import { ports } from '../support/ports.ts';

const PORT = ports.localRoutes;
let running: Running;
beforeAll(async () => {
  running = await runningServer(PORT);
});
afterAll(() => running.close());

/** A request exactly as given: `fetch` would tidy the path and set its own Host. */
const raw = (
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<{ status: number; location: string | undefined; body: string }> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: PORT, path, method, headers }, (response) => {
      let body = '';
      response.on('data', (chunk: Buffer) => (body += chunk.toString()));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, location: response.headers.location, body }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });

describe('the development issuer', () => {
  it.each([
    ['crew', '/crew/', 'w-101'],
    ['clerk', '/desk/', 'c-301'],
    ['manager', '/desk/', 'm-401'],
  ])('signs in %s with a token that its published keys verify', async (role, page, personId) => {
    const { status, location } = await raw(`/local/sign-in?role=${role}`);
    expect([status, location?.split('#')[0]]).toEqual([302, page]);
    const keys = createRemoteJWKSet(new URL(`http://127.0.0.1:${PORT}/local/jwks.json`));
    const { payload } = await jwtVerify(location!.split('#token=')[1]!, keys, {
      issuer: developmentIssuer,
      audience: developmentAudience,
    });
    expect(payload).toMatchObject({ sub: personId, 'cognito:groups': [role] });
  });

  it('shows its links, and publishes no private key', async () => {
    const page = await raw('/local/sign-in');
    expect(page.status).toBe(200);
    for (const role of ['crew', 'clerk', 'manager'])
      expect(page.body).toContain(`href="/local/sign-in?role=${role}"`);
    expect((await raw('/local/sign-in?role=admin')).status).toBe(404);
    const [key] = JSON.parse((await raw('/local/jwks.json')).body).keys;
    expect(Object.keys(key).sort()).toEqual(['alg', 'crv', 'kid', 'kty', 'use', 'x', 'y']);
  });

  it('answers only to this machine’s own names', async () => {
    for (const host of ['localhost:4780', '127.0.0.1', '[::1]:80'])
      expect((await raw('/local/sign-in?role=manager', { host })).status).toBe(302);
    for (const host of ['evil.example', 'localhost.evil.example:4780', '127.0.0.1.nip.example']) {
      const answer = await raw('/local/sign-in?role=manager', { host });
      expect([host, answer.status === 403 || answer.status === 400, answer.location]).toEqual([
        host,
        true,
        undefined,
      ]);
    }
  });
});

describe('the way in', () => {
  it.each([
    ['/api/../local/jwks.json', 404],
    ['/local/../api/strikes', 404],
    ['//local/sign-in', 404],
    ['/%2e%2e/%2e%2e/etc/passwd', 404],
    ['/local/evidence/../../../etc/passwd', 404],
    [`/hydrants/${'a'.repeat(9000)}/`, 404],
    [`/hydrants/${'a/'.repeat(4000)}`, 404],
    ['/local/evidence/', 403],
    ['/api', 404],
    ['/api/', 404],
    ['http://elsewhere.example/api/strikes', 404],
    ['/api/strikes?%ZZ', 401],
  ])('%s is answered %i', async (path, status) => {
    expect((await raw(path, { host: 'localhost' })).status).toBe(status);
  });

  it('answers other methods on pages and keys with 405, on the API with a 404 problem', async () => {
    expect((await raw('/', {}, 'DELETE')).status).toBe(405);
    expect((await raw('/local/jwks.json', {}, 'POST')).status).toBe(405);
    const answer = await raw('/api/strikes', { 'accept-language': 'es' }, 'PATCH');
    expect([answer.status, JSON.parse(answer.body).title]).toEqual([404, 'No se encuentra']);
    expect((await raw('/api/strikes', {}, 'HEAD')).status).toBe(404);
  });

  it('answers a body beyond the gateway’s 10 MB with 413, and one beyond the route’s 256 kB likewise', async () => {
    for (const bytes of [300_000, 11_000_000]) {
      const { status, body } = await running.ask('POST', '/api/submissions', {
        role: 'crew',
        body: JSON.stringify('x'.repeat(bytes)),
      });
      expect([bytes, status, body.type]).toEqual([bytes, 413, '/problems/too-large']);
    }
  });

  it('puts its security headers on every answer', async () => {
    for (const path of ['/', '/api/utility', '/api/nothing', '/local/sign-in']) {
      const { headers } = await fetch(`http://127.0.0.1:${PORT}${path}`);
      expect([
        path,
        headers.get('content-security-policy')?.includes("frame-ancestors 'none'"),
        headers.get('x-content-type-options'),
        headers.has('set-cookie'),
      ]).toEqual([path, true, 'nosniff', false]);
    }
  });
});
