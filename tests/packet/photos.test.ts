import { createHash } from 'node:crypto';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readJpeg } from '../../functions/evidence/pictures/jpeg.ts';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { inspect } from '../../functions/evidence/pictures/inspect.ts';
import {
  gatherPhotos,
  MOST_PHOTO_BYTES,
  MOST_PHOTOS,
  showing,
} from '../../functions/packets/photos/gather.ts';
import { photoBytes, photoNames } from '../../infra/local/demo/photos.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { whatItSays } from '../../shared/evidence/pictureFile.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import { demoClaim, demoContent } from '../support/demoClaim.ts';
import { everythingIn, structureOf } from '../support/pdf.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const jpeg = photoBytes(photoNames[0]);

/** An EXIF block as TIFF 6.0 and EXIF 2.32 lay it out, put together by hand. */
function exifBlock(orientation: number, taken?: string, offset?: string): Buffer {
  const ascii = (text: string): Buffer => Buffer.from(`${text}\0`, 'latin1');
  const texts = [taken, offset].filter((text) => text !== undefined).map(ascii);
  const tags = [taken === undefined ? null : 0x9003, offset === undefined ? null : 0x9011].filter(
    (tag) => tag !== null,
  );
  const mainAt = 8;
  const innerAt = mainAt + 2 + 2 * 12 + 4;
  let textAt = innerAt + 2 + tags.length * 12 + 4;
  const out = Buffer.alloc(textAt + texts.reduce((sum, text) => sum + text.length, 0));
  out.write('MM', 0, 'latin1');
  out.writeUInt16BE(42, 2);
  out.writeUInt32BE(mainAt, 4);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    out.writeUInt16BE(tag, at);
    out.writeUInt16BE(type, at + 2);
    out.writeUInt32BE(count, at + 4);
    if (type === 3) out.writeUInt16BE(value, at + 8);
    else out.writeUInt32BE(value, at + 8);
  };
  out.writeUInt16BE(2, mainAt);
  entry(mainAt + 2, 0x0112, 3, 1, orientation);
  entry(mainAt + 14, 0x8769, 4, 1, innerAt);
  out.writeUInt16BE(tags.length, innerAt);
  texts.forEach((text, index) => {
    entry(innerAt + 2 + index * 12, tags[index]!, 2, text.length, textAt);
    text.copy(out, textAt);
    textAt += text.length;
  });
  return Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), out]);
}

function withExif(block: Buffer, of: Uint8Array = jpeg): Buffer {
  const segment = Buffer.alloc(4);
  segment.writeUInt16BE(0xffe1, 0);
  segment.writeUInt16BE(block.length + 2, 2);
  return Buffer.concat([of.subarray(0, 2), segment, block, of.subarray(2)]);
}

/** A PNG of one colour, by ISO/IEC 15948. */
function png(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(height * (1 + width * 3), 0x7f);
  for (let row = 0; row < height; row += 1) rows[row * (1 + width * 3)] = 0;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const look = async (bytes: Uint8Array) =>
  (await showing(sha256(bytes), { get: async () => bytes }, 600_000)).found;
const plain = readJpeg(jpeg)!;

describe('which way up', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('orientation %i gives the size upright', async (orientation) => {
    const turned = orientation > 4;
    expect((await look(withExif(exifBlock(orientation)))).state).toMatchObject({
      code: 'included',
      widthPx: turned ? plain.heightPx : plain.widthPx,
      heightPx: turned ? plain.widthPx : plain.heightPx,
      orientation,
    });
  });

  /** Red, green, blue, white in the corners of a picture, as stored: (0, 0), (1, 0), (0, 1), (1, 1). */
  const corners = [
    [255, 0, 0],
    [0, 255, 0],
    [0, 0, 255],
    [255, 255, 255],
  ];
  // TIFF 6.0, tag 274: which visual side the 0th row and the 0th column are.
  it.each([
    [1, 'top', 'left'],
    [2, 'top', 'right'],
    [3, 'bottom', 'right'],
    [4, 'bottom', 'left'],
    [5, 'left', 'top'],
    [6, 'right', 'top'],
    [7, 'right', 'bottom'],
    [8, 'left', 'bottom'],
  ] as const)(
    'orientation %i: the first row is the %s, the first column the %s',
    async (orientation, firstRow, firstColumn) => {
      const size = 32;
      const pixels = Buffer.alloc(size * size * 3);
      for (let y = 0; y < size; y += 1)
        for (let x = 0; x < size; x += 1)
          pixels.set(corners[(x < size / 2 ? 0 : 1) + (y < size / 2 ? 0 : 2)]!, (y * size + x) * 3);
      const stored = await sharp(pixels, { raw: { width: size, height: size, channels: 3 } })
        .jpeg({ quality: 95 })
        .toBuffer();
      const turned = withExif(exifBlock(orientation), stored);
      const { jpeg: shown } = await showing(sha256(turned), { get: async () => turned }, 600_000);
      const { data } = await sharp(shown!).raw().toBuffer({ resolveWithObject: true });
      const at = (right: boolean, low: boolean): number => {
        const from = ((low ? 24 : 8) * size + (right ? 24 : 8)) * 3;
        const pixel = [...data.subarray(from, from + 3)].map((value) => (value > 127 ? 255 : 0));
        return corners.findIndex((corner) => corner.join() === pixel.join());
      };
      const sides: Record<string, number[]> = {
        top: [at(false, false), at(true, false)],
        bottom: [at(false, true), at(true, true)],
        left: [at(false, false), at(false, true)],
        right: [at(true, false), at(true, true)],
      };
      expect(sides[firstRow]!.toSorted()).toEqual([0, 1]);
      expect(sides[firstColumn]!.toSorted()).toEqual([0, 2]);
      // The copy bears no tag that would turn it again.
      expect((await sharp(shown!).metadata()).orientation).toBeUndefined();
    },
  );

  it('an orientation that does not exist counts as upright', async () => {
    expect((await look(withExif(exifBlock(9)))).state).toMatchObject({ orientation: 1 });
  });
});

