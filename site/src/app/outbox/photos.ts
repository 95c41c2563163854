import type { PictureRead } from './readPicture.ts';
import { MOST_EXHIBIT_BYTES } from '../../../../shared/evidence/limits.ts';
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
      /** What the file says of itself; null where the part that reads it is not on this device yet. */
      readonly read: PictureRead | null;
      /** The phone's clock: when it wrote the file, where its files say, and now. */
      readonly fileWrittenAt: string | null;
      readonly chosenAt: string;
    }
  | { readonly ok: false; readonly code: PhotoFault };

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Some systems give a HEIC file no type at all; its name says what it is. */
const typeOf = (file: File): string =>
  file.type || (byEnding[file.name.split('.').at(-1)?.toLowerCase() ?? ''] ?? '');

/** Read when a photo is chosen, so that the form's first page does not carry it. */
async function read(bytes: ArrayBuffer): Promise<PictureRead | null> {
  try {
    return (await import('./readPicture.ts')).readPicture(new Uint8Array(bytes));
  } catch {
    // Without a connection the photo is taken all the same; the server reads it again.
    return null;
  }
}

/** A phone may convert a photo and leave its name: the first bytes say what it is. HEIC is one kind of HEIF. */
const trueType = (called: string, found: PictureRead | null): string =>
  found?.isA && !(found.isA === 'image/heic' && called === 'image/heif') ? found.isA : called;

/** When its files say that a file was written; nothing, or the first day of all clocks, is "not said". */
const writtenAt = ({ lastModified }: File): string | null =>
  lastModified > 86_400_000 && lastModified < 253_402_300_800_000
    ? new Date(lastModified).toISOString()
    : null;

/** Hashes a chosen file on the device (SHA-256 of its exact bytes) and keeps the bytes until they have arrived. */
export async function takePhoto(file: File): Promise<Taken> {
  const called = typeOf(file);
  if (!(mediaTypes as readonly string[]).includes(called)) return { ok: false, code: 'photo-type' };
  if (file.size > MOST_EXHIBIT_BYTES) return { ok: false, code: 'photo-too-large' };
  if (file.size === 0) return { ok: false, code: 'photo-empty' };
  // Browsers hash only on secure pages; the address of this machine counts as one.
  if (!isSecureContext) return { ok: false, code: 'photo-needs-https' };
  const chosenAt = new Date().toISOString();
  try {
    const bytes = await file.arrayBuffer();
    const sha256 = hex(await crypto.subtle.digest('SHA-256', bytes));
    const found = await read(bytes);
    const mediaType = trueType(called, found);
    await keepFile(sha256, new Blob([bytes], { type: mediaType }));
    return {
      ok: true,
      sha256,
      bytes: file.size,
      mediaType,
      read: found,
      fileWrittenAt: writtenAt(file),
      chosenAt,
    };
  } catch {
    return { ok: false, code: 'photo-not-kept' };
  }
}
