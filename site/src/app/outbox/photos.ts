import { exhibit } from '../../../../shared/submissions/fields.ts';
import { keepFile } from './outbox.ts';

const mediaTypes = exhibit.shape.mediaType.options;
const byEnding: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  heic: 'image/heic',
  heif: 'image/heif',
  webp: 'image/webp',
  pdf: 'application/pdf',
};

/** Words: `photo.fault.<code>`. */
export type PhotoFault =
  'photo-type' | 'photo-too-large' | 'photo-empty' | 'photo-not-kept' | 'photo-needs-https';

export type Taken =
  | {
      readonly ok: true;
      readonly sha256: string;
      readonly bytes: number;
      readonly mediaType: string;
      /** The file's own time, UTC: when a camera wrote it, as a rule. */
      readonly writtenAt: string;
    }
  | { readonly ok: false; readonly code: PhotoFault };

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Some systems give a HEIC file no type at all; its name says what it is. */
const typeOf = (file: File): string =>
  file.type || (byEnding[file.name.split('.').at(-1)?.toLowerCase() ?? ''] ?? '');

/** Hashes a chosen file on the device (SHA-256 of its exact bytes) and keeps the bytes until they have arrived. */
export async function takePhoto(file: File): Promise<Taken> {
  const mediaType = typeOf(file);
  if (!(mediaTypes as readonly string[]).includes(mediaType)) return { ok: false, code: 'photo-type' };
  if (file.size > 100_000_000) return { ok: false, code: 'photo-too-large' };
  if (file.size === 0) return { ok: false, code: 'photo-empty' };
  // Browsers hash only on secure pages; the address of this machine counts as one.
  if (!isSecureContext) return { ok: false, code: 'photo-needs-https' };
  try {
    const bytes = await file.arrayBuffer();
    const sha256 = hex(await crypto.subtle.digest('SHA-256', bytes));
    await keepFile(sha256, new Blob([bytes], { type: mediaType }));
    return {
      ok: true,
      sha256,
      bytes: file.size,
      mediaType,
      writtenAt: new Date(file.lastModified).toISOString(),
    };
  } catch {
    return { ok: false, code: 'photo-not-kept' };
  }
}
