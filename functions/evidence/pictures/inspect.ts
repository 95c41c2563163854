import { createHash } from 'node:crypto';
import type { Undisplayable } from '../../../shared/evidence/displayCopy.ts';
import { readHeif } from '../../../shared/evidence/heif.ts';
import { MOST_HEIF_PIXELS, MOST_PIXELS } from '../../../shared/evidence/limits.ts';
import { mediaTypeOf, whatItSays, type Said } from '../../../shared/evidence/pictureFile.ts';
import { readWebP } from './copy.ts';
import { readJpeg } from './jpeg.ts';
import { readPng } from './png.ts';

export interface Head {
  readonly kind: 'jpeg' | 'png' | 'webp' | 'heif';
  /** As stored, before the turn that EXIF asks for. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly said: Said;
}

type Size = Pick<Head, 'widthPx' | 'heightPx'>;

/** Looks at the bytes themselves: what a file is called or declared to be proves nothing. Unpacks no picture. */
export async function inspect(
  { sha256 }: { readonly sha256: string },
  bytes: Uint8Array,
): Promise<Head | Undisplayable> {
  if (createHash('sha256').update(bytes).digest('hex') !== sha256) return 'hash-differs';
  const headed = (kind: Head['kind'], size: Size | 'too-large' | null): Head | Undisplayable =>
    size === null ? 'corrupt' : size === 'too-large' ? size : { kind, ...size, said: whatItSays(bytes) };
  switch (mediaTypeOf(bytes)) {
    case 'image/jpeg':
      return headed('jpeg', within(readJpeg(bytes), MOST_PIXELS));
    case 'image/png':
      return headed('png', readPng(bytes));
    case 'image/webp':
      return headed('webp', await readWebP(bytes));
    case 'image/heic': {
      const heif = readHeif(bytes);
      if (heif === null) return 'corrupt';
      // A tile or a thumbnail that claims more than the picture could be would be unpacked too.
      return heif.mostPixels > MOST_HEIF_PIXELS ? 'too-large' : headed('heif', heif);
    }
    case 'application/pdf':
      return 'document';
    default:
      return 'corrupt';
  }
}

const within = (size: Size | null, mostPixels: number): Size | 'too-large' | null =>
  size !== null && size.widthPx * size.heightPx > mostPixels ? 'too-large' : size;
