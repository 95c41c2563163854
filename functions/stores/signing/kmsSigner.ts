import { createHash, createPublicKey } from 'node:crypto';
import { GetPublicKeyCommand, KMSClient, SignCommand } from '@aws-sdk/client-kms';
import { calculateJwkThumbprint, type JWK } from 'jose';
import { StoreUnavailable } from '../faults.ts';
import { signingInput, type PacketSigner } from './packetSigner.ts';
import { waits } from '../patience.ts';

/** Signs with a key that KMS keeps (ECC_NIST_P256): it is sent a digest and never the packet. */
export function kmsSigner(keyArn: string, client: KMSClient = new KMSClient(waits())): PacketSigner {
  let known: Promise<{ jwk: JWK; keyId: string }> | undefined;
  const publicKey = (): Promise<{ jwk: JWK; keyId: string }> =>
    (known ??= read().catch((error: unknown) => {
      known = undefined;
      throw error;
    }));
  async function read(): Promise<{ jwk: JWK; keyId: string }> {
    const { PublicKey } = await asked(() => client.send(new GetPublicKeyCommand({ KeyId: keyArn })));
    if (!PublicKey) throw new Error('KMS answered without the public key');
    const jwk = createPublicKey({ key: Buffer.from(PublicKey), format: 'der', type: 'spki' }).export({
      format: 'jwk',
    }) as JWK;
    return { jwk, keyId: await calculateJwkThumbprint(jwk) };
  }
  return {
    async sign(sha256Hex, of) {
      const { keyId } = await publicKey();
      const input = signingInput(keyId, sha256Hex, of);
      const command = new SignCommand({
        KeyId: keyArn,
        Message: createHash('sha256').update(input).digest(),
        MessageType: 'DIGEST',
        SigningAlgorithm: 'ECDSA_SHA_256',
      });
      const { Signature } = await asked(() => client.send(command));
      if (!Signature) throw new Error('KMS answered without a signature');
      return { jws: `${input}.${derToJose(Buffer.from(Signature)).toString('base64url')}`, keyId };
    },
    publicKeys: async () => {
      const { jwk, keyId } = await publicKey();
      return { keys: [{ ...jwk, kid: keyId, alg: 'ES256', use: 'sig' }] };
    },
  };
}

async function asked<T>(question: () => Promise<T>): Promise<T> {
  try {
    return await question();
  } catch (error) {
    throw new StoreUnavailable('the signing key does not answer', { cause: error });
  }
}

/**
 * An ECDSA signature as KMS gives it (DER: SEQUENCE of two INTEGERs, RFC 3279, 2.2.3) as JOSE takes it (r and s, 32 bytes
 * each, RFC 7518, 3.4). A DER integer drops leading zeros and adds one before a high bit.
 */
export function derToJose(der: Buffer): Buffer {
  const malformed = (): Error => new Error('not an ECDSA signature in DER');
  if (der[0] !== 0x30 || der[1] !== der.length - 2) throw malformed();
  let at = 2;
  const integer = (): Buffer => {
    const length = der[at + 1] ?? 0;
    if (der[at] !== 0x02 || length < 1 || at + 2 + length > der.length) throw malformed();
    const digits = der.subarray(at + 2, at + 2 + length);
    at += 2 + length;
    const stripped = digits.length > 32 && digits[0] === 0 ? digits.subarray(1) : digits;
    if (stripped.length > 32) throw malformed();
    return Buffer.concat([Buffer.alloc(32 - stripped.length), stripped]);
  };
  const joined = Buffer.concat([integer(), integer()]);
  if (at !== der.length) throw malformed();
  return joined;
}
