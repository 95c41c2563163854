import { importJWK, SignJWT, type JSONWebKeySet, type JWK } from 'jose';
import type { Member, Role } from '../../shared/roles.ts';

/**
 * The development issuer: hands a token for any role to whoever asks, so it lives here and is never deployed. Its
 * name is not an https address, which deployed code refuses (`functions/environment.ts`).
 */
export const developmentIssuer = 'http://localhost/hydrant-strike-ledger/development';
export const developmentAudience = 'hydrant-strike-ledger-local';

/** A working day, so that nobody is signed out in the middle of one. */
const TOKEN_SECONDS = 12 * 3600;

export interface Issuer {
  tokenFor(member: Member): Promise<string>;
  /** The public half, as `/.well-known/jwks.json` has it (RFC 7517). */
  readonly keySet: JSONWebKeySet;
}

export async function createIssuer(privateJwk: JWK): Promise<Issuer> {
  const key = await importJWK(privateJwk, 'ES256');
  const { d: _private, ...publicJwk } = privateJwk;
  const { kid } = privateJwk;
  if (kid === undefined) throw new Error('the development key has no key id');
  return {
    keySet: { keys: [{ ...publicJwk, use: 'sig' }] },
    tokenFor: ({ personId, name, roles }) =>
      new SignJWT({ name, 'cognito:groups': [...roles], token_use: 'id' })
        .setProtectedHeader({ alg: 'ES256', kid })
        .setIssuer(developmentIssuer)
        .setAudience(developmentAudience)
        .setSubject(personId)
        .setIssuedAt()
        .setExpirationTime(`${TOKEN_SECONDS} s`)
        .sign(key),
  };
}

/** Where each role starts its work. */
export const startPage: Readonly<Record<Role, string>> = {
  crew: '/crew/',
  clerk: '/desk/',
  manager: '/desk/',
};
