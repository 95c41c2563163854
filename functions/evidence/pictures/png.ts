import { crc32, inflateSync } from 'node:zlib';
import { MOST_PIXELS } from '../../../shared/evidence/limits.ts';

/** One whose rows come to more is not unpacked: it would be unpacked whole to see that it is whole. */
const MOST_UNPACKED_BYTES = 260_000_000;
const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const channels: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

export interface Png {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * A PNG file (ISO/IEC 15948): its size, or null when a chunk's check sum is wrong, it is cut short, or its picture does
 * not unpack to the size that its head states. `'too-large'` above the stated limit.
 */
export function readPng(bytes: Uint8Array): Png | 'too-large' | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (!file.subarray(0, 8).equals(SIGNATURE)) return null;
  const parts: Buffer[] = [];
  let head: Buffer | null = null;
  let at = 8;
  let ended = false;
  while (!ended) {
    if (at + 12 > file.length) return null;
    const length = file.readUInt32BE(at);
    const end = at + 12 + length;
    if (end > file.length) return null;
    if (crc32(file.subarray(at + 4, end - 4)) !== file.readUInt32BE(end - 4)) return null;
    const type = file.toString('latin1', at + 4, at + 8);
    const data = file.subarray(at + 8, end - 4);
    if (type === 'IHDR') head = data;
    if (type === 'IDAT') parts.push(data);
    ended = type === 'IEND';
    at = end;
  }
  if (head?.length !== 13 || parts.length === 0) return null;
  const [widthPx, heightPx] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  const [bits, color, interlaced] = [head.readUInt8(8), head.readUInt8(9), head.readUInt8(12)];
  const perPixel = channels[color];
  if (widthPx === 0 || heightPx === 0 || perPixel === undefined) return null;
  if (widthPx * heightPx > MOST_PIXELS) return 'too-large';
  const unpacked = unpackedBytes({
    widthPx,
    heightPx,
    bitsPerPixel: bits * perPixel,
    interlaced: interlaced === 1,
  });
  if (unpacked > MOST_UNPACKED_BYTES) return 'too-large';
  try {
    return inflateSync(Buffer.concat(parts), { maxOutputLength: unpacked + 1024 }).length >= unpacked
      ? { widthPx, heightPx }
      : null;
  } catch {
    return null;
  }
}

/** Bytes of all rows, each with its filter byte; an interlaced picture is seven smaller ones (ISO/IEC 15948, 8.2). */
function unpackedBytes(png: Png & { readonly bitsPerPixel: number; readonly interlaced: boolean }): number {
  const rows = (width: number, height: number): number =>
    width === 0 || height === 0 ? 0 : height * (1 + Math.ceil((width * png.bitsPerPixel) / 8));
  if (!png.interlaced) return rows(png.widthPx, png.heightPx);
  const passes = [
    [0, 0, 8, 8],
    [4, 0, 8, 8],
    [0, 4, 4, 8],
    [2, 0, 4, 4],
    [0, 2, 2, 4],
    [1, 0, 2, 2],
    [0, 1, 1, 2],
  ] as const;
  return passes.reduce((sum, [fromX, fromY, stepX, stepY]) => {
    const width = Math.ceil((png.widthPx - fromX) / stepX);
    const height = Math.ceil((png.heightPx - fromY) / stepY);
    return sum + rows(Math.max(width, 0), Math.max(height, 0));
  }, 0);
}
