import type { Exhibit } from '../submissions/fields.ts';
import { noExif, readExif, type Exif } from './exif.ts';
import { isHeif, readHeif } from './heif.ts';

/** What a file is by its own first bytes, whatever it is called; null for what is none of these. */
export function mediaTypeOf(bytes: Uint8Array): Exhibit['mediaType'] | null {
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (text(0, 8) === '\x89PNG\r\n\x1a\n') return 'image/png';
  if (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') return 'image/webp';
  // Readers take a PDF whose mark stands within the first 1,024 bytes (ISO 32000-1, annex H, note 13).
  if (text(0, 1_024).includes('%PDF-')) return 'application/pdf';
  if (isHeif(bytes)) return 'image/heic';
  return null;
}

/** Where a file keeps its EXIF block. */
export type ExifPlace = 'JPEG APP1' | 'PNG eXIf' | 'WebP EXIF' | 'HEIF Exif';

export interface Said {
  readonly exif: Exif;
  /** Null when the file holds no such block. */
  readonly place: ExifPlace | null;
}

const silent: Said = { exif: noExif, place: null };

/** What a picture's own data say of how it was taken, whichever of the four kinds of file it is. Never throws. */
export function whatItSays(bytes: Uint8Array): Said {
  switch (mediaTypeOf(bytes)) {
    case 'image/jpeg':
      return said(jpegBlock(bytes), 'JPEG APP1');
    case 'image/png':
      return said(pngBlock(bytes), 'PNG eXIf');
    case 'image/webp':
      return said(webpBlock(bytes), 'WebP EXIF');
    case 'image/heic': {
      const found = said(readHeif(bytes)?.exif ?? null, 'HEIF Exif');
      // A HEIF file is turned by its own properties; its EXIF orientation is not to be followed (ISO/IEC 23008-12, 6.5.10
      // and annex A), or it would be turned twice.
      return { ...found, exif: { ...found.exif, orientation: 1 } };
    }
    default:
      return silent;
  }
}

const said = (block: Uint8Array | null, place: ExifPlace): Said =>
  block === null ? silent : { exif: readExif(block), place };

/** `Exif\0\0`: what an APP1 segment begins with that holds a TIFF block (EXIF 2.32, 4.7.2). */
const EXIF_MARK = [0x45, 0x78, 0x69, 0x66, 0, 0];

const isMarked = (bytes: Uint8Array, at: number): boolean =>
  EXIF_MARK.every((byte, index) => bytes[at + index] === byte);

/** The TIFF block of a JPEG file, from its segments before the picture. */
function jpegBlock(bytes: Uint8Array): Uint8Array | null {
  const view = viewOf(bytes);
  let at = 2;
  while (at + 4 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1; // Fill bytes may stand before a marker.
      continue;
    }
    if (marker === 0xda) return null;
    const length = view.getUint16(at + 2);
    const end = at + 2 + length;
    if (length < 2 || end > view.byteLength) return null;
    if (marker === 0xe1 && isMarked(bytes, at + 4)) return bytes.subarray(at + 10, end);
    at = end;
  }
  return null;
}

/** The eXIf chunk of a PNG file (PNG 3rd edition, 11.3.3.6): the TIFF block without a mark. */
function pngBlock(bytes: Uint8Array): Uint8Array | null {
  const view = viewOf(bytes);
  let at = 8;
  while (at + 12 <= view.byteLength) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > view.byteLength) return null;
    if (String.fromCharCode(...bytes.subarray(at + 4, at + 8)) === 'eXIf')
      return bytes.subarray(at + 8, end - 4);
    at = end;
  }
  return null;
}

/** The EXIF chunk of a WebP file (RFC 9649, 2.7.1.5). Some writers keep JPEG's mark before the block. */
function webpBlock(bytes: Uint8Array): Uint8Array | null {
  const view = viewOf(bytes);
  let at = 12;
  while (at + 8 <= view.byteLength) {
    const length = view.getUint32(at + 4, true);
    const end = at + 8 + length;
    if (end > view.byteLength) return null;
    if (String.fromCharCode(...bytes.subarray(at, at + 4)) === 'EXIF')
      return bytes.subarray(isMarked(bytes, at + 8) ? at + 14 : at + 8, end);
    at = end + (length % 2);
  }
  return null;
}

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
