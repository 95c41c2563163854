import { createHash } from 'node:crypto';
import sharp from 'sharp';
import type { DisplayCopy } from '../../../shared/packet/exhibitSchema.ts';

/** A picture of more is not unpacked: 100 megapixels are twenty times what a packet can show. */
export const MOST_PIXELS = 100_000_000;
/** Longest edge and JPEG quality, from the best down: the first that fits a picture's share of the packet is taken. */
const steps = [
  [1600, 80],
  [1600, 68],
  [1600, 55],
  [1280, 60],
  [1280, 48],
  [1024, 45],
  [800, 45],
  [640, 40],
] as const;

// One thread a picture: several pictures are worked on at once, and a copy never hangs on how many threads there were.
sharp.concurrency(1);
// Nothing is looked at twice.
sharp.cache(false);

export interface Shown extends DisplayCopy {
  readonly jpeg: Uint8Array;
}

/**
 * The copy that is shown: upright, on white, without any of the file's own tags, at most `mostBytes` long where the
 * last step allows. Null for what cannot be unpacked as a whole. The same bytes and limit give the same copy.
 */
export async function displayCopy(bytes: Uint8Array, mostBytes: number): Promise<Shown | null> {
  try {
    const { data, info } = await sharp(bytes, {
      limitInputPixels: MOST_PIXELS,
      failOn: 'truncated',
      unlimited: false,
    })
      .rotate()
      .resize({ width: steps[0][0], height: steps[0][0], fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    const raw = { width: info.width, height: info.height, channels: info.channels };
    let last: Shown | null = null;
    for (const [edge, quality] of steps) {
      const jpeg = await sharp(data, { raw })
        .resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true })
        .jpeg({ quality })
        .toBuffer({ resolveWithObject: true });
      last = {
        sha256: createHash('sha256').update(jpeg.data).digest('hex'),
        bytes: jpeg.data.byteLength,
        widthPx: jpeg.info.width,
        heightPx: jpeg.info.height,
        jpeg: jpeg.data,
      };
      if (last.bytes <= mostBytes) return last;
    }
    return last;
  } catch {
    // The library's words on a broken file help nobody; what it is, is said in ours.
    return null;
  }
}

export interface WebP {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly exif: Buffer | null;
}

/** A WebP's head; null for anything else, `'too-large'` above the limit. */
export async function readWebP(bytes: Uint8Array): Promise<WebP | 'too-large' | null> {
  const mark = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(12, bytes.byteLength)).toString('latin1');
  if (!mark.startsWith('RIFF') || mark.slice(8) !== 'WEBP') return null;
  try {
    const { format, width, height, exif } = await sharp(bytes, { limitInputPixels: MOST_PIXELS }).metadata();
    if (format !== 'webp') return null;
    if (width * height > MOST_PIXELS) return 'too-large';
    return { widthPx: width, heightPx: height, exif: exif ?? null };
  } catch {
    return null;
  }
}
