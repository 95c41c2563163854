import * as z from 'zod';
import { instant, sha256Hex } from '../submissions/fields.ts';
import type { ExifPlace } from './pictureFile.ts';

/** Why there is no copy of a picture that could be shown. */
export const undisplayable = ['document', 'corrupt', 'hash-differs', 'too-large', 'too-slow'] as const;
export type Undisplayable = (typeof undisplayable)[number];

/** A JPEG made of a picture: upright, smaller, without the file's own tags. */
export const displayCopy = z.strictObject({
  sha256: sha256Hex,
  bytes: z.int().min(1),
  widthPx: z.int().min(1),
  heightPx: z.int().min(1),
});
export type DisplayCopy = z.infer<typeof displayCopy>;

const places = ['JPEG APP1', 'PNG eXIf', 'WebP EXIF', 'HEIF Exif'] as const satisfies readonly ExifPlace[];

/** What a picture's own data say of how it was taken; null is "not said". */
export const captureData = z.strictObject({
  /** Where the file keeps them (EXIF 2.32; ISO/IEC 23008-12); null when it holds none. */
  place: z.enum(places).nullable(),
  /** DateTimeOriginal, with OffsetTimeOriginal where the camera wrote one: its own words. */
  cameraTime: z.string().max(40).nullable(),
  cameraPosition: z
    .strictObject({
      latitudeDeg: z.number().min(-90).max(90),
      longitudeDeg: z.number().min(-180).max(180),
    })
    .nullable(),
  /** Make and Model. */
  device: z.string().max(80).nullable(),
  /** GPSDateStamp and GPSTimeStamp (UTC). */
  satelliteTime: instant.nullable(),
});
export type CaptureData = z.infer<typeof captureData>;

/** What is kept beside an original when it has arrived: its display copy, or why it has none, and what it says of itself. */
export const displayRecord = z.strictObject({
  schemaVersion: z.literal(1),
  original: sha256Hex,
  picture: z.discriminatedUnion('code', [
    z.strictObject({
      code: z.literal('made'),
      /** The original's size upright, and the turn that its EXIF asks for (1 to 8). */
      widthPx: z.int().min(1),
      heightPx: z.int().min(1),
      orientation: z.int().min(1).max(8),
      display: displayCopy,
    }),
    z.strictObject({ code: z.literal('none'), reason: z.enum(undisplayable) }),
  ]),
  /** Null for what is no picture. */
  said: captureData.nullable(),
});
export type DisplayRecord = z.infer<typeof displayRecord>;

/** Longest edge of a display copy, pixels: a printed page shows no more of it (7 inches at 230 to the inch). */
export const DISPLAY_EDGE_PX = 1600;
/** Where copies stand in the store. Begins with a letter that no hash has: one rule tells an original from a copy. */
export const COPY_PREFIX = 'shown/';
