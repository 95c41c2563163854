/**
 * What a HEIF file (ISO/IEC 23008-12 in the boxes of ISO/IEC 14496-12) says of its picture without unpacking it: how large
 * it is, and where its EXIF block and its color profile are. HEIC is HEIF with HEVC inside.
 */
export interface Heif {
  /** Upright: after the turns that the file's own properties ask for. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The most pixels that any picture in the file claims (its tiles, its thumbnails): what unpacking may come to. */
  readonly mostPixels: number;
  /** The TIFF block of its EXIF item; null when it has none. */
  readonly exif: Uint8Array | null;
  /** An ICC profile; null when it has none. */
  readonly profile: Uint8Array | null;
}

interface Box {
  readonly type: string;
  readonly from: number;
  readonly to: number;
}
interface Item {
  readonly id: number;
  readonly type: string;
}
interface Place {
  readonly inData: boolean;
  readonly extents: readonly { readonly from: number; readonly length: number }[];
}

/** Brands under which a still picture stands (ISO/IEC 23008-12, 10.2 and B.4; AV1 in HEIF). */
const BRANDS = new Set(['mif1', 'msf1', 'heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'avif', 'avis']);
/** A file of more is nobody's photo; each loop ends at one of these. */
const MOST_BOXES = 4_000;
const MOST_EXIF_BYTES = 1_000_000;
const MOST_PROFILE_BYTES = 4_000_000;

/** Reads a HEIF file's head; null for what is none, or is broken before its picture. Never throws. */
export function readHeif(bytes: Uint8Array): Heif | null {
  try {
    return read(new Reader(bytes));
  } catch (error) {
    // A box that points outside the file.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Whether a file begins as a HEIF file does. */
export function isHeif(bytes: Uint8Array): boolean {
  try {
    return brandsOf(new Reader(bytes)).some((brand) => BRANDS.has(brand));
  } catch {
    return false;
  }
}

function brandsOf(file: Reader): string[] {
  const size = file.u32(0);
  if (file.text(4) !== 'ftyp' || size < 16 || size > 4_096) return [];
  const brands = [file.text(8)];
  for (let at = 16; at + 4 <= Math.min(size, file.length); at += 4) brands.push(file.text(at));
  return brands;
}

function read(file: Reader): Heif | null {
  if (!brandsOf(file).some((brand) => BRANDS.has(brand))) return null;
  const meta = file.boxes(0, file.length).find(({ type }) => type === 'meta');
  if (!meta) return null;
  const inside = file.boxes(meta.from + 4, meta.to);
  const of = (type: string): Box | undefined => inside.find((box) => box.type === type);
  const primaryBox = of('pitm');
  const iprp = of('iprp');
  if (!primaryBox || !iprp) return null;
  const primary =
    file.u8(primaryBox.from) === 0 ? file.u16(primaryBox.from + 4) : file.u32(primaryBox.from + 4);

  const ipco = file.boxes(iprp.from, iprp.to).find(({ type }) => type === 'ipco');
  const ipma = file.boxes(iprp.from, iprp.to).filter(({ type }) => type === 'ipma');
  if (!ipco) return null;
  const properties = file.boxes(ipco.from, ipco.to);
  const own = ipma
    .flatMap((box) => associations(file, box, primary))
    .flatMap((index) => properties[index - 1] ?? []);

  const size = own.find(({ type }) => type === 'ispe');
  if (!size) return null;
  const [widthPx, heightPx] = [file.u32(size.from + 4), file.u32(size.from + 8)];
  if (widthPx === 0 || heightPx === 0) return null;
  // Quarter turns counter-clockwise (ISO/IEC 23008-12, 6.5.10).
  const turns = own
    .filter(({ type }) => type === 'irot')
    .reduce((sum, { from }) => sum + (file.u8(from) & 3), 0);
  const lying = turns % 2 === 1;
  const mostPixels = properties
    .filter(({ type }) => type === 'ispe')
    .reduce((most, { from }) => Math.max(most, file.u32(from + 4) * file.u32(from + 8)), 0);

  const profile = own.find(({ type, from }) => type === 'colr' && ['prof', 'rICC'].includes(file.text(from)));
  const iinf = of('iinf');
  const iloc = of('iloc');
  const exifItem = iinf ? items(file, iinf).find(({ type }) => type === 'Exif') : undefined;
  const place = exifItem && iloc ? placeOf(file, iloc, exifItem.id) : null;
  return {
    widthPx: lying ? heightPx : widthPx,
    heightPx: lying ? widthPx : heightPx,
    mostPixels,
    exif: place ? exifBlock(file, place, of('idat')) : null,
    profile:
      profile && profile.to - profile.from - 4 <= MOST_PROFILE_BYTES
        ? file.slice(profile.from + 4, profile.to)
        : null,
  };
}

/** The one-based properties of an item (ISO/IEC 23008-12, 9.3). */
function associations(file: Reader, box: Box, item: number): number[] {
  const version = file.u8(box.from);
  const wide = (file.u8(box.from + 3) & 1) === 1;
  const count = Math.min(file.u32(box.from + 4), MOST_BOXES);
  const found: number[] = [];
  let at = box.from + 8;
  for (let entry = 0; entry < count; entry += 1) {
    const id = version < 1 ? file.u16(at) : file.u32(at);
    at += version < 1 ? 2 : 4;
    const linked = file.u8(at);
    at += 1;
    for (let index = 0; index < linked; index += 1) {
      if (id === item) found.push(wide ? file.u16(at) & 0x7fff : file.u8(at) & 0x7f);
      at += wide ? 2 : 1;
    }
  }
  return found;
}

/** ISO/IEC 14496-12, 8.11.6. */
function items(file: Reader, box: Box): Item[] {
  const wide = file.u8(box.from) !== 0;
  return file.boxes(box.from + (wide ? 8 : 6), box.to).flatMap(({ type, from }) => {
    const version = file.u8(from);
    if (type !== 'infe' || version < 2) return [];
    const id = version === 2 ? file.u16(from + 4) : file.u32(from + 4);
    return [{ id, type: file.text(from + (version === 2 ? 8 : 10)) }];
  });
}

/** Where an item's bytes are (ISO/IEC 14496-12, 8.11.3); null where it is not said, or is another file. */
function placeOf(file: Reader, box: Box, item: number): Place | null {
  const version = file.u8(box.from);
  if (version > 2) return null;
  const sizes = file.u16(box.from + 4);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexSize = version === 0 ? 0 : sizes & 15;
  let at = box.from + 6;
  const take = (size: number): number => {
    const value = size === 0 ? 0 : size === 2 ? file.u16(at) : size === 4 ? file.u32(at) : file.u64(at);
    at += size;
    return value;
  };
  const idSize = version < 2 ? 2 : 4;
  const count = Math.min(take(idSize), MOST_BOXES);
  for (let entry = 0; entry < count; entry += 1) {
    const id = take(idSize);
    const method = version === 0 ? 0 : take(2) & 15;
    const elsewhere = take(2);
    const base = take(baseSize);
    const extents = Array.from({ length: Math.min(take(2), MOST_BOXES) }, () => {
      take(indexSize);
      return { from: base + take(offsetSize), length: take(lengthSize) };
    });
    if (id === item) return elsewhere !== 0 || method > 1 ? null : { inData: method === 1, extents };
  }
  return null;
}

/** The TIFF block within an EXIF item, which says first how far in it begins (ISO/IEC 23008-12, A.2.1). */
function exifBlock(file: Reader, { inData, extents }: Place, idat: Box | undefined): Uint8Array | null {
  if (inData && !idat) return null;
  const shift = inData ? (idat?.from ?? 0) : 0;
  const total = extents.reduce((sum, { length }) => sum + length, 0);
  if (total < 8 || total > MOST_EXIF_BYTES) return null;
  const joined = new Uint8Array(total);
  let at = 0;
  for (const { from, length } of extents) {
    joined.set(file.slice(shift + from, shift + from + length), at);
    at += length;
  }
  const begins = 4 + new DataView(joined.buffer).getUint32(0);
  return begins < total ? joined.subarray(begins) : null;
}

/** Big-endian numbers and boxes of a file. Throws `RangeError` outside it. */
class Reader {
  readonly length: number;
  readonly #view: DataView;
  readonly #bytes: Uint8Array;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.length = bytes.byteLength;
  }

  u8(at: number): number {
    return this.#view.getUint8(at);
  }
  u16(at: number): number {
    return this.#view.getUint16(at);
  }
  u32(at: number): number {
    return this.#view.getUint32(at);
  }
  /** As far as a file can be long here. */
  u64(at: number): number {
    return this.u32(at) * 2 ** 32 + this.u32(at + 4);
  }
  text(at: number): string {
    return String.fromCharCode(this.u8(at), this.u8(at + 1), this.u8(at + 2), this.u8(at + 3));
  }
  slice(from: number, to: number): Uint8Array {
    if (from < 0 || to < from || to > this.length) throw new RangeError('outside the file');
    return this.#bytes.subarray(from, to);
  }

  /** The boxes between two places; the last may run to the end (ISO/IEC 14496-12, 4.2). */
  boxes(from: number, to: number): Box[] {
    const found: Box[] = [];
    let at = from;
    while (at + 8 <= to && found.length < MOST_BOXES) {
      const small = this.u32(at);
      const head = small === 1 ? 16 : 8;
      const size = small === 0 ? to - at : small === 1 ? this.u64(at + 8) : small;
      if (size < head || at + size > to) break;
      found.push({ type: this.text(at + 4), from: at + head, to: at + size });
      at += size;
    }
    return found;
  }
}
