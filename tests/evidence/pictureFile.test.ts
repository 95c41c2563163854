import { existsSync, readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readHeif } from '../../shared/evidence/heif.ts';
import { mediaTypeOf, whatItSays } from '../../shared/evidence/pictureFile.ts';
import { exifBlock } from '../support/exifBlock.ts';
import { HEIGHT, heicFile, WIDTH } from '../support/heicFile.ts';

const block = exifBlock({
  make: 'Invented',
  model: 'Invented Pocket 5',
  orientation: 6,
  taken: '2026:11:08 07:03:12',
  offset: '-05:00',
  latitude: ['N', 40, 30, 36],
  longitude: ['W', 74, 15, 18],
  satelliteDate: '2026:11:08',
  satelliteTime: [12, 3, 10.5],
});
/** By hand: 40 + 30/60 + 36/3600; 74 + 15/60 + 18/3600. */
const expected = {
  cameraTime: '2026-11-08 07:03:12 -05:00',
  cameraPosition: { latitudeDeg: 40.51, longitudeDeg: -74.255 },
  device: 'Invented Pocket 5',
  satelliteTime: '2026-11-08T12:03:10Z',
};
const plain = () => sharp({ create: { width: 8, height: 6, channels: 3, background: '#678' } });

async function asPng(): Promise<Buffer> {
  const png = await plain().png().toBuffer();
  const body = Buffer.concat([Buffer.from('eXIf', 'latin1'), block]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(block.length);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), body.length + 4);
  // After IHDR, which is 25 bytes long.
  return Buffer.concat([png.subarray(0, 33), chunk, png.subarray(33)]);
}
async function asJpeg(): Promise<Buffer> {
  const jpeg = await plain().jpeg().toBuffer();
  const marked = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), block]);
  const segment = Buffer.alloc(4);
  segment.writeUInt16BE(0xffe1);
  segment.writeUInt16BE(marked.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), segment, marked, jpeg.subarray(2)]);
}
/** Written by another library. */
const asWebp = () =>
  plain()
    .webp()
    .withExif({
      IFD0: { Make: 'Invented', Model: 'Invented Pocket 5', Orientation: '6' },
      IFD2: { DateTimeOriginal: '2026:11:08 07:03:12', OffsetTimeOriginal: '-05:00' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '40/1 30/1 36/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '74/1 15/1 18/1',
        GPSDateStamp: '2026:11:08',
        GPSTimeStamp: '12/1 3/1 10/1',
      },
    })
    .toBuffer();

describe('what a file says of its capture, with where it says it', () => {
  it.each([
    ['JPEG APP1', 'image/jpeg', asJpeg],
    ['PNG eXIf', 'image/png', asPng],
    ['WebP EXIF', 'image/webp', asWebp],
    ['HEIF Exif', 'image/heic', () => Promise.resolve(heicFile({ exif: block }))],
  ] as const)('%s', async (place, mediaType, make) => {
    const file = await make();
    expect(mediaTypeOf(file)).toBe(mediaType);
    expect(whatItSays(file)).toMatchObject({ place, exif: expected });
  });

  it('is nothing where it holds nothing', async () => {
    for (const file of [await plain().jpeg().toBuffer(), await plain().png().toBuffer(), heicFile()])
      expect(whatItSays(file)).toEqual({
        place: null,
        exif: { orientation: 1, cameraTime: null, cameraPosition: null, device: null, satelliteTime: null },
      });
  });

  it('leaves the turn of a HEIC to its own properties (ISO/IEC 23008-12): it would be turned twice', () => {
    expect(whatItSays(heicFile({ exif: block, turns: 3 })).exif.orientation).toBe(1);
    expect(readHeif(heicFile({ turns: 3 }))).toMatchObject({ widthPx: HEIGHT, heightPx: WIDTH });
    expect(readHeif(heicFile({ turns: 2 }))).toMatchObject({ widthPx: WIDTH, heightPx: HEIGHT });
  });

  it('a make that its model repeats is said once', () => {
    const named = (make: string, model: string) =>
      whatItSays(heicFile({ exif: exifBlock({ make, model }) })).exif.device;
    expect(named('NORTH', 'North P1')).toBe('North P1');
    expect(named('North', 'P1')).toBe('North P1');
    expect(named('\u0001\u0002', '  ')).toBeNull();
  });

  it.each([
    ['2026:02:31', [1, 2, 3]],
    ['2026:11:08', [24, 0, 0]],
    ['nonsense', [1, 2, 3]],
  ] as const)('satellite time %s %s is no time', (satelliteDate, satelliteTime) => {
    const exif = exifBlock({ satelliteDate, satelliteTime });
    expect(whatItSays(heicFile({ exif })).exif.satelliteTime).toBeNull();
  });
});

