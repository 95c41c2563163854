import { errors, jwtVerify, SignJWT } from 'jose';
import * as z from 'zod';
import { exhibit } from '../../../shared/submissions/fields.ts';
import { DOWNLOAD_SECONDS, UPLOAD_SECONDS, uploadHeaders, type EvidenceLinks } from './byHash.ts';

/** What a signed address allows: one operation on one object. */
const uploadGrant = z.object({
  aud: z.literal('evidence:put'),
  key: z.string(),
  sha256: exhibit.shape.sha256,
  bytes: exhibit.shape.bytes,
  mediaType: exhibit.shape.mediaType,
});
const downloadGrant = z.object({ aud: z.literal('evidence:get'), key: z.string(), filename: z.string() });
export type UploadGrant = z.infer<typeof uploadGrant>;
export type DownloadGrant = z.infer<typeof downloadGrant>;

export interface TokenLinkSettings {
  /** Where the tokens are honoured; the token is appended as the last path segment. */
  readonly base: string;
  /** Shared by who hands out the addresses and who honours them; at least 32 characters. */
  readonly secret: string;
  readonly now: () => Date;
}

const keyOf = (secret: string): Uint8Array => new TextEncoder().encode(secret);

/** Addresses for a file-backed store: the same promises as S3's, as an HMAC-signed token (JWT, HS256) in the path. */
export function tokenLinks({ base, secret, now }: TokenLinkSettings): EvidenceLinks {
  const sign = async (grant: object, seconds: number): Promise<{ url: string; expiresAt: string }> => {
    const expiresS = Math.floor(now().getTime() / 1000) + seconds;
    const token = await new SignJWT({ ...grant })
      .setProtectedHeader({ alg: 'HS256' })
      .setExpirationTime(expiresS)
      .sign(keyOf(secret));
    return { url: `${base}/${token}`, expiresAt: new Date(expiresS * 1000).toISOString() };
  };
  return {
    async uploadTarget(key, declared) {
      const { sha256, bytes, mediaType } = declared;
      const signed = await sign(
        { aud: 'evidence:put', key, sha256, bytes, mediaType } satisfies UploadGrant,
        UPLOAD_SECONDS,
      );
      return { ...signed, method: 'PUT', headers: uploadHeaders(declared) };
    },
    async downloadUrl(key, filename) {
      return (await sign({ aud: 'evidence:get', key, filename } satisfies DownloadGrant, DOWNLOAD_SECONDS))
        .url;
    },
  };
}

/** What an upload token allows, or null when it is not ours, was changed, is for reading, or has expired. */
export const readUploadGrant = (
  token: string,
  settings: Omit<TokenLinkSettings, 'base'>,
): Promise<UploadGrant | null> => readGrant(token, settings, 'evidence:put', uploadGrant);
/** The same for a download token. */
export const readDownloadGrant = (
  token: string,
  settings: Omit<TokenLinkSettings, 'base'>,
): Promise<DownloadGrant | null> => readGrant(token, settings, 'evidence:get', downloadGrant);

async function readGrant<T>(
  token: string,
  { secret, now }: Omit<TokenLinkSettings, 'base'>,
  audience: string,
  shape: z.ZodType<T>,
): Promise<T | null> {
  try {
    const { payload } = await jwtVerify(token, keyOf(secret), {
      algorithms: ['HS256'],
      audience,
      requiredClaims: ['exp'],
      currentDate: now(),
    });
    return shape.parse(payload);
  } catch (error) {
    if (error instanceof errors.JOSEError || error instanceof z.ZodError) return null;
    throw error;
  }
}
