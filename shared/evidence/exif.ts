/**
 * What a packet, and the form that a photo is handed in with, ask of a picture's EXIF block (TIFF 6.0; EXIF 2.32): which
 * way up it is, when and where the camera says it was taken, and which camera. Reads within the block only; anything odd
 * is "not said", never an error.
 */
export interface Exif {
  /** 1 to 8; 1 when not said. */
  readonly orientation: number;
  /** `2026:11:22 09:14:30` as `2026-11-22 09:14:30`, with the camera's offset where it wrote one; null when not said. */
  readonly cameraTime: string | null;
  /** WGS 84, six decimals; null when not said. */
  readonly cameraPosition: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
  /** Make and Model, the make once; null when neither is said. */
  readonly device: string | null;
  /** GPSDateStamp and GPSTimeStamp, which are UTC, as an instant to the second; null when not said. */
  readonly satelliteTime: string | null;
}

/** What a file says that has no such block. */
export const noExif: Exif = {
  orientation: 1,
  cameraTime: null,
  cameraPosition: null,
  device: null,
  satelliteTime: null,
};

const tags = {
  make: 0x010f,
  model: 0x0110,
  orientation: 0x0112,
  exifBlock: 0x8769,
  gpsBlock: 0x8825,
  taken: 0x9003,
  offsetTaken: 0x9011,
} as const;
const types = { ascii: 2, short: 3, long: 4, rational: 5 } as const;
/** EXIF 2.32, 4.6.6: hemisphere and degrees, minutes, seconds; the receiver's time of day and date, in UTC. */
const gps = { latitudeRef: 1, latitude: 2, longitudeRef: 3, longitude: 4, time: 7, date: 0x1d } as const;
const MOST_ENTRIES = 500;

interface Entry {
  readonly type: number;
  readonly count: number;
  readonly valueAt: number;
}

/** Reads a TIFF block, which is what follows `Exif\0\0`. */
export function readExif(block: Uint8Array): Exif {
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  if (view.byteLength < 8) return noExif;
  const mark = view.getUint16(0);
  if (mark !== 0x4949 && mark !== 0x4d4d) return noExif;
  const little = mark === 0x4949;
  const at16 = (at: number): number => (at + 2 <= view.byteLength ? view.getUint16(at, little) : 0);
  const at32 = (at: number): number => (at + 4 <= view.byteLength ? view.getUint32(at, little) : 0);
  if (at16(2) !== 42) return noExif;

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
    // The count includes a closing NUL; some cameras write none.
    return String.fromCharCode(...block.subarray(from, from + entry.count)).replace(/\0.*$/s, '');
  };

  /** Three fractions in a row: degrees, minutes and seconds, or hours, minutes and seconds. */
  const three = (entry: Entry | undefined): readonly [number, number, number] | null => {
    if (entry?.type !== types.rational || entry.count !== 3) return null;
    const from = at32(entry.valueAt);
    if (from + 24 > view.byteLength) return null;
    const [a = NaN, b = NaN, c = NaN] = [0, 8, 16].map((step) => at32(from + step) / at32(from + step + 4));
    // Cameras without a fix write zeros, which divide to no number.
    return [a, b, c].every(Number.isFinite) ? [a, b, c] : null;
  };
  const degrees = (
    entry: Entry | undefined,
    ref: string | null,
    [plus, minus]: readonly [string, string],
    most: number,
  ): number | null => {
    if (ref !== plus && ref !== minus) return null;
    const [deg, min, sec] = three(entry) ?? [0, 0, 0];
    const value = deg + min / 60 + sec / 3600;
    return value <= most && deg + min + sec > 0
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
    device: deviceOf(text(main.get(tags.make)), text(main.get(tags.model))),
    satelliteTime: satelliteTimeOf(text(where.get(gps.date)), three(where.get(gps.time))),
  };
}

/** Printable characters in one line: a packet and a screen show it, and a file can hold anything. */
const plain = (text: string | null): string =>
  (text ?? '')
    .replaceAll(/[^\x20-\x7e\xa0-\xff]/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();

function deviceOf(make: string | null, model: string | null): string | null {
  const [maker, name] = [plain(make), plain(model)];
  // Many models begin with their make.
  const whole = name.toLowerCase().startsWith(maker.toLowerCase()) ? name : `${maker} ${name}`.trim();
  return whole === '' ? null : whole.slice(0, 80);
}

function satelliteTimeOf(date: string | null, time: readonly [number, number, number] | null): string | null {
  const [, year, month, day] = /^(\d{4})[:-](\d\d)[:-](\d\d)$/.exec(plain(date)) ?? [];
  if (time === null || year === undefined || month === undefined || day === undefined) return null;
  const [hour, minute, second] = time.map(Math.floor) as [number, number, number];
  if (hour > 23 || minute > 59 || second > 59) return null;
  const pad = (value: number): string => String(value).padStart(2, '0');
  const at = new Date(`${year}-${month}-${day}T${pad(hour)}:${pad(minute)}:${pad(second)}Z`);
  // A date that does not exist, such as a 31st of February, is read by no clock.
  return !Number.isNaN(at.getTime()) && at.getUTCDate() === Number(day)
    ? at.toISOString().replace('.000Z', 'Z')
    : null;
}

function timeOf(taken: string | null, offset: string | null): string | null {
  const [, year, month, day, time] = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/.exec(taken ?? '') ?? [];
  // Cameras without a set clock write zeros.
  if (year === undefined || month === undefined || day === undefined || time === undefined || year === '0000')
    return null;
  const zone = /^[+-]\d\d:\d\d$/.test(offset ?? '') ? ` ${offset ?? ''}` : '';
  return `${year}-${month}-${day} ${time}${zone}`;
}
