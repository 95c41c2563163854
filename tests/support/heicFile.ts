/**
 * HEIC files put together box by box (ISO/IEC 23008-12 in ISO/IEC 14496-12), so that each trait can be set alone. The
 * picture inside is 128 by 64, a quarter each of red, green, blue and white, drawn here and encoded once as HEVC by
 * another program (heif-enc 1.15.1 with x265 3.5); its decoder settings and its one slice follow.
 */
const decoderSettings = Buffer.from(
  'AQNwAAAAAAAAAAAAHvAA/P34+AAADwMgAAEAGEABDAH//wNwAAADAJAAAAMAAAMAHroCQCEAAQArQgEBA3AAAAMAkAAAAwAAAwAeoBAgQWW6kkprm4EBAwIAAAMAAgAAAwACECIAAQAHRAHBcrAiQA==',
  'base64',
);
const slice = Buffer.from(
  'AAAARygBrxOA5qhw0//+JpR//Trnh+nl0tCWf/3Tewv83KF/8eM1c//0ptTArH45yd/exr/86frcBGB/5Hbp/5oHMOeMI+H+pu9w',
  'base64',
);
export const WIDTH = 128;
export const HEIGHT = 64;

export interface HeicTraits {
  /** Quarter turns counter-clockwise (`irot`). */
  readonly turns?: number;
  /** A TIFF block, for an Exif item. */
  readonly exif?: Uint8Array;
  readonly profile?: Uint8Array;
  /** What the file claims, whatever is inside. */
  readonly claims?: readonly [widthPx: number, heightPx: number];
}

const u8 = (...values: number[]): Buffer => Buffer.from(values);
const u16 = (value: number): Buffer => u8(value >> 8, value & 255);
const u32 = (value: number): Buffer => {
  const out = Buffer.alloc(4);
  out.writeUInt32BE(value);
  return out;
};
const text = (value: string): Buffer => Buffer.from(value, 'latin1');
const box = (type: string, ...parts: readonly Uint8Array[]): Buffer => {
  const body = Buffer.concat(parts);
  return Buffer.concat([u32(body.length + 8), text(type), body]);
};
const fullBox = (type: string, version: number, ...parts: readonly Uint8Array[]): Buffer =>
  box(type, u8(version, 0, 0, 0), ...parts);

export function heicFile({ turns, exif, profile, claims = [WIDTH, HEIGHT] }: HeicTraits = {}): Buffer {
  const properties = [
    box('hvcC', decoderSettings),
    fullBox('ispe', 0, u32(claims[0]), u32(claims[1])),
    fullBox('pixi', 0, u8(3, 8, 8, 8)),
    ...(turns === undefined ? [] : [box('irot', u8(turns))]),
    ...(profile === undefined ? [] : [box('colr', text('prof'), profile)]),
  ];
  // An Exif item says first how far in its TIFF block begins: here after the six bytes that JPEG puts before one.
  const exifItem = exif === undefined ? null : Buffer.concat([u32(6), text('Exif\0\0'), exif]);
  const entries = [
    fullBox('infe', 2, u16(1), u16(0), text('hvc1'), u8(0)),
    ...(exifItem ? [fullBox('infe', 2, u16(2), u16(0), text('Exif'), u8(0))] : []),
  ];
  const meta = (dataAt: number): Buffer => {
    const place = (id: number, at: number, length: number): Buffer =>
      Buffer.concat([u16(id), u16(0), u16(1), u32(at), u32(length)]);
    return fullBox(
      'meta',
      0,
      fullBox('hdlr', 0, u32(0), text('pict'), Buffer.alloc(12), u8(0)),
      fullBox('pitm', 0, u16(1)),
      fullBox(
        'iloc',
        0,
        u8(0x44, 0x00),
        u16(exifItem ? 2 : 1),
        place(1, dataAt, slice.length),
        ...(exifItem ? [place(2, dataAt + slice.length, exifItem.length)] : []),
      ),
      fullBox('iinf', 0, u16(entries.length), ...entries),
      ...(exifItem ? [fullBox('iref', 0, box('cdsc', u16(2), u16(1), u16(1)))] : []),
      box(
        'iprp',
        box('ipco', ...properties),
        fullBox(
          'ipma',
          0,
          u32(1),
          u16(1),
          u8(properties.length),
          // The decoder's settings must be understood.
          u8(...properties.map((_, index) => (index === 0 ? 0x80 : 0) | (index + 1))),
        ),
      ),
    );
  };
  const type = box('ftyp', text('heic'), u32(0), text('mif1'), text('heic'));
  const dataAt = type.length + meta(0).length + 8;
  return Buffer.concat([type, meta(dataAt), box('mdat', slice, ...(exifItem ? [exifItem] : []))]);
}
