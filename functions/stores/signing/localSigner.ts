import { createPrivateKey, sign as signBytes, type JsonWebKey } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { calculateJwkThumbprint, type JWK } from 'jose';
import { signingInput, type PacketSigner } from './packetSigner.ts';
import { OperatorFault } from '../../log/wordless.ts';

/** Signs with a private key (P-256) that lies in a file as JWK. */
export async function fileSigner(file: URL): Promise<PacketSigner> {
  return jwkSigner(JSON.parse(await readFile(file, 'utf8')) as JWK);
}

export async function jwkSigner(jwk: JWK): Promise<PacketSigner> {
  const { kty, crv, x, y } = jwk;
  if (kty !== 'EC' || crv !== 'P-256' || x === undefined || y === undefined || jwk.d === undefined)
    throw new OperatorFault('the packet key is not a private key on P-256');
  const publicJwk = { kty, crv, x, y };
  const keyId = await calculateJwkThumbprint(publicJwk);
  const key = createPrivateKey({ key: jwk as JsonWebKey, format: 'jwk' });
  return {
    async sign(sha256Hex, of) {
      const input = signingInput(keyId, sha256Hex, of);
      // JOSE wants r and s side by side (RFC 7518, 3.4), which is what IEEE P1363 names.
      const signature = signBytes('sha256', Buffer.from(input), { key, dsaEncoding: 'ieee-p1363' });
      return { jws: `${input}.${signature.toString('base64url')}`, keyId };
    },
    publicKeys: async () => ({ keys: [{ ...publicJwk, kid: keyId, alg: 'ES256', use: 'sig' }] }),
  };
}
