import { compactVerify, createLocalJWKSet, decodeProtectedHeader, errors, type JSONWebKeySet } from 'jose';
import * as z from 'zod';
import { finding, type Finding } from './finding.ts';

/** What a signature of a packet says (RFC 7515 compact, ES256): which file it is, of which claim and revision. */
export const signedPacket = z.object({
  pdfSha256: z.string().regex(/^[0-9a-f]{64}$/),
  claimNumber: z.string(),
  revision: z.int(),
});
export type SignedPacket = z.infer<typeof signedPacket>;

/**
 * `none`: no signature was given. `no-keys`: none to check it by. `issued`: the key is the utility's and the signature
 * is of this very file. `refused`: it is not, and `why` says what does not fit.
 */
export type SignatureAnswer =
  | { readonly state: 'none' }
  | { readonly state: 'no-keys' }
  | { readonly state: 'issued'; readonly keyId: string; readonly signed: SignedPacket }
  | { readonly state: 'refused'; readonly why: Finding };

export interface SignatureQuestion {
  /** The compact JWS as it stands in its file; null when none was given. */
  readonly jws: string | null;
  /** JSON of the utility's JWK set (RFC 7517); null when none was given. */
  readonly keys: string | null;
  /** Of the file at hand, and by its data; the latter null when it has none that can be read. */
  readonly pdfSha256: string;
  readonly claimNumber: string | null;
  readonly revision: number | null;
}

export async function checkSignature(question: SignatureQuestion): Promise<SignatureAnswer> {
  const { jws, keys } = question;
  if (jws === null) return { state: 'none' };
  if (keys === null) return { state: 'no-keys' };
  const refused = (code: string, params: Finding['params'] = {}): SignatureAnswer => ({
    state: 'refused',
    why: finding(code, 'signature', params),
  });
  const set = keySetOf(keys);
  if (!set) return refused('keys-not-keys');
  let keyId: string;
  let payload: Uint8Array;
  try {
    keyId = decodeProtectedHeader(jws.trim()).kid ?? '-';
    ({ payload } = await compactVerify(jws.trim(), createLocalJWKSet(set), { algorithms: ['ES256'] }));
  } catch (error) {
    if (error instanceof errors.JWKSNoMatchingKey || error instanceof errors.JWKSMultipleMatchingKeys)
      return refused('signature-other-key');
    if (error instanceof errors.JWSSignatureVerificationFailed) return refused('signature-wrong');
    if (error instanceof errors.JOSEAlgNotAllowed) return refused('signature-algorithm');
    return refused('signature-unreadable');
  }
  const signed = signedPacket.safeParse(jsonOf(payload));
  if (!signed.success) return refused('signature-unreadable');
  const { pdfSha256, claimNumber, revision } = signed.data;
  if (pdfSha256 !== question.pdfSha256)
    return refused('signature-other-file', {
      claimNumber,
      revision,
      own: question.pdfSha256,
      file: pdfSha256,
    });
  if (
    (question.claimNumber !== null && claimNumber !== question.claimNumber) ||
    (question.revision !== null && revision !== question.revision)
  )
    return refused('signature-other-claim', { claimNumber, revision });
  return { state: 'issued', keyId, signed: signed.data };
}

function jsonOf(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
}

function keySetOf(text: string): JSONWebKeySet | null {
  const value = jsonOf(new TextEncoder().encode(text));
  if (typeof value !== 'object' || value === null) return null;
  if ('keys' in value && Array.isArray(value.keys)) return value as JSONWebKeySet;
  // One key by itself is a set of one.
  return 'kty' in value ? { keys: [value as JSONWebKeySet['keys'][number]] } : null;
}
