import type { JSONWebKeySet } from 'jose';

/** What a signature is of. */
export interface SignedOf {
  readonly claimNumber: string;
  readonly revision: number;
}

export interface PacketSignature {
  /** Compact JWS (RFC 7515), ES256. Its payload is `{"claimNumber","pdfSha256","revision"}`. */
  readonly jws: string;
  /** JWK thumbprint (RFC 7638) of the public key, which is also the JWS's `kid`. */
  readonly keyId: string;
}

/** Signs a packet's hash, so that a reader can tell "issued by this utility" from "consistent". The key never leaves. */
export interface PacketSigner {
  sign(sha256Hex: string, of: SignedOf): Promise<PacketSignature>;
  /** The public half, as anyone may have it (RFC 7517). */
  publicKeys(): Promise<JSONWebKeySet>;
}

const base64url = (text: string): string => Buffer.from(text, 'utf8').toString('base64url');

/** What is signed: header and payload of the JWS, joined as RFC 7515, 5.1 has it. */
export function signingInput(keyId: string, pdfSha256: string, { claimNumber, revision }: SignedOf): string {
  const header = { alg: 'ES256', kid: keyId, typ: 'packet-signature' };
  return `${base64url(JSON.stringify(header))}.${base64url(JSON.stringify({ claimNumber, pdfSha256, revision }))}`;
}
