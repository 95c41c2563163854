import { GetObjectCommand, PutObjectCommand, type S3Client } from '@aws-sdk/client-s3';
import { getSignedUrl } from '@aws-sdk/s3-request-presigner';
import {
  DOWNLOAD_SECONDS,
  sha256Base64,
  UPLOAD_SECONDS,
  uploadHeaders,
  type EvidenceLinks,
} from './byHash.ts';

/**
 * Addresses that S3 itself checks. The upload's length, type, SHA-256 and "only if absent" are signed headers, so S3
 * refuses any other bytes and a second write; the signature covers one key.
 */
export function s3Links(client: S3Client, bucket: string, prefix: string, now: () => Date): EvidenceLinks {
  const at = (key: string): { Bucket: string; Key: string } => ({ Bucket: bucket, Key: `${prefix}${key}` });
  return {
    async uploadTarget(key, declared) {
      const signingDate = now();
      const command = new PutObjectCommand({
        ...at(key),
        ContentType: declared.mediaType,
        ContentLength: declared.bytes,
        ChecksumSHA256: sha256Base64(declared.sha256),
        IfNoneMatch: '*',
      });
      const headers = uploadHeaders(declared);
      const names = new Set([...Object.keys(headers), 'content-length']);
      const url = await getSignedUrl(client, command, {
        expiresIn: UPLOAD_SECONDS,
        signingDate,
        // Left to itself the signer moves some of these to the query or leaves them unsigned, and S3 would not hold the sender to them.
        signableHeaders: names,
        unhoistableHeaders: names,
      });
      return {
        url,
        method: 'PUT',
        headers,
        expiresAt: new Date(signingDate.getTime() + UPLOAD_SECONDS * 1000).toISOString(),
      };
    },
    downloadUrl: (key, filename) =>
      getSignedUrl(
        client,
        new GetObjectCommand({
          ...at(key),
          ResponseContentDisposition: `inline; filename="${filename.replaceAll(/[^\w.-]/g, '_')}"`,
        }),
        { expiresIn: DOWNLOAD_SECONDS, signingDate: now() },
      ),
  };
}
