import { generateKeyPair, importJWK, SignJWT, type CryptoKey } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { developmentAudience, developmentIssuer } from '../../infra/local/issuer.ts';
import { routeKey, routes, type Route } from '../../shared/deployment/routes.ts';
import { roles, type Role } from '../../shared/roles.ts';
import { runningServer, type Running } from './support/running.ts';
import { whoMay } from './support/whoMay.ts';
import { ports } from '../support/ports.ts';

/**
 * Every route × role × kind of token, through the real gateway and handlers. What each must be answered with follows from
 * `whoMay` and from RFC 6750 §3.1 (401 for a token that is missing, expired or not valid, 403 for one that does not suffice).
 */
let running: Running;
let key: CryptoKey;
let otherKey: CryptoKey;
beforeAll(async () => {
  running = await runningServer(ports.routeRoles);
  key = (await importJWK(running.folder.keys.issuerKey, 'ES256')) as CryptoKey;
  otherKey = (await generateKeyPair('ES256')).privateKey;
});
afterAll(() => running.close());

interface Claims {
  issuer?: string;
  /** Null: the token has none. */
  audience?: string | null;
  expiresInS?: number;
  groups?: readonly string[];
  by?: CryptoKey;
}
function signed({
  issuer = developmentIssuer,
  audience = developmentAudience,
  expiresInS = 600,
  groups = [],
  by = key,
}: Claims): Promise<string> {
  const token = new SignJWT({ name: 'Somebody', 'cognito:groups': groups })
    .setProtectedHeader({ alg: 'ES256', kid: running.folder.keys.issuerKey.kid! })
    .setIssuer(issuer)
    .setSubject('somebody')
    .setExpirationTime(Math.floor(Date.now() / 1000) + expiresInS);
  return (audience === null ? token : token.setAudience(audience)).sign(by);
}
const part = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
const payload = (groups: readonly string[]) => ({
  iss: developmentIssuer,
  aud: developmentAudience,
  sub: 'somebody',
  exp: Math.floor(Date.now() / 1000) + 600,
  'cognito:groups': groups,
});

const refused: Record<string, (role: Role) => Promise<string | null>> = {
  'no token': async () => null,
  'an expired token': (role) => signed({ groups: [role], expiresInS: -60 }),
  'a token of another issuer': (role) => signed({ groups: [role], issuer: 'https://elsewhere.example/pool' }),
  'a token for another audience': (role) => signed({ groups: [role], audience: 'another-client' }),
  // The pool's other kind of token, for other uses: it names no audience (Cognito's documentation, access token).
  'an access token': (role) => signed({ groups: [role], audience: null }),
  'a token signed by another key': (role) => signed({ groups: [role], by: otherKey }),
  'an unsigned token': async (role) => `${part({ alg: 'none' })}.${part(payload([role]))}.`,
  'a tampered token': async (role) => {
    const [head, , signature] = (await signed({ groups: [] })).split('.');
    return `${head}.${part(payload([role]))}.${signature}`;
  },
};

const call = async (
  { method, path }: Route,
  token: string | null,
): Promise<{ status: number; type: string }> => {
  const { status, body, headers } = await running.ask(method, path.replaceAll(/\{\w+\}/g, 'none'), {
    ...(token === null ? {} : { token }),
    ...(method === 'POST' ? { body: {} } : {}),
  });
  // A sign-in that a browser sends by itself could be used by any page that it visits.
  expect(headers.has('set-cookie')).toBe(false);
  return { status, type: body?.type };
};

it('every route has its row, and every row its route', () => {
  expect(Object.keys(whoMay).sort()).toEqual(routes.map(routeKey).sort());
});

for (const route of routes) {
  const { path } = route;
  const allowed = whoMay[routeKey(route)] ?? [];
  describe(routeKey(route), () => {
    if (allowed === 'anyone') {
      it('answers anyone, and a bad token as nobody', async () => {
        // A private address that nobody has made leads nowhere, for anyone.
        // Health is red (503) until a first page stands, and says so to anyone.
        const expected =
          path === '/api/calendar/{file}' ? [404] : path === '/api/health' ? [200, 503] : [200];
        expect(expected).toContain((await call(route, null)).status);
        expect(expected).toContain((await call(route, 'not.a.token')).status);
      });
      return;
    }
    for (const role of roles) {
      it.each(Object.keys(refused))(`answers 401 to %s that claims to be ${role}`, async (name) => {
        expect(await call(route, await refused[name]!(role))).toEqual({
          status: 401,
          type: '/problems/not-signed-in',
        });
      });
      const may = allowed.includes(role);
      it(`${may ? 'lets in' : 'answers 403 to'} ${role}`, async () => {
        const { status, type } = await call(route, await signed({ groups: [role] }));
        if (may) expect([401, 403, 500, 503]).not.toContain(status);
        else expect({ status, type }).toEqual({ status: 403, type: '/problems/not-allowed' });
      });
    }
    it('answers 403 to a signed-in person of no group, or of another', async () => {
      for (const groups of [[], ['golf-club'], ['CREW'], ['crew,clerk,manager']])
        expect((await call(route, await signed({ groups }))).status).toBe(403);
    });
  });
}