describe('a file that is broken or meant to harm', () => {
  const whole = heicFile({ exif: block, turns: 1 });

  it('never throws, wherever it is cut', () => {
    for (let length = 0; length < whole.length; length += 1) {
      const cut = whole.subarray(0, length);
      expect(() => [mediaTypeOf(cut), whatItSays(cut), readHeif(cut)]).not.toThrow();
    }
  });

  it('never throws, whatever a few of its bytes become', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 }),
        (changes) => {
          const odd = Buffer.from(whole);
          for (const [at, value] of changes) odd[at] = value;
          whatItSays(odd);
          readHeif(odd);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('counts of millions end at once', () => {
    const odd = Buffer.from(whole);
    const iloc = odd.indexOf('iloc');
    odd.writeUInt16BE(0xffff, iloc + 10);
    const began = performance.now();
    whatItSays(odd);
    expect(performance.now() - began).toBeLessThan(200);
  });
});

/** Files that nobody here wrote; not part of the project. Expected values by exifr 7.1.3, read once on 2026-11-25. */
const folder = new URL('../../../shared/data/photos/', import.meta.url);
describe.skipIf(!existsSync(folder))('real files (skipped where they are not on this machine)', () => {
  it.each([
    [
      'DSCN0010.jpg',
      '2008-10-22 16:28:39',
      'NIKON COOLPIX P6000',
      '2008-10-23T14:27:07Z',
      [43.467448, 11.885127],
    ],
    [
      'DSCN0012.jpg',
      '2008-10-22 16:29:49',
      'NIKON COOLPIX P6000',
      '2008-10-23T14:28:17Z',
      [43.467157, 11.885395],
    ],
    [
      'IMG_20180725_163423-tiny.jpg',
      '2018-07-25 16:34:23',
      'Google Pixel',
      '2018-07-25T14:34:23Z',
      [50.299603, 14.820294],
    ],
    ['img_1771.jpg', '2003-12-14 12:01:44', 'Canon PowerShot S40', null, null],
    [
      'issue-exifr-36.jpg',
      '2005-08-13 09:47:23',
      'EASTMAN KODAK COMPANY KODAK CX7530 ZOOM DIGITAL CAMERA',
      null,
      [-0.3713, 36.056417],
    ],
    [
      'png_with_exif_and_gps.png',
      '2003-12-14 12:01:44',
      'Canon PowerShot S40',
      '2018-07-25T14:34:23Z',
      [50.299603, 14.820294],
    ],
    ['jpg_orientation_portrait_6.jpg', null, null, null, null],
    ['noexif.jpg', null, null, null, null],
    ['RangeError_Offset_outside_bounds.jpg', null, null, null, null],
    ['jpg_invalid_image01137.jpg', null, null, null, null],
    ['heic-single.heic', null, null, null, null],
    ['heic_samplefilehub.heif', null, null, null, null],
  ] as const)('%s', (name, cameraTime, device, satelliteTime, position) => {
    const { exif } = whatItSays(readFileSync(new URL(name, folder)));
    expect(exif).toMatchObject({ cameraTime, device, satelliteTime });
    expect(
      exif.cameraPosition && [exif.cameraPosition.latitudeDeg, exif.cameraPosition.longitudeDeg],
    ).toEqual(position);
  });
});
