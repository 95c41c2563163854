/** An EXIF block as TIFF 6.0 and EXIF 2.32 lay it out, put together by hand: little-endian, three directories. */
export interface ExifTraits {
  readonly make?: string;
  readonly model?: string;
  readonly orientation?: number;
  readonly taken?: string;
  readonly offset?: string;
  /** Degrees, minutes and seconds with the hemisphere. */
  readonly latitude?: readonly ['N' | 'S', number, number, number];
  readonly longitude?: readonly ['E' | 'W', number, number, number];
  readonly satelliteDate?: string;
  readonly satelliteTime?: readonly [number, number, number];
}

type Entry = readonly [tag: number, type: number, count: number, value: Buffer];

const ascii = (tag: number, text: string): Entry => [
  tag,
  2,
  text.length + 1,
  Buffer.from(`${text}\0`, 'latin1'),
];
const short = (tag: number, value: number): Entry => {
  const out = Buffer.alloc(4);
  out.writeUInt16LE(value);
  return [tag, 3, 1, out];
};
const long = (tag: number, value: number): Entry => {
  const out = Buffer.alloc(4);
  out.writeUInt32LE(value);
  return [tag, 4, 1, out];
};
/** Each as hundredths. */
const fractions = (tag: number, values: readonly number[]): Entry => {
  const out = Buffer.alloc(values.length * 8);
  values.forEach((value, index) => {
    out.writeUInt32LE(Math.round(value * 100), index * 8);
    out.writeUInt32LE(100, index * 8 + 4);
  });
  return [tag, 5, values.length, out];
};

function directory(entries: readonly Entry[], at: number): Buffer {
  const head = Buffer.alloc(2 + entries.length * 12 + 4);
  head.writeUInt16LE(entries.length, 0);
  const beyond: Buffer[] = [];
  let next = at + head.length;
  entries.forEach(([tag, type, count, value], index) => {
    const to = 2 + index * 12;
    head.writeUInt16LE(tag, to);
    head.writeUInt16LE(type, to + 2);
    head.writeUInt32LE(count, to + 4);
    if (value.length <= 4) value.copy(head, to + 8);
    else {
      head.writeUInt32LE(next, to + 8);
      beyond.push(value);
      next += value.length;
    }
  });
  return Buffer.concat([head, ...beyond]);
}

export function exifBlock(traits: ExifTraits): Buffer {
  const some = <T>(value: T | undefined, make: (value: T) => readonly Entry[]): readonly Entry[] =>
    value === undefined ? [] : make(value);
  const capture = [
    ...some(traits.taken, (text) => [ascii(0x9003, text)]),
    ...some(traits.offset, (text) => [ascii(0x9011, text)]),
  ];
  const place = [
    ...some(traits.latitude, ([ref, ...dms]) => [ascii(1, ref), fractions(2, dms)]),
    ...some(traits.longitude, ([ref, ...dms]) => [ascii(3, ref), fractions(4, dms)]),
    ...some(traits.satelliteTime, (time) => [fractions(7, time)]),
    ...some(traits.satelliteDate, (date) => [ascii(0x1d, date)]),
  ];
  const main = (captureAt: number, placeAt: number): Entry[] => [
    ...some(traits.make, (text) => [ascii(0x010f, text)]),
    ...some(traits.model, (text) => [ascii(0x0110, text)]),
    ...some(traits.orientation, (turn) => [short(0x0112, turn)]),
    long(0x8769, captureAt),
    long(0x8825, placeAt),
  ];
  const captureAt = 8 + directory(main(0, 0), 8).length;
  const inner = directory(capture, captureAt);
  const placeAt = captureAt + inner.length;
  const head = Buffer.from([0x49, 0x49, 42, 0, 8, 0, 0, 0]);
  return Buffer.concat([head, directory(main(captureAt, placeAt), 8), inner, directory(place, placeAt)]);
}