describe('when the camera says it was taken', () => {
  it.each([
    ['2026:11:08 07:03:12', undefined, '2026-11-08 07:03:12'],
    ['2026:11:08 07:03:12', '-05:00', '2026-11-08 07:03:12 -05:00'],
    ['0000:00:00 00:00:00', undefined, null],
    ['not a time at all!!', undefined, null],
  ])('%s %s', async (taken, offset, expected) => {
    const file = withExif(exifBlock(1, taken, offset));
    expect((await look(file)).cameraTime).toBe(expected);
    // The device reads the same of the file as it is handed in.
    expect(whatItSays(file).exif.cameraTime).toBe(expected);
  });

  it('a block that points outside itself says nothing, and fails nothing', async () => {
    const block = exifBlock(6, '2026:11:08 07:03:12');
    for (let cut = 6; cut < block.length; cut += 1)
      expect((await look(withExif(block.subarray(0, cut)))).state.code).toBe('included');
    for (let at = 6; at < block.length; at += 1) {
      const odd = Buffer.from(block);
      odd[at] = 0xff;
      expect((await look(withExif(odd))).state.code).toBe('included');
    }
  });
});

describe('what cannot be shown is listed with its reason', () => {
  const corrupt = { code: 'not-included', reason: 'corrupt' };

  it.each([
    ['cut short', jpeg.subarray(0, jpeg.length - 500)],
    ['cut in its head', jpeg.subarray(0, 60)],
    ['not a picture', Buffer.from('<html>not found</html>')],
    ['empty of picture', Buffer.from([0xff, 0xd8, 0xff, 0xd9])],
  ])('a JPEG %s', async (_, bytes) => {
    expect((await look(bytes)).state).toEqual(corrupt);
  });

  it('a JPEG of a kind that a PDF cannot hold (lossless, SOF3)', async () => {
    const odd = Buffer.from(jpeg);
    const at = odd.indexOf(Buffer.from([0xff, 0xc0]));
    expect(at).toBeGreaterThan(0);
    odd[at + 1] = 0xc3;
    expect((await look(odd)).state).toEqual(corrupt);
  });

  it('a PNG that is whole, cut, or changed', async () => {
    const whole = png(30, 20);
    expect((await look(whole)).state).toMatchObject({
      code: 'included',
      widthPx: 30,
      heightPx: 20,
      orientation: 1,
    });
    expect((await look(whole.subarray(0, whole.length - 20))).state).toEqual(corrupt);
    const changed = Buffer.from(whole);
    changed[45] = changed[45]! ^ 1;
    expect((await look(changed)).state).toEqual(corrupt);
  });

  it('a PNG that says it is larger than anyone could show', async () => {
    const huge = png(4, 4);
    huge.writeUInt32BE(40_000, 16);
    huge.writeUInt32BE(40_000, 20);
    huge.writeUInt32BE(crc32(huge.subarray(12, 29)), 29);
    expect((await look(huge)).state).toEqual({ code: 'not-included', reason: 'too-large' });
  });

  it('bytes that do not have the hash that was recorded', async () => {
    expect(await inspect({ sha256: sha256(Buffer.from('other')) }, jpeg)).toBe('hash-differs');
  });

  const declared = (more: Partial<Exhibit>): Exhibit => ({
    sha256: sha256(jpeg),
    bytes: jpeg.length,
    mediaType: 'image/jpeg',
    takenAt: null,
    view: 'other',
    caption: null,
    ...more,
  });

  it.each([
    ['a document', { mediaType: 'application/pdf' }, 'document'],
    ['too large', { bytes: MOST_PHOTO_BYTES + 1 }, 'too-large'],
  ] as const)('%s', async (_, more, reason) => {
    const { found, shown: bytes } = await gatherPhotos([declared(more)], { get: async () => jpeg });
    expect(found.get(sha256(jpeg))?.state).toEqual({ code: 'not-included', reason });
    expect(bytes.size).toBe(0);
  });

  it('more than a packet can hold, counted as they are declared', async () => {
    const files = new Map(
      Array.from({ length: MOST_PHOTOS + 2 }, (_, index) => {
        const bytes = withExif(
          exifBlock(
            1,
            `2026:11:08 07:${String(Math.floor(index / 60)).padStart(2, '0')}:${String(index % 60).padStart(2, '0')}`,
          ),
        );
        return [sha256(bytes), bytes] as const;
      }),
    );
    const [awaited] = files.keys();
    const exhibits = [...files].map(([hash, bytes]) => declared({ sha256: hash, bytes: bytes.length }));
    const { found, shown: bytes } = await gatherPhotos(exhibits, {
      get: async (hash) => (hash === awaited ? null : (files.get(hash) ?? null)),
    });
    // The first keeps its place although it has not arrived, so that its arrival pushes out no other.
    expect(bytes.size).toBe(MOST_PHOTOS - 1);
    expect(found.get(awaited!)?.state).toEqual({ code: 'awaited' });
    expect([...found.values()].at(-1)?.state).toEqual({ code: 'not-included', reason: 'too-many' });
  });

  it('a store that does not answer is no reason to list a photo as missing', async () => {
    const down = { get: async () => Promise.reject(new StoreUnavailable('down')) };
    await expect(gatherPhotos([declared({})], down)).rejects.toThrow(StoreUnavailable);
  });
});

