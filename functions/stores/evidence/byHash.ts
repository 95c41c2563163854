import { createHash } from 'node:crypto';
import type { Exhibit } from '../../../shared/submissions/fields.ts';
import { copyKey, createCopyStore } from './copies.ts';
import type { EvidenceObjects } from './evidenceObjects.ts';
import type { DeclaredBytes, EvidenceStore, UploadTarget } from './evidence.ts';

/** How long a signed address works. Long enough for a photo over a poor connection, short enough to be worthless later. */
export const UPLOAD_SECONDS = 900;
export const DOWNLOAD_SECONDS = 300;

/** How bytes come and go without passing through a handler. */
export interface EvidenceLinks {
  uploadTarget(key: string, declared: DeclaredBytes): Promise<UploadTarget>;
  downloadUrl(key: string, filename: string): Promise<string>;
}

/** The object's key is its hash, so the same bytes are kept once and cannot be replaced by others. */
export const evidenceKey = (sha256: string): string => `${sha256.slice(0, 2)}/${sha256}`;

/** The hash of the original that a key is of; null for any other object, such as a copy. */
export const originalOf = (key: string): string | null =>
  /^([0-9a-f]{2})\/(\1[0-9a-f]{62})$/.exec(key)?.[2] ?? null;

/** S3 and the file store's upload endpoint both take the hash in this form (RFC 4648 base64 of the 32 bytes). */
export const sha256Base64 = (sha256: string): string => Buffer.from(sha256, 'hex').toString('base64');

/** Headers that a sender sets. The length is not among them: a browser sets it, and will not let a page do so. */
export const uploadHeaders = ({ sha256, mediaType }: DeclaredBytes): Record<string, string> => ({
  'content-type': mediaType,
  'x-amz-checksum-sha256': sha256Base64(sha256),
  'if-none-match': '*',
});

/** Whether the bytes of an original are in a store of evidence. */
export const evidenceHeld =
  (objects: EvidenceObjects) =>
  async (sha256: string): Promise<boolean> =>
    (await objects.head(evidenceKey(sha256))) !== null;

/** Evidence over an object store and its signed addresses. */
export function createEvidenceStore(objects: EvidenceObjects, links: EvidenceLinks): EvidenceStore {
  return {
    uploadTarget: (declared) => links.uploadTarget(evidenceKey(declared.sha256), declared),
    has: evidenceHeld(objects),
    arrivedAt: async (sha256) => (await objects.head(evidenceKey(sha256)))?.writtenAt ?? null,
    get: async (sha256) => (await objects.get(evidenceKey(sha256)))?.bytes ?? null,
    put: async (bytes: Uint8Array, mediaType: Exhibit['mediaType'] | 'application/zip') => {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      await objects.put(evidenceKey(sha256), bytes, { contentType: mediaType, ifAbsent: true });
      return { sha256 };
    },
    downloadUrl: (sha256, filename) => links.downloadUrl(evidenceKey(sha256), filename),
    copies: createCopyStore(objects),
    copyUrl: (sha256, filename) => links.downloadUrl(copyKey(sha256), filename),
  };
}
