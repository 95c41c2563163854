import { createHash } from 'node:crypto';
import type { PhotoReason } from '../../../shared/packet/exhibitSchema.ts';
import type { PhotoFound } from '../../../shared/packet/photos.ts';
import type { Exhibit } from '../../../shared/submissions/fields.ts';
import { displayCopy, MOST_PIXELS, readWebP } from './display.ts';
import { readExif, type Exif } from '../../../shared/evidence/exif.ts';
import { readJpeg } from './jpeg.ts';
import { readPng } from './png.ts';

/** Where the bytes come from; null while they have not arrived. */
export interface PhotoSource {
  get(sha256: string): Promise<Uint8Array | null>;
}

/** One photo: what a phone makes, with room. */
export const MOST_PHOTO_BYTES = 25_000_000;
export const MOST_PHOTOS = 200;
/** Whole packet, for a mail box: photos get what papers and pages leave. */
export const MOST_PDF_BYTES = 20_000_000;
/** More than this does no picture any good in print. */
const MOST_SHARE_BYTES = 600_000;
/** Pictures are unpacked two at a time: with their originals that is some 300 MB at the very worst. */
const AT_ONCE = 2;

export interface Gathered {
  readonly found: ReadonlyMap<string, PhotoFound>;
  /** The copies that are shown, by the hash of their original. */
  readonly shown: ReadonlyMap<string, Uint8Array>;
}

export interface GatherOptions {
  /** What all copies together may come to, bytes. */
  readonly mostBytes?: number;
  readonly onDone?: (done: number, total: number) => void;
}

/**
 * Reads a packet's photos and says of each whether it can be shown, and if not, why. What cannot be shown never fails
 * the packet; a store that does not answer does, because the packet would be wrong by silence. Originals are not held:
 * each is read, copied small, and let go.
 */
export async function gatherPhotos(
  exhibits: readonly Exhibit[],
  source: PhotoSource,
  { mostBytes = MOST_PDF_BYTES - 2_000_000, onDone }: GatherOptions = {},
): Promise<Gathered> {
  const found = new Map<string, PhotoFound>();
  const shown = new Map<string, Uint8Array>();
  const candidates = exhibits.filter((exhibit) => unreadable(exhibit) === null).length;
  const share = Math.min(
    MOST_SHARE_BYTES,
    Math.floor(mostBytes / Math.max(1, Math.min(candidates, MOST_PHOTOS))),
  );
  let done = 0;
  let accepted = 0;
  const look = async (exhibit: Exhibit): Promise<void> => {
    const { sha256 } = exhibit;
    const early = unreadable(exhibit);
    // The place in line is taken before anything is awaited, so it does not hang on which picture is done first.
    if (early === null) accepted += 1;
    const reason = early ?? (accepted > MOST_PHOTOS ? 'too-many' : null);
    const read = reason === 'too-large' || reason === 'too-many' ? undefined : await source.get(sha256);
    if (read === null) found.set(sha256, { ...notIncluded('corrupt'), state: { code: 'awaited' } });
    else if (read === undefined || reason !== null) found.set(sha256, notIncluded(reason ?? 'corrupt'));
    else {
      const seen = await inspectAndCopy(exhibit, read, share);
      found.set(sha256, seen.found);
      if (seen.jpeg) shown.set(sha256, seen.jpeg);
    }
    done += 1;
    onDone?.(done, exhibits.length);
  };
  const waiting = exhibits.values();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const exhibit of waiting) await look(exhibit);
    }),
  );
  // In the order in which they are declared, whichever was done first.
  const inOrder = exhibits.flatMap(({ sha256 }) => {
    const seen = found.get(sha256);
    return seen ? [[sha256, seen] as const] : [];
  });
  return { found: new Map(inOrder), shown };
}

const notIncluded = (reason: PhotoReason): PhotoFound => ({
  state: { code: 'not-included', reason },
  cameraTime: null,
  cameraPosition: null,
});

/** Why a photo is not shown, as far as its declaration says. */
function unreadable({ mediaType, bytes }: Exhibit): PhotoReason | null {
  if (mediaType === 'application/pdf') return 'document';
  if (mediaType !== 'image/jpeg' && mediaType !== 'image/png' && mediaType !== 'image/webp')
    return 'unsupported-type';
  return bytes > MOST_PHOTO_BYTES ? 'too-large' : null;
}

export interface Head {
  /** As stored, before any turn. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly exif: Exif;
}

const noExif: Exif = { orientation: 1, cameraTime: null, cameraPosition: null };

/** Looks at the bytes themselves: what a file is called or declared to be proves nothing. */
export async function inspect(
  { sha256 }: Pick<Exhibit, 'sha256'>,
  bytes: Uint8Array,
): Promise<Head | PhotoReason> {
  if (createHash('sha256').update(bytes).digest('hex') !== sha256) return 'hash-differs';
  const png = readPng(bytes);
  if (png === 'too-large') return 'too-large';
  if (png) return { ...png, exif: noExif };
  const webp = await readWebP(bytes);
  if (webp === 'too-large') return 'too-large';
  if (webp)
    return { widthPx: webp.widthPx, heightPx: webp.heightPx, exif: webp.exif ? exifOf(webp.exif) : noExif };
  const jpeg = readJpeg(bytes);
  if (!jpeg) return 'corrupt';
  return jpeg.widthPx * jpeg.heightPx > MOST_PIXELS ? 'too-large' : jpeg;
}

/** Some writers keep JPEG's mark before the block. */
const exifOf = (block: Buffer): Exif =>
  readExif(block.toString('latin1', 0, 6) === 'Exif\0\0' ? block.subarray(6) : block);

/** A picture with its copy of at most `mostBytes`, or why there is none. */
export async function inspectAndCopy(
  exhibit: Pick<Exhibit, 'sha256'>,
  bytes: Uint8Array,
  mostBytes: number,
): Promise<{ readonly found: PhotoFound; readonly jpeg: Uint8Array | null }> {
  const head = await inspect(exhibit, bytes);
  if (typeof head === 'string') return { found: notIncluded(head), jpeg: null };
  const { widthPx, heightPx, exif } = head;
  const { cameraTime, cameraPosition } = exif;
  const copy = await displayCopy(bytes, mostBytes);
  if (!copy) return { found: { ...notIncluded('corrupt'), cameraTime, cameraPosition }, jpeg: null };
  const lying = exif.orientation > 4;
  const { jpeg, ...display } = copy;
  return {
    found: {
      state: {
        code: 'included',
        widthPx: lying ? heightPx : widthPx,
        heightPx: lying ? widthPx : heightPx,
        orientation: exif.orientation,
        display,
      },
      cameraTime,
      cameraPosition,
    },
    jpeg,
  };
}
