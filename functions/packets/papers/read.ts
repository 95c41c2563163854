import { createHash } from 'node:crypto';
import { constants, inflateSync } from 'node:zlib';
import { ParseSpeeds, PDFDocument, PDFName, type PDFPage } from '@cantoo/pdf-lib';
import type { PaperReason } from '../../../shared/packet/exhibitSchema.ts';

export const MOST_PAPER_BYTES = 25_000_000;
export const MOST_PAPER_PAGES = 200;
/** Unpacked, for one packed part of a file that is read before its pages are known. */
const MOST_UNPACKED_BYTES = 64_000_000;

export interface PageSize {
  /** Upright, in points, after the turn that the page asks for. */
  readonly widthPt: number;
  readonly heightPt: number;
  /** The visible part of the page in its own coordinates. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly turnDeg: 0 | 90 | 180 | 270;
}

/** A paper that can be shown, opened. */
export interface ReadPaper {
  readonly document: PDFDocument;
  readonly pages: readonly PageSize[];
}

/**
 * Opens a PDF as far as it must be known to place its pages, or says why it cannot be. One that opens without a
 * password is opened, whatever its author forbids printers: the utility was handed it as evidence.
 */
export async function readPaper(sha256: string, bytes: Uint8Array): Promise<ReadPaper | PaperReason> {
  if (createHash('sha256').update(bytes).digest('hex') !== sha256) return 'hash-differs';
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (!file.subarray(0, 1024).includes('%PDF-')) return 'corrupt';
  // A file that was cut short has lost its end, and with it any pages: a reader that guesses the rest would hide that.
  if (!file.subarray(-2048).includes('%%EOF')) return 'corrupt';
  if (unpacksTooFar(file)) return 'too-large';
  try {
    const document = await PDFDocument.load(bytes, {
      password: '',
      updateMetadata: false,
      capNumbers: true,
      parseSpeed: ParseSpeeds.Fastest,
    });
    const count = document.getPageCount();
    if (count === 0) return 'no-pages';
    if (count > MOST_PAPER_PAGES) return 'too-many-pages';
    const pages = document.getPages().map(sizeOf);
    return pages.some((page) => page === null)
      ? 'corrupt'
      : { document, pages: pages.filter((page) => page !== null) };
  } catch {
    // What the library says of a broken file is for its own makers.
    return file.includes('/Encrypt') ? 'password' : 'corrupt';
  }
}

/** Objects may lie packed in a file, and are unpacked by whoever opens it: a small file can hold gigabytes of them. */
function unpacksTooFar(file: Buffer): boolean {
  const text = file.toString('latin1');
  const mark = /\/(?:ObjStm|XRef)\b/g;
  let total = 0;
  for (let found = mark.exec(text); found; found = mark.exec(text)) {
    const at = text.indexOf('stream', found.index);
    if (at < 0) break;
    const head = text.slice(text.lastIndexOf(' obj', found.index), at);
    // Packed twice over: no maker of real papers does it.
    if ((head.match(/(?:Flate|LZW|RunLength|ASCII85|ASCIIHex)Decode/g)?.length ?? 0) > 1) return true;
    const from = at + 6 + (text[at + 6] === '\r' ? 2 : 1);
    try {
      total += inflateSync(file.subarray(from), {
        maxOutputLength: MOST_UNPACKED_BYTES,
        finishFlush: constants.Z_SYNC_FLUSH,
      }).byteLength;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') return true;
    }
    if (total > MOST_UNPACKED_BYTES) return true;
  }
  return false;
}

/** Null for a page without a size that paper could have, or whose content is missing. */
function sizeOf(page: PDFPage): PageSize | null {
  const media = page.getMediaBox();
  const crop = page.getCropBox();
  const x = Math.max(media.x, crop.x);
  const y = Math.max(media.y, crop.y);
  const width = Math.min(media.x + media.width, crop.x + crop.width) - x;
  const height = Math.min(media.y + media.height, crop.y + crop.height) - y;
  if (!(width >= 1 && height >= 1 && width <= 15_000 && height <= 15_000)) return null;
  const named = page.node.get(PDFName.of('Contents'));
  if (named !== undefined && page.node.lookup(PDFName.of('Contents')) === undefined) return null;
  const turn = ((page.getRotation().angle % 360) + 360) % 360;
  const turnDeg = turn === 90 || turn === 180 || turn === 270 ? turn : 0;
  const lying = turnDeg === 90 || turnDeg === 270;
  return {
    widthPt: lying ? height : width,
    heightPt: lying ? width : height,
    box: { x, y, width, height },
    turnDeg,
  };
}
