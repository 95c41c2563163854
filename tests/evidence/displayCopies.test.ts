import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { displayCopyOf } from '../../functions/evidence/displayCopies.ts';
import { asTiff } from '../../functions/evidence/pictures/tiff.ts';
import { gatherPhotos } from '../../functions/packets/photos/gather.ts';
import { createCopyStore } from '../../functions/stores/evidence/copies.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import { exifBlock } from '../support/exifBlock.ts';
import { HEIGHT, heicFile, WIDTH } from '../support/heicFile.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Originals in memory with their copies; counts how often an original is read. */
function world(...files: readonly Uint8Array[]) {
  const originals = new Map(files.map((file) => [sha256(file), file]));
  const read: string[] = [];
  const objects = memoryObjects();
  const deps = {
    copies: createCopyStore(objects),
    get: async (hash: string) => {
      read.push(hash);
      return originals.get(hash) ?? null;
    },
  };
  return { deps, read, objects, originals };
}
const showing = async (file: Uint8Array) => {
  const copy = await displayCopyOf(world(file).deps, sha256(file));
  if (!copy) throw new Error('no copy');
  return copy;
};

const colors: Record<string, string> = {
  '255,0,0': 'red',
  '0,255,0': 'green',
  '0,0,255': 'blue',
  '255,255,255': 'white',
};
/** The colors in the corners: above left, above right, below left, below right. */
async function corners(jpeg: Uint8Array): Promise<string[]> {
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
  return [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.25, 0.75],
    [0.75, 0.75],
  ].map(([x = 0, y = 0]) => {
    const at = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * 3;
    const key = [...data.subarray(at, at + 3)].map((value) => (value > 127 ? 255 : 0)).join();
    return colors[key] ?? key;
  });
}

describe('a HEIC photo', () => {
  // ISO/IEC 23008-12, 6.5.10: quarter turns counter-clockwise. What was above right is above left after one.
  it.each([
    [0, WIDTH, HEIGHT, ['red', 'green', 'blue', 'white']],
    [1, HEIGHT, WIDTH, ['green', 'white', 'red', 'blue']],
    [2, WIDTH, HEIGHT, ['white', 'blue', 'green', 'red']],
    [3, HEIGHT, WIDTH, ['blue', 'red', 'white', 'green']],
  ] as const)('turned %i quarters stands upright, %i by %i', async (turns, widthPx, heightPx, expected) => {
    // An EXIF orientation beside it changes nothing: the picture would be turned twice.
    const file = heicFile({ turns, exif: exifBlock({ orientation: 6, taken: '2026:11:08 07:03:12' }) });
    const { record, jpeg } = await showing(file);
    expect(record.picture).toMatchObject({ code: 'made', widthPx, heightPx, orientation: 1 });
    expect(record.said).toMatchObject({ place: 'HEIF Exif', cameraTime: '2026-11-08 07:03:12' });
    const shown = await sharp(jpeg!).metadata();
    expect([shown.format, shown.width, shown.height, shown.exif]).toEqual([
      'jpeg',
      widthPx,
      heightPx,
      undefined,
    ]);
    expect(await corners(jpeg!)).toEqual(expected);
  });

  it('that claims more than a phone can take is not unpacked', async () => {
    const { record, jpeg } = await showing(heicFile({ claims: [40_000, 40_000] }));
    expect(record.picture).toEqual({ code: 'none', reason: 'too-large' });
    expect(jpeg).toBeNull();
  });

  it('that is cut or damaged is said to be so, and brings nothing down', async () => {
    const whole = heicFile();
    const damaged = Buffer.from(whole);
    damaged.fill(0xff, whole.length - 60);
    for (const file of [
      whole.subarray(0, whole.length - 70),
      whole.subarray(0, 60),
      heicFile({ claims: [0, 0] }),
    ])
      expect((await showing(file)).record.picture).toEqual({ code: 'none', reason: 'corrupt' });
    expect(['made', 'none']).toContain((await showing(damaged)).record.picture.code);
    expect((await showing(whole)).record.picture.code).toBe('made');
  });

  it('that takes too long is tried again another time', async () => {
    const file = heicFile();
    const { deps } = world(file);
    const late = await displayCopyOf({ ...deps, pictures: { limitMs: 1 } }, sha256(file));
    expect(late?.record.picture).toEqual({ code: 'none', reason: 'too-slow' });
    expect((await displayCopyOf(deps, sha256(file)))?.record.picture.code).toBe('made');
  });
});

/** The Display P3 profile that the picture library carries. */
async function displayP3(): Promise<Buffer> {
  const png = await sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } })
    .withIccProfile('p3')
    .png()
    .toBuffer();
  return (await sharp(png).metadata()).icc!;
}

it('a HEIC’s own profile is followed: one whose red and blue are exchanged (ICC.1, 9.2) exchanges them', async () => {
  const profile = Buffer.from(await displayP3());
  const [red, blue] = [profile.indexOf('rXYZ'), profile.indexOf('bXYZ')];
  profile.write('bXYZ', red, 'latin1');
  profile.write('rXYZ', blue, 'latin1');
  const { jpeg } = await showing(heicFile({ profile }));
  expect(await corners(jpeg!)).toEqual(['blue', 'green', 'red', 'white']);
});

