import { createRemoteJWKSet, errors, jwtVerify, type JWTVerifyGetKey } from 'jose';
import * as z from 'zod';
import { problem } from '../../shared/problems/problem.ts';
import { roles, type Member } from '../../shared/roles.ts';
import { StoreUnavailable } from '../stores/faults.ts';
import { refuse } from './refused.ts';

/** Says who a token is for, or refuses with `not-signed-in`. */
export type Verify = (token: string) => Promise<Member>;

export interface SignInSettings {
  readonly issuer: string;
  readonly audience: string;
  /** Finds the issuer's public key for a token's `kid`. */
  readonly keys: JWTVerifyGetKey;
}

/** Signatures we accept: asymmetric ones only, so that `none` and a public key used as a shared secret fail. */
export const signatureAlgorithms = ['RS256', 'ES256'];

/** Clocks of two servers differ by a little; a token is not refused for that. */
const CLOCK_TOLERANCE_S = 5;

const claims = z.object({
  sub: z.string().min(1).max(64),
  name: z.string().max(200).optional(),
  'cognito:groups': z.array(z.string()).max(100).optional(),
});

/** The issuer's published keys, kept for ten minutes and fetched again, at most every 30 s, when a key is new. */
export const keysAt = (url: string): JWTVerifyGetKey =>
  createRemoteJWKSet(new URL(url), {
    cacheMaxAge: 600_000,
    cooldownDuration: 30_000,
    timeoutDuration: 5_000,
  });

/**
 * A verifier of JSON Web Tokens (RFC 7519): signature, issuer, audience, expiry. Roles come from `cognito:groups`;
 * groups we do not know give no role.
 */
export function createVerifier({ issuer, audience, keys }: SignInSettings): Verify {
  return async (token) => {
    const verified = await jwtVerify(token, keys, {
      issuer,
      audience,
      algorithms: signatureAlgorithms,
      requiredClaims: ['sub', 'exp'],
      clockTolerance: CLOCK_TOLERANCE_S,
    }).catch(refuseToken);
    const read = claims.safeParse(verified.payload);
    if (!read.success) return refuse('not-signed-in', problem('token-not-valid'));
    const groups = read.data['cognito:groups'] ?? [];
    return {
      personId: read.data.sub,
      name: read.data.name ?? read.data.sub,
      roles: roles.filter((role) => groups.includes(role)),
    };
  };
}

function refuseToken(error: unknown): never {
  if (error instanceof errors.JWTExpired) return refuse('not-signed-in', problem('token-expired'));
  // The issuer's keys could not be had: our fault, not the person's, and a new sign-in would not help.
  if (
    error instanceof errors.JWKSTimeout ||
    error instanceof errors.JWKSInvalid ||
    !(error instanceof errors.JOSEError) ||
    error.code === 'ERR_JOSE_GENERIC'
  )
    throw new StoreUnavailable('the sign-in keys could not be read', { cause: error });
  return refuse('not-signed-in', problem('token-not-valid'));
}
