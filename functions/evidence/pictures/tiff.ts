/**
 * Unpacked pixels as an uncompressed TIFF file (TIFF 6.0; ICC.1, B.4 for the profile), which is how the picture library
 * takes pixels together with their color profile. Without it a phone's wide colors would be shown too pale.
 */
export function asTiff(
  rgba: Uint8Array,
  widthPx: number,
  heightPx: number,
  profile: Uint8Array | null,
): Buffer {
  const short = 3;
  const long = 4;
  const undefinedBytes = 7;
  const entries: (readonly [tag: number, type: number, count: number, value: number])[] = [
    [256, long, 1, widthPx],
    [257, long, 1, heightPx],
    [258, short, 4, 0],
    [259, short, 1, 1], // not compressed
    [262, short, 1, 2], // RGB
    [273, long, 1, 0],
    [277, short, 1, 4],
    [278, long, 1, heightPx],
    [279, long, 1, rgba.byteLength],
    [284, short, 1, 1], // pixel by pixel
    [338, short, 1, 2], // the fourth is alpha, not multiplied in
    ...(profile === null ? [] : [[34675, undefinedBytes, profile.byteLength, 0] as const]),
  ];
  const bitsAt = 8 + 2 + entries.length * 12 + 4;
  const profileAt = bitsAt + 8;
  const pixelsAt = profileAt + Math.ceil((profile?.byteLength ?? 0) / 2) * 2;
  const out = Buffer.alloc(pixelsAt + rgba.byteLength);
  out.write('II', 0, 'latin1');
  out.writeUInt16LE(42, 2);
  out.writeUInt32LE(8, 4);
  out.writeUInt16LE(entries.length, 8);
  entries.forEach(([tag, type, count, value], index) => {
    const at = 10 + index * 12;
    out.writeUInt16LE(tag, at);
    out.writeUInt16LE(type, at + 2);
    out.writeUInt32LE(count, at + 4);
    const stated = tag === 258 ? bitsAt : tag === 273 ? pixelsAt : tag === 34675 ? profileAt : value;
    if (type === short && count === 1) out.writeUInt16LE(stated, at + 8);
    else out.writeUInt32LE(stated, at + 8);
  });
  for (let channel = 0; channel < 4; channel += 1) out.writeUInt16LE(8, bitsAt + channel * 2);
  if (profile) out.set(profile, profileAt);
  out.set(rgba, pixelsAt);
  return out;
}
