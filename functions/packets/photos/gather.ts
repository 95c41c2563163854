import { createHash } from 'node:crypto';
import type { PhotoFound } from '../../../shared/packet/photos.ts';
import type { PhotoReason } from '../../../shared/packet/schema.ts';
import type { Exhibit } from '../../../shared/submissions/fields.ts';
import { readJpeg } from './jpeg.ts';
import { readPng } from './png.ts';

/** Where the bytes come from; null while they have not arrived. */
export interface PhotoSource {
  get(sha256: string): Promise<Uint8Array | null>;
}

/** One photo, and all of a packet's together: what a function of this size can hold and a mail box will take. */
export const MOST_PHOTO_BYTES = 25_000_000;
export const MOST_PACKET_BYTES = 150_000_000;
export const MOST_PHOTOS = 200;

export interface Gathered {
  readonly found: ReadonlyMap<string, PhotoFound>;
  /** Bytes of those that are shown. */
  readonly bytes: ReadonlyMap<string, Uint8Array>;
}

/**
 * Reads a packet's photos one after another and says of each whether it can be shown, and if not, why. What cannot be
 * shown never fails the packet; a store that does not answer does, because the packet would be wrong by silence.
 */
export async function gatherPhotos(exhibits: readonly Exhibit[], source: PhotoSource): Promise<Gathered> {
  const found = new Map<string, PhotoFound>();
  const bytes = new Map<string, Uint8Array>();
  let total = 0;
  for (const exhibit of exhibits) {
    const { sha256 } = exhibit;
    const early = unreadable(exhibit, { shown: bytes.size, total });
    if (early !== null && early !== 'document' && early !== 'unsupported-type') {
      found.set(sha256, notIncluded(early));
      continue;
    }
    const read = await source.get(sha256);
    if (read === null) {
      found.set(sha256, { state: { code: 'awaited' }, cameraTime: null });
      continue;
    }
    const seen = early === null ? inspect(exhibit, read) : notIncluded(early);
    found.set(sha256, seen);
    if (seen.state.code !== 'included') continue;
    bytes.set(sha256, read);
    total += read.byteLength;
  }
  return { found, bytes };
}

const notIncluded = (reason: PhotoReason): PhotoFound => ({
  state: { code: 'not-included', reason },
  cameraTime: null,
});

/** Why a photo is not shown, as far as its declaration says. */
function unreadable({ mediaType, bytes }: Exhibit, so: { shown: number; total: number }): PhotoReason | null {
  if (mediaType === 'application/pdf') return 'document';
  if (mediaType !== 'image/jpeg' && mediaType !== 'image/png') return 'unsupported-type';
  if (bytes > MOST_PHOTO_BYTES) return 'too-large';
  return so.shown >= MOST_PHOTOS || so.total + bytes > MOST_PACKET_BYTES ? 'too-many' : null;
}

/** Looks at the bytes themselves: what a file is called or declared to be proves nothing. */
export function inspect({ sha256 }: Pick<Exhibit, 'sha256'>, bytes: Uint8Array): PhotoFound {
  if (createHash('sha256').update(bytes).digest('hex') !== sha256) return notIncluded('hash-differs');
  const png = readPng(bytes);
  if (png === 'too-large') return notIncluded('too-large');
  if (png) return { state: { code: 'included', ...png, orientation: 1 }, cameraTime: null };
  const jpeg = readJpeg(bytes);
  if (!jpeg) return notIncluded('corrupt');
  const { widthPx, heightPx, exif } = jpeg;
  const lying = exif.orientation > 4;
  return {
    state: {
      code: 'included',
      widthPx: lying ? heightPx : widthPx,
      heightPx: lying ? widthPx : heightPx,
      orientation: exif.orientation,
    },
    cameraTime: exif.cameraTime,
  };
}
