import { createHmac } from 'node:crypto';
import { exportSPKI, generateKeyPair, SignJWT, type JWTVerifyGetKey } from 'jose';
import { beforeAll, describe, expect, it } from 'vitest';
import { Refused } from '../../functions/http/refused.ts';
import { createVerifier, keysAt } from '../../functions/http/signIn.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { audience, issuer, testIssuer, type TestIssuer } from './support/issuer.ts';

let tokens: TestIssuer;
beforeAll(async () => {
  tokens = await testIssuer();
});

const refusal = async (promise: Promise<unknown>): Promise<string> => {
  const error = await promise.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  return error instanceof Refused ? `${error.reason} ${error.problems[0]?.code}` : String(error);
};
const part = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
const soon = (): number => Math.floor(Date.now() / 1000) + 600;

// What each must be answered with follows RFC 7519 §4.1 and §7.2 and RFC 8725 §3.1 (algorithms are the verifier's choice).
describe('a sign-in token', () => {
  it('gives the person, the name and the roles we know', async () => {
    const token = await tokens.token({
      groups: ['clerk', 'golf-club', 'manager'],
      personId: 'c-9',
      name: 'Ada Quill',
    });
    expect(await tokens.verify(token)).toEqual({
      personId: 'c-9',
      name: 'Ada Quill',
      roles: ['clerk', 'manager'],
    });
  });

  it('without groups gives no role', async () => {
    expect((await tokens.verify(await tokens.token({ groups: [] }))).roles).toEqual([]);
  });

  const bad: [string, () => Promise<string>, string][] = [
    ['expired', () => tokens.token({ expiresIn: -60 }), 'token-expired'],
    ['of another issuer', () => tokens.token({ issuer: 'https://elsewhere.test/pool' }), 'token-not-valid'],
    ['for another audience', () => tokens.token({ audience: 'client-2' }), 'token-not-valid'],
    ['signed by another key', () => tokens.token({ foreignKey: true }), 'token-not-valid'],
    [
      'unsigned (alg none)',
      async () =>
        `${part({ alg: 'none' })}.${part({ iss: issuer, aud: audience, sub: 'w-1', exp: soon(), 'cognito:groups': ['manager'] })}.`,
      'token-not-valid',
    ],
    [
      'whose payload was changed',
      async () => {
        const [head, , signature] = (await tokens.token()).split('.');
        return `${head}.${part({ iss: issuer, aud: audience, sub: 'w-1', exp: soon(), 'cognito:groups': ['manager'] })}.${signature}`;
      },
      'token-not-valid',
    ],
    ['that is not a token', async () => 'abc', 'token-not-valid'],
    ['with three empty parts', async () => '..', 'token-not-valid'],
  ];
  it.each(bad)('%s is refused', async (_name, make, code) => {
    expect(await refusal(tokens.verify(await make()))).toBe(`not-signed-in ${code}`);
  });

  it('without an expiry is refused', async () => {
    const pair = await generateKeyPair('ES256');
    const verify = createVerifier({ issuer, audience, keys: async () => pair.publicKey });
    const token = await new SignJWT({})
      .setProtectedHeader({ alg: 'ES256' })
      .setIssuer(issuer)
      .setAudience(audience)
      .setSubject('w-1')
      .sign(pair.privateKey);
    expect(await refusal(verify(token))).toBe('not-signed-in token-not-valid');
  });

  it('signed with the public key as a shared secret (RFC 8725 §2.1) is refused', async () => {
    const pair = await generateKeyPair('RS256', { extractable: true });
    const verify = createVerifier({ issuer, audience, keys: async () => pair.publicKey });
    const signed = `${part({ alg: 'HS256' })}.${part({ iss: issuer, aud: audience, sub: 'w-1', exp: soon() })}`;
    const mac = createHmac('sha256', await exportSPKI(pair.publicKey))
      .update(signed)
      .digest('base64url');
    expect(await refusal(verify(`${signed}.${mac}`))).toBe('not-signed-in token-not-valid');
  });

  it('cannot be judged when the issuer has no keys to give: that is an outage, not a bad token', async () => {
    const unreachable: JWTVerifyGetKey = keysAt('http://127.0.0.1:9/jwks.json');
    const verify = createVerifier({ issuer, audience, keys: unreachable });
    await expect(verify(await tokens.token())).rejects.toBeInstanceOf(StoreUnavailable);
  });
});
