import { exifOfJpeg } from '../../../../shared/evidence/exif.ts';
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
      /** What the camera wrote into the picture, as it wrote it; null when it wrote nothing that is read here. */
      readonly cameraTime: string | null;
      /** A PDF that its author protected: with a password, nobody can show its pages. */
      readonly locked: boolean;
    }
  | { readonly ok: false; readonly code: PhotoFault };

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Some systems give a HEIC file no type at all; its name says what it is. */
const typeOf = (file: File): string =>
  file.type || (byEnding[file.name.split('.').at(-1)?.toLowerCase() ?? ''] ?? '');

/** A trailer that names how the file is encrypted (ISO 32000-1, 7.6.1). It stands in the clear, whatever is encrypted. */
const isLocked = (bytes: ArrayBuffer): boolean =>
  /\/Encrypt\s*(?:\d+\s+\d+\s+R|<<)/.test(new TextDecoder('latin1').decode(bytes));

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
      // The file's own date says when it was copied or sent on, which is no time of a photo.
      cameraTime: mediaType === 'image/jpeg' ? (exifOfJpeg(new Uint8Array(bytes))?.cameraTime ?? null) : null,
      locked: mediaType === 'application/pdf' && isLocked(bytes),
    };
  } catch {
    return { ok: false, code: 'photo-not-kept' };
  }
}