it('wide colors are shown as they were: Display P3 into sRGB', async () => {
  const icc = await displayP3();
  const pixel = [180, 110, 80] as const;
  const size = 16;
  const rgba = Buffer.alloc(size * size * 4);
  for (let at = 0; at < rgba.length; at += 4) rgba.set([...pixel, 255], at);
  const { data } = await sharp(asTiff(rgba, size, size, icc))
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  // Both have the transfer curve of IEC 61966-2-1; the matrix is that of their primaries and D65 (SMPTE EG 432-1, from memory).
  const linear = pixel.map((value) =>
    value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4,
  );
  const matrix = [
    [1.22494, -0.22494, 0],
    [-0.04206, 1.04206, 0],
    [-0.01964, -0.07864, 1.09827],
  ];
  const expected = matrix.map((row) => {
    const value = row.reduce((sum, factor, index) => sum + factor * linear[index]!, 0);
    return 255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055);
  });
  for (const channel of [0, 1, 2]) expect(Math.abs(data[channel]! - expected[channel]!)).toBeLessThan(3);
});

describe('made once', () => {
  const file = heicFile();
  const hash = sha256(file);

  it('the second reader gets the first one’s, and the original is not read again', async () => {
    const { deps, read } = world(file);
    const first = await displayCopyOf(deps, hash);
    expect(await displayCopyOf(deps, hash)).toEqual(first);
    expect(read).toEqual([hash]);
  });

  it('of two at the same time both get the one that is kept', async () => {
    const { deps } = world(file);
    const [a, b] = await Promise.all([displayCopyOf(deps, hash), displayCopyOf(deps, hash)]);
    expect(a).toEqual(b);
  });

  it('a copy whose maker stopped before its record stands, and the record is of it', async () => {
    const { deps, objects } = world(file);
    const made = await displayCopyOf(world(file).deps, hash);
    const other = await sharp(made!.jpeg!).jpeg({ quality: 20 }).toBuffer();
    await objects.put(`shown/1/${hash.slice(0, 2)}/${hash}.jpg`, other, { contentType: 'image/jpeg' });
    const kept = await displayCopyOf(deps, hash);
    expect(Buffer.from(kept!.jpeg!).equals(other)).toBe(true);
    expect(kept!.record.picture).toMatchObject({ display: { sha256: sha256(other), bytes: other.length } });
  });

  it('leaves the original as it came', async () => {
    const { deps, originals } = world(file);
    await displayCopyOf(deps, hash);
    expect(sha256(originals.get(hash)!)).toBe(hash);
  });

  it('is not there before the original is', async () => {
    expect(await displayCopyOf(world().deps, hash)).toBeNull();
  });
});

describe('a packet takes the copies', () => {
  const photo = (bytes: Uint8Array, mediaType: Exhibit['mediaType']): Exhibit => ({
    sha256: sha256(bytes),
    bytes: bytes.length,
    mediaType,
    takenAt: null,
    view: 'close',
    caption: null,
  });

  it('and makes those whose event was lost, once; the same input gives the same copies', async () => {
    const heic = heicFile({ turns: 1 });
    const { deps, read } = world(heic);
    const exhibits = [photo(heic, 'image/heic')];
    const first = await gatherPhotos(exhibits, deps);
    const second = await gatherPhotos(exhibits, deps);
    expect(read).toEqual([sha256(heic)]);
    expect(second).toEqual(first);
    expect(first.found.get(sha256(heic))).toMatchObject({
      state: { code: 'included' },
      camera: { place: null },
    });
    expect(first.shown.size).toBe(1);
  });

  it('smaller ones where there are many, without another look at the original', async () => {
    const noise = await sharp({
      create: {
        width: 1200,
        height: 900,
        channels: 3,
        background: '#888',
        noise: { type: 'gaussian', mean: 128, sigma: 40 },
      },
    })
      .jpeg({ quality: 95 })
      .toBuffer();
    const { deps, read } = world(noise);
    const exhibits = [photo(noise, 'image/jpeg')];
    const full = await gatherPhotos(exhibits, deps);
    const small = await gatherPhotos(exhibits, deps, { mostBytes: 60_000 });
    const again = await gatherPhotos(exhibits, deps, { mostBytes: 60_000 });
    const bytesOf = ({ shown }: typeof full): number => shown.get(sha256(noise))!.byteLength;
    expect(bytesOf(full)).toBeGreaterThan(60_000);
    expect(bytesOf(small)).toBeLessThanOrEqual(60_000);
    expect(again).toEqual(small);
    expect(read).toHaveLength(1);
  });

  it('a JPEG that claims more pixels than anyone could show, or a PDF under a photo’s name, is listed with why', async () => {
    const huge = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#fff' } })
      .jpeg()
      .toBuffer();
    const frame = huge.indexOf(Buffer.from([0xff, 0xc0]));
    huge.writeUInt16BE(65_500, frame + 5);
    huge.writeUInt16BE(65_500, frame + 7);
    const pdf = Buffer.from('%PDF-1.7\nno more');
    const { deps } = world(huge, pdf);
    const { found } = await gatherPhotos([photo(huge, 'image/jpeg'), photo(pdf, 'image/png')], deps);
    expect([...found.values()].map(({ state }) => state)).toEqual([
      { code: 'not-included', reason: 'too-large' },
      { code: 'not-included', reason: 'document' },
    ]);
  });
});

const folder = new URL('../../../shared/data/photos/', import.meta.url);
describe.skipIf(!existsSync(folder))('real files (skipped where they are not on this machine)', () => {
  const names = existsSync(folder) ? readdirSync(folder) : [];
  it.each(names)('%s', async (name) => {
    const { record, jpeg } = await showing(readFileSync(new URL(name, folder)));
    if (record.picture.code === 'none') {
      expect([
        'RangeError_Offset_outside_bounds.jpg',
        'jpg_invalid_image01137.jpg',
        'issue-exifr-36.jpg',
      ]).toContain(name);
      expect(record.picture.reason).toBe('corrupt');
    } else {
      const { width, height } = await sharp(jpeg!).metadata();
      expect(Math.max(width, height)).toBeLessThanOrEqual(1600);
      expect([width, height]).toEqual([record.picture.display.widthPx, record.picture.display.heightPx]);
    }
  });
});
