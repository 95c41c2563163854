/**
 * Several arrays of numbers in one file: a line of JSON that names them, padded with spaces to a multiple of eight
 * bytes, then their bytes one behind the other, each padded likewise. Little-endian, as every machine that this runs on.
 */
const kinds = { Int32: Int32Array, Uint32: Uint32Array, Float64: Float64Array } as const;
type Packable = Int32Array | Uint32Array | Float64Array;

interface Header {
  readonly arrays: readonly {
    readonly name: string;
    readonly of: keyof typeof kinds;
    readonly length: number;
  }[];
  readonly more: Readonly<Record<string, number>>;
}

const padded = (length: number): number => Math.ceil(length / 8) * 8;
const kindOf = (array: Packable): keyof typeof kinds =>
  array instanceof Int32Array ? 'Int32' : array instanceof Uint32Array ? 'Uint32' : 'Float64';

/** @param more numbers that belong to the arrays */
export function pack(
  arrays: Readonly<Record<string, Packable>>,
  more: Readonly<Record<string, number>> = {},
): Uint8Array {
  const header: Header = {
    arrays: Object.entries(arrays).map(([name, array]) => ({
      name,
      of: kindOf(array),
      length: array.length,
    })),
    more,
  };
  const json = new TextEncoder().encode(JSON.stringify(header));
  const headLength = padded(json.length + 1);
  const total = Object.values(arrays).reduce((sum, { byteLength }) => sum + padded(byteLength), headLength);
  const bytes = new Uint8Array(total);
  bytes.fill(0x20, 0, headLength);
  bytes.set(json);
  bytes[headLength - 1] = 0x0a;
  let at = headLength;
  for (const array of Object.values(arrays)) {
    bytes.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), at);
    at += padded(array.byteLength);
  }
  return bytes;
}

/** A file that does not hold what its first line says. */
export class PackedDamaged extends Error {
  override readonly name = 'PackedDamaged';
}

/** @throws PackedDamaged for bytes that `pack` did not make */
export function unpack(given: Uint8Array): {
  readonly array: <K extends keyof typeof kinds>(name: string, of: K) => InstanceType<(typeof kinds)[K]>;
  readonly number: (name: string) => number;
} {
  // Arrays of eight-byte numbers must begin at a multiple of eight, which a slice of a larger buffer may not.
  const bytes = given.byteOffset % 8 === 0 ? given : Uint8Array.from(given);
  const headLength = bytes.indexOf(0x0a) + 1;
  if (headLength === 0) throw new PackedDamaged('there is no first line');
  let header: Header;
  try {
    header = JSON.parse(new TextDecoder().decode(bytes.subarray(0, headLength))) as Header;
  } catch (cause) {
    throw new PackedDamaged('the first line is not JSON', { cause });
  }
  const places = new Map<string, { of: string; offset: number; length: number }>();
  let at = headLength;
  for (const { name, of, length } of header.arrays) {
    places.set(name, { of, offset: bytes.byteOffset + at, length });
    at += padded(length * kinds[of].BYTES_PER_ELEMENT);
  }
  if (at !== bytes.length) throw new PackedDamaged(`${bytes.length} bytes instead of ${at}`);
  return {
    array: <K extends keyof typeof kinds>(name: string, of: K) => {
      const place = places.get(name);
      if (place?.of !== of) throw new PackedDamaged(`there are no ${of} "${name}"`);
      return new kinds[of](bytes.buffer as ArrayBuffer, place.offset, place.length) as InstanceType<
        (typeof kinds)[K]
      >;
    },
    number: (name) => {
      const value = header.more[name];
      if (typeof value !== 'number') throw new PackedDamaged(`there is no number "${name}"`);
      return value;
    },
  };
}
