import { importJWK, SignJWT, type CryptoKey } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { developmentAudience, developmentIssuer } from '../../infra/local/issuer.ts';
import { routes, type Route } from '../../shared/deployment/routes.ts';
import { roles, type Role } from '../../shared/roles.ts';
import { runningServer, type Running } from './support/running.ts';
import { ports } from '../support/ports.ts';

/**
 * Every route of the table, through the real gateway and handlers, with every kind of token there is to refuse. What
 * each must be answered with follows from the table's `allowed` and from RFC 6750 §3.1 (401 for a token that is
 * missing, expired or not valid, 403 for one that does not suffice).
 */
let running: Running;
let key: CryptoKey;
beforeAll(async () => {
  running = await runningServer(ports.routeRoles);
  key = (await importJWK(running.folder.keys.issuerKey, 'ES256')) as CryptoKey;
});
afterAll(() => running.close());

interface Claims {
  issuer?: string;
  audience?: string;
  expiresInS?: number;
  groups?: readonly string[];
}
const signed = ({
  issuer = developmentIssuer,
  audience = developmentAudience,
  expiresInS = 600,
  groups = [],
}: Claims): Promise<string> =>
  new SignJWT({ name: 'Somebody', 'cognito:groups': groups })
    .setProtectedHeader({ alg: 'ES256', kid: running.folder.keys.issuerKey.kid! })
    .setIssuer(issuer)
    .setAudience(audience)
    .setSubject('somebody')
    .setExpirationTime(Math.floor(Date.now() / 1000) + expiresInS)
    .sign(key);
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
  const { status, body } = await running.ask(method, path.replaceAll(/\{\w+\}/g, 'none'), {
    ...(token === null ? {} : { token }),
    ...(method === 'POST' ? { body: {} } : {}),
  });
  return { status, type: body?.type };
};

for (const route of routes) {
  const { method, path, allowed } = route;
  describe(`${method} ${path}`, () => {
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
