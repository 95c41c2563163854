import type { Exhibit } from '../../../shared/submissions/fields.ts';
import type { CopyStore } from './copies.ts';

/** The exact object that may be sent: its length, type and hash are all checked by whoever takes the bytes. */
export type DeclaredBytes = Pick<Exhibit, 'sha256' | 'bytes' | 'mediaType'>;

/** Where the bytes of one exhibit may be sent, once, within a short time. */
export interface UploadTarget {
  readonly url: string;
  readonly method: 'PUT';
  /** Headers that the sender must set as they stand, or the store refuses the bytes. */
  readonly headers: Readonly<Record<string, string>>;
  readonly expiresAt: string;
}

/**
 * Photos and documents by the SHA-256 of their bytes. Nothing here is overwritten: the name is the content.
 * Bytes never pass through a handler; senders and readers get a short-lived signed address instead.
 * A store that cannot answer throws `StoreUnavailable`.
 */
export interface EvidenceStore {
  uploadTarget(declared: DeclaredBytes): Promise<UploadTarget>;
  has(sha256: string): Promise<boolean>;
  /** When its bytes came, by the store's clock, to the second; null while they have not, or the store does not tell. */
  arrivedAt(sha256: string): Promise<string | null>;
  get(sha256: string): Promise<Uint8Array | null>;
  /** Keeps a document that the server itself made, such as a packet. Idempotent. */
  put(
    bytes: Uint8Array,
    mediaType: Exhibit['mediaType'] | 'application/zip',
  ): Promise<{ readonly sha256: string }>;
  /** A short-lived address to read the bytes at, saved under `filename` when downloaded. */
  downloadUrl(sha256: string, filename: string): Promise<string>;
  /** What is shown of the originals. */
  readonly copies: CopyStore;
  /** As `downloadUrl`, of the display copy; ask for its record first. */
  copyUrl(sha256: string, filename: string): Promise<string>;
}
