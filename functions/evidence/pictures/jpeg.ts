export interface Picture {
  /** As stored, before any turn. */
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * A JPEG file as far as a packet must know it: whether a PDF reader can decode it, how large it is, which way up.
 * Null for one that is damaged, cut short or of a kind that PDF (ISO 32000-1, 7.4.8: baseline and progressive) cannot
 * hold. The picture itself is not decoded.
 */
export function readJpeg(bytes: Uint8Array): Picture | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return null;
  let at = 2;
  let size: { widthPx: number; heightPx: number } | null = null;
  while (at + 4 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1; // Fill bytes may stand before a marker.
      continue;
    }
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      at += 2;
      continue;
    }
    const length = view.getUint16(at + 2);
    if (length < 2 || at + 2 + length > view.byteLength) return null;
    const from = at + 4;
    if (isFrame(marker)) size = frameSize(view, marker, from, length);
    if (isFrame(marker) && size === null) return null;
    if (marker === 0xda) return size !== null && endsAfter(bytes, at) ? size : null;
    at += 2 + length;
  }
  return null;
}

/** Start of frame: C0 to CF but for the tables and the extension among them. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function frameSize(
  view: DataView,
  marker: number,
  from: number,
  length: number,
): { widthPx: number; heightPx: number } | null {
  if (marker > 0xc2 || length < 8) return null;
  const [bits, heightPx, widthPx, components] = [
    view.getUint8(from),
    view.getUint16(from + 1),
    view.getUint16(from + 3),
    view.getUint8(from + 5),
  ];
  return bits === 8 && heightPx > 0 && widthPx > 0 && [1, 3, 4].includes(components)
    ? { widthPx, heightPx }
    : null;
}

/** A picture that was cut short has no end marker after its scan. */
function endsAfter(bytes: Uint8Array, scanAt: number): boolean {
  return (
    Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).lastIndexOf(Buffer.from([0xff, 0xd9])) >
    scanAt
  );
}
