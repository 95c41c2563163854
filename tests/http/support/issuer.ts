import { createLocalJWKSet, exportJWK, generateKeyPair, SignJWT } from 'jose';
import { createVerifier, type Verify } from '../../../functions/http/signIn.ts';
import type { Role } from '../../../shared/roles.ts';

/** An issuer of the tests' own, made with jose's keys and signer; what the handlers check is checked against it. */
export const issuer = 'https://issuer.test/pool';
export const audience = 'client-1';

export interface TokenOptions {
  readonly issuer?: string;
  readonly audience?: string;
  readonly expiresIn?: number;
  readonly groups?: readonly string[];
  readonly personId?: string;
  readonly name?: string;
  readonly foreignKey?: boolean;
}

export interface TestIssuer {
  readonly verify: Verify;
  token(options?: TokenOptions): Promise<string>;
  tokenFor(role: Role): Promise<string>;
}

let made: Promise<TestIssuer> | undefined;
/** One for all: making RSA keys takes longer than most tests. */
export const testIssuer = (): Promise<TestIssuer> => (made ??= makeIssuer());

async function makeIssuer(): Promise<TestIssuer> {
  const own = await generateKeyPair('RS256');
  const foreign = await generateKeyPair('RS256');
  const keys = createLocalJWKSet({
    keys: [{ ...(await exportJWK(own.publicKey)), kid: 'k1', alg: 'RS256', use: 'sig' }],
  });
  const token = (options: TokenOptions = {}): Promise<string> =>
    new SignJWT({ name: options.name ?? 'Test Person', 'cognito:groups': options.groups ?? ['crew'] })
      .setProtectedHeader({ alg: 'RS256', kid: 'k1' })
      .setIssuer(options.issuer ?? issuer)
      .setAudience(options.audience ?? audience)
      .setSubject(options.personId ?? 'w-1')
      .setIssuedAt()
      .setExpirationTime(Math.floor(Date.now() / 1000) + (options.expiresIn ?? 600))
      .sign(options.foreignKey ? foreign.privateKey : own.privateKey);
  return {
    verify: createVerifier({ issuer, audience, keys }),
    token,
    tokenFor: (role) => token({ groups: [role], personId: `${role}-1` }),
  };
}
