import { createHash } from 'node:crypto';
import sharp from 'sharp';
import {
  DISPLAY_EDGE_PX,
  type DisplayCopy,
  type Undisplayable,
} from '../../../shared/evidence/displayCopy.ts';
import { isHeif, readHeif } from '../../../shared/evidence/heif.ts';
import { MOST_PIXELS, PICTURE_LIMIT_MS } from '../../../shared/evidence/limits.ts';
import { unpackHeif, type PictureOptions } from './heif.ts';
import { asTiff } from './tiff.ts';

/** Longest edge and JPEG quality, from the best down: the first that fits a picture's share of the packet is taken. */
const steps = [
  [DISPLAY_EDGE_PX, 80],
  [DISPLAY_EDGE_PX, 68],
  [DISPLAY_EDGE_PX, 55],
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

/** Unpacked as a whole: upright, on white, at most as large as a copy is. */
interface Pixels {
  readonly data: Buffer;
  readonly raw: { readonly width: number; readonly height: number; readonly channels: 1 | 2 | 3 | 4 };
}

/**
 * The copy that is shown: upright, on white, in sRGB, without any of the file's own tags, at most `mostBytes` long where
 * the last step allows. The same bytes and limit give the same copy. A picture that cannot be unpacked as a whole is told
 * by its reason.
 */
export async function makeCopy(
  bytes: Uint8Array,
  mostBytes: number,
  options: PictureOptions = {},
): Promise<Shown | Undisplayable> {
  const pixels = isHeif(bytes)
    ? await heifPixels(bytes, options)
    : await pixelsOf(bytes, 'truncated', options);
  return typeof pixels === 'string' ? pixels : fitting(pixels, mostBytes);
}

/** A smaller one of a copy, for a packet with many pictures. */
export async function shrinkCopy(jpeg: Uint8Array, mostBytes: number): Promise<Shown | Undisplayable> {
  const pixels = await pixelsOf(jpeg, 'truncated');
  return typeof pixels === 'string' ? pixels : fitting(pixels, mostBytes);
}

async function heifPixels(bytes: Uint8Array, options: PictureOptions): Promise<Pixels | Undisplayable> {
  const unpacked = await unpackHeif(bytes, options);
  if (!unpacked.ok) return unpacked.reason;
  const { rgba, widthPx, heightPx } = unpacked;
  const flat = new Uint8Array(rgba.buffer, rgba.byteOffset, rgba.byteLength);
  return pixelsOf(asTiff(flat, widthPx, heightPx, readHeif(bytes)?.profile ?? null), 'warning', options);
}

async function pixelsOf(
  bytes: Uint8Array,
  failOn: 'truncated' | 'warning',
  { limitMs = PICTURE_LIMIT_MS }: PictureOptions = {},
): Promise<Pixels | 'corrupt' | 'too-slow'> {
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn, unlimited: false })
      // Looked at between rows: what a picture may still unpack in one go is held by its pixels.
      .timeout({ seconds: Math.ceil(limitMs / 1000) })
      .rotate()
      .resize({ width: DISPLAY_EDGE_PX, height: DISPLAY_EDGE_PX, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    return { data, raw: { width: info.width, height: info.height, channels: info.channels } };
  } catch (error) {
    // The library's words on a broken file help nobody; what it is, is said in ours.
    return error instanceof Error && error.message.startsWith('timeout:') ? 'too-slow' : 'corrupt';
  }
}

async function fitting({ data, raw }: Pixels, mostBytes: number): Promise<Shown | 'corrupt'> {
  let last: Shown | 'corrupt' = 'corrupt';
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
}

export interface WebP {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A WebP's head; null for anything else, `'too-large'` above the limit. */
export async function readWebP(bytes: Uint8Array): Promise<WebP | 'too-large' | null> {
  const mark = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(12, bytes.byteLength)).toString('latin1');
  if (!mark.startsWith('RIFF') || mark.slice(8) !== 'WEBP') return null;
  try {
    // Without the limit, which would call a picture that is too large damaged: only the head is read here.
    const { format, width, height } = await sharp(bytes, { limitInputPixels: false }).metadata();
    if (format !== 'webp') return null;
    if (width * height > MOST_PIXELS) return 'too-large';
    return { widthPx: width, heightPx: height };
  } catch {
    return null;
  }
}