it('a packet with photos of every sort is built, each shown or named with its reason', async () => {
  const files = new Map<string, { bytes: Buffer | Uint8Array | null; mediaType: Exhibit['mediaType'] }>();
  const add = (
    bytes: Buffer | Uint8Array,
    mediaType: Exhibit['mediaType'] = 'image/jpeg',
    arrived = true,
  ): string => {
    const hash = sha256(bytes);
    files.set(hash, { bytes: arrived ? bytes : null, mediaType });
    return hash;
  };
  const shown = [
    ...[1, 2, 3, 4, 5, 6, 7, 8].map((orientation) =>
      add(withExif(exifBlock(orientation, '2026:11:08 07:03:12', '-05:00'))),
    ),
    add(png(40, 30), 'image/png'),
  ];
  const listed = [
    add(jpeg.subarray(0, 400)),
    add(Buffer.from('heic'), 'image/heic'),
    add(Buffer.from('%PDF-1.7'), 'application/pdf'),
    add(Buffer.from('awaited'), 'image/jpeg', false),
  ];
  const claim = demoClaim();
  const photos = [...files].map(([hash, { bytes, mediaType }], index): Exhibit => ({
    sha256: hash,
    bytes: bytes?.length ?? 7,
    mediaType,
    takenAt: new Date(Date.parse('2026-11-08T12:00:00Z') + index * 60_000).toISOString(),
    view: 'close',
    caption: `Sort ${index + 1}`,
  }));
  const submissions = claim.submissions.map((submission) =>
    submission.kind === 'repair' &&
    submission.subject.type === 'strike' &&
    submission.subject.strikeId === claim.strikeId
      ? { ...submission, body: { ...submission.body, photos } }
      : submission,
  );
  // The demo corrects that repair; the correction bears its own photos, so it is left out here.
  const { content, photos: gathered } = await demoContent(
    { ...claim, submissions: submissions.filter(({ kind }) => kind !== 'correction') },
    {},
    { get: async (hash) => files.get(hash)?.bytes ?? null },
  );
  const pdf = await renderPacket(packetDocument(content), (hash) => gathered.shown.get(hash)!);
  const figures = (await structureOf(pdf)).filter(({ role }) => role === 'Figure');
  const rings = content.tightening.joints.filter(({ used }) => used?.bolts).length;
  expect(figures).toHaveLength(shown.length + 1 + content.flowTests.length + rings);
  const text = (await everythingIn(pdf)).replaceAll(/\s+/g, ' ');
  for (const hash of [...shown, ...listed]) expect(text).toContain(hash);
  for (const words of ['damaged or cut short', 'Awaited: not included']) expect(text).toContain(words);
  expect(text).toContain('source: camera, 2026-11-08 07:03:12 -05:00');
});
