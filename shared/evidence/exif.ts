/**
 * What a packet, and the form that a photo is handed in with, ask of a picture's EXIF block (TIFF 6.0; EXIF 2.32): which way up it is, and when and where the
 * camera says it was taken. Reads within the block only; anything odd is "not said", never an error.
 */
export interface Exif {
  /** 1 to 8; 1 when not said. */
  readonly orientation: number;
  /** `2026:11:22 09:14:30` as `2026-11-22 09:14:30`, with the camera's offset where it wrote one; null when not said. */
  readonly cameraTime: string | null;
  /** WGS 84, six decimals; null when not said. */
  readonly cameraPosition: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
}

const nothing: Exif = { orientation: 1, cameraTime: null, cameraPosition: null };

const tags = {
  orientation: 0x0112,
  exifBlock: 0x8769,
  gpsBlock: 0x8825,
  taken: 0x9003,
  offsetTaken: 0x9011,
} as const;
const types = { ascii: 2, short: 3, long: 4, rational: 5 } as const;
/** EXIF 2.32, 4.6.6: hemisphere and degrees, minutes, seconds. */
const gps = { latitudeRef: 1, latitude: 2, longitudeRef: 3, longitude: 4 } as const;
const MOST_ENTRIES = 500;

interface Entry {
  readonly type: number;
  readonly count: number;
  readonly valueAt: number;
}

/** Reads a TIFF block, which is what follows `Exif\0\0`. */
export function readExif(block: Uint8Array): Exif {
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  if (view.byteLength < 8) return nothing;
  const mark = view.getUint16(0);
  if (mark !== 0x4949 && mark !== 0x4d4d) return nothing;
  const little = mark === 0x4949;
  const at16 = (at: number): number => (at + 2 <= view.byteLength ? view.getUint16(at, little) : 0);
  const at32 = (at: number): number => (at + 4 <= view.byteLength ? view.getUint32(at, little) : 0);
  if (at16(2) !== 42) return nothing;

  const entries = (from: number): Map<number, Entry> => {
    const found = new Map<number, Entry>();
    const count = Math.min(at16(from), MOST_ENTRIES);
    for (let index = 0; index < count; index += 1) {
      const at = from + 2 + index * 12;
      if (at + 12 > view.byteLength) break;
      found.set(at16(at), { type: at16(at + 2), count: at32(at + 4), valueAt: at + 8 });
    }
    return found;
  };
  const text = (entry: Entry | undefined): string | null => {
    if (entry?.type !== types.ascii || entry.count < 2 || entry.count > 64) return null;
    const from = entry.count <= 4 ? entry.valueAt : at32(entry.valueAt);
    if (from + entry.count > view.byteLength) return null;
    return String.fromCharCode(...block.subarray(from, from + entry.count - 1));
  };

  const degrees = (
    entry: Entry | undefined,
    ref: string | null,
    [plus, minus]: readonly [string, string],
    most: number,
  ): number | null => {
    if (entry?.type !== types.rational || entry.count !== 3 || (ref !== plus && ref !== minus)) return null;
    const from = at32(entry.valueAt);
    if (from + 24 > view.byteLength) return null;
    const [deg = 0, min = 0, sec = 0] = [0, 8, 16].map((step) => at32(from + step) / at32(from + step + 4));
    const value = deg + min / 60 + sec / 3600;
    // Cameras without a fix write zeros, which divide to no number.
    return Number.isFinite(value) && value <= most && deg + min + sec > 0
      ? Number(((ref === minus ? -1 : 1) * value).toFixed(6))
      : null;
  };

  const main = entries(at32(4));
  const turned = main.get(tags.orientation);
  const orientation = turned?.type === types.short ? at16(turned.valueAt) : 1;
  const pointer = main.get(tags.exifBlock);
  const inner = pointer?.type === types.long ? entries(at32(pointer.valueAt)) : new Map<number, Entry>();
  const place = main.get(tags.gpsBlock);
  const where = place?.type === types.long ? entries(at32(place.valueAt)) : new Map<number, Entry>();
  const latitudeDeg = degrees(where.get(gps.latitude), text(where.get(gps.latitudeRef)), ['N', 'S'], 90);
  const longitudeDeg = degrees(where.get(gps.longitude), text(where.get(gps.longitudeRef)), ['E', 'W'], 180);
  return {
    orientation: orientation >= 1 && orientation <= 8 ? orientation : 1,
    cameraTime: timeOf(text(inner.get(tags.taken)), text(inner.get(tags.offsetTaken))),
    cameraPosition: latitudeDeg !== null && longitudeDeg !== null ? { latitudeDeg, longitudeDeg } : null,
  };
}

function timeOf(taken: string | null, offset: string | null): string | null {
  const [, year, month, day, time] = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/.exec(taken ?? '') ?? [];
  // Cameras without a set clock write zeros.
  if (year === undefined || month === undefined || day === undefined || time === undefined || year === '0000')
    return null;
  const zone = /^[+-]\d\d:\d\d$/.test(offset ?? '') ? ` ${offset ?? ''}` : '';
  return `${year}-${month}-${day} ${time}${zone}`;
}

/** `Exif\0\0`: what an APP1 segment begins with that holds a TIFF block (EXIF 2.32, 4.7.2). */
const EXIF_MARK = [0x45, 0x78, 0x69, 0x66, 0, 0];

/** The EXIF block of a JPEG file, from its segments before the picture; null when it has none or is no JPEG. */
export function exifOfJpeg(bytes: Uint8Array): Exif | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return null;
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
    if (marker === 0xe1 && EXIF_MARK.every((byte, index) => bytes[at + 4 + index] === byte))
      return readExif(bytes.subarray(at + 10, end));
    at = end;
  }
  return null;
}
