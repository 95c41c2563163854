import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { createHash } from 'node:crypto';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { copyFrom } from '../../functions/evidence/displayCopies.ts';
import { makeCopy } from '../../functions/evidence/pictures/copy.ts';
import type { Undisplayable } from '../../shared/evidence/displayCopy.ts';
import { heicFile } from '../support/heicFile.ts';

/** Small files that unpack to much, or say that they do. Formats: ISO/IEC 15948 (PNG), ITU-T T.81 (JPEG), RFC 9649 (WebP). */

const shown = async (file: Uint8Array) =>
  (await copyFrom(createHash('sha256').update(file).digest('hex'), file)).record.picture;
const none = (reason: Undisplayable) => ({ code: 'none', reason });

const chunk = (type: string, data: Uint8Array): Buffer => {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(named.length + 8);
  whole.writeUInt32BE(data.length, 0);
  named.copy(whole, 4);
  whole.writeUInt32BE(crc32(named), named.length + 4);
  return whole;
};
interface PngParts {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bits: number;
  /** Unpacked, with each row's filter byte. */
  readonly rows: number;
  readonly more?: readonly Buffer[];
}
/** A grey PNG of nothing but zeros, which pack a thousand to one. */
const png = ({ widthPx, heightPx, bits, rows, more = [] }: PngParts): Buffer => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.writeUInt8(bits, 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    ...more,
    chunk('IDAT', deflateSync(Buffer.alloc(rows))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
};

describe('a PNG', () => {
  it('of 30,000 by 30,000 in 110 kB is said to be too large, and is not unpacked', async () => {
    const bomb = png({ widthPx: 30_000, heightPx: 30_000, bits: 1, rows: 30_000 * 3751 });
    expect(bomb.length).toBeLessThan(150_000);
    expect(await shown(bomb)).toEqual(none('too-large'));
  });

  it('of as many pixels as are allowed, but more bytes than are, is not unpacked either', async () => {
    const bomb = png({ widthPx: 9_999, heightPx: 9_999, bits: 16, rows: 1_000 });
    // Grey of 16 bits is 200 MB, which is allowed: that its rows are missing is seen, and no more is made room for.
    expect(await shown(bomb)).toEqual(none('corrupt'));
    const colored = Buffer.from(bomb);
    colored.writeUInt8(6, 25);
    colored.writeUInt32BE(crc32(colored.subarray(12, 29)), 29);
    expect(await shown(colored)).toEqual(none('too-large'));
  });

  it('that unpacks to far more than its size says is damaged', async () => {
    expect(await shown(png({ widthPx: 10, heightPx: 10, bits: 8, rows: 200_000_000 }))).toEqual(
      none('corrupt'),
    );
  });

  it('with a color profile or a text that unpacks to 200 MB is shown without it', async () => {
    const packed = deflateSync(Buffer.alloc(200_000_000));
    const profile = chunk('iCCP', Buffer.concat([Buffer.from('p\0\0', 'latin1'), packed]));
    const text = chunk('zTXt', Buffer.concat([Buffer.from('Comment\0\0', 'latin1'), packed]));
    const file = png({ widthPx: 10, heightPx: 10, bits: 8, rows: 110, more: [profile, text] });
    const picture = await shown(file);
    expect(picture).toMatchObject({ code: 'made', widthPx: 10, heightPx: 10 });
    expect(picture.code === 'made' && picture.display.bytes).toBeLessThan(10_000);
  });
});

describe('a JPEG', () => {
  const small = (): Promise<Buffer> =>
    sharp({ create: { width: 64, height: 64, channels: 3, background: '#a33' } })
      .jpeg()
      .toBuffer();
  const claiming = async (widthPx: number, heightPx: number): Promise<Buffer> => {
    const file = await small();
    const frame = file.indexOf(Buffer.from([0xff, 0xc0]));
    file.writeUInt16BE(heightPx, frame + 5);
    file.writeUInt16BE(widthPx, frame + 7);
    return file;
  };

  it('that claims 65,500 by 65,500 is too large', async () => {
    expect(await shown(await claiming(65_500, 65_500))).toEqual(none('too-large'));
  });

  it('that claims more than it holds, within what is allowed, costs a copy and no more', async () => {
    // Its end marker is there, so the decoder fills up with grey, as browsers do (T.81 leaves errors to the decoder).
    const picture = await shown(await claiming(9_000, 9_000));
    expect(picture).toMatchObject({ code: 'made', display: { widthPx: 1600, heightPx: 1600 } });
  });
});

it('a WebP that claims 16,383 by 16,383 is too large', async () => {
  const file = await sharp({ create: { width: 16, height: 16, channels: 3, background: '#a33' } })
    .webp({ lossless: true })
    .toBuffer();
  // After the signature byte come 14 bits of width less one and 14 of height less one (RFC 9649, 3.4).
  const at = file.indexOf('VP8L') + 9;
  file.writeUInt32LE((16_382 | (16_382 << 14)) >>> 0, at);
  expect(await shown(file)).toEqual(none('too-large'));
});

it('a HEIC that claims 40,000 by 40,000 is too large', async () => {
  expect(await shown(heicFile({ claims: [40_000, 40_000] }))).toEqual(none('too-large'));
});

it('what is no picture of ours is not handed to the library, whatever it is called', async () => {
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="60000" height="60000"><image href="file:///etc/passwd"/></svg>`;
  const gif = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#fff' } })
    .gif()
    .toBuffer();
  const tiff = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#fff' } })
    .tiff()
    .toBuffer();
  for (const file of [Buffer.from(drawing), gif, tiff]) expect(await shown(file)).toEqual(none('corrupt'));
});

it('a picture that takes too long is given up, and said to be slow and not damaged', async () => {
  // Interlaced, so that all of it is unpacked before the first row is known: more than a second, and one is given.
  const slow = await sharp({ create: { width: 9_999, height: 9_999, channels: 3, background: '#888' } })
    .png({ progressive: true })
    .toBuffer();
  // Four that never rest on each processor leave a fifth of it, so that no machine is quick enough.
  const busy = Array.from(
    { length: 4 * availableParallelism() },
    () => new Worker('for (;;);', { eval: true }),
  );
  try {
    expect(await makeCopy(slow, 600_000, { limitMs: 1 })).toBe('too-slow');
  } finally {
    await Promise.all(busy.map((each) => each.terminate()));
  }
});
