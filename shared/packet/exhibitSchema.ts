import * as z from 'zod';
import { captureData, displayCopy } from '../evidence/displayCopy.ts';
import { exhibit, instant, sha256Hex, submissionId } from '../submissions/fields.ts';
import { documentKinds } from '../submissions/forms/documents.ts';

/** Photos and papers as a packet lists them. */
const text = z.string().min(1).max(400);

/** Why a photo is listed and not shown. Words: `packet.photo.<code>`. */
export const photoReasons = [
  'unsupported-type',
  'document',
  'corrupt',
  'hash-differs',
  'too-large',
  'too-many',
  'too-slow',
] as const;
export type PhotoReason = (typeof photoReasons)[number];

/** Why a paper is listed and not in the packet. Words: `packet.paper.<code>`. */
export const paperReasons = [
  'unsupported-type',
  'corrupt',
  'hash-differs',
  'too-large',
  'too-many',
  'too-many-pages',
  'password',
  'no-pages',
  'too-slow',
] as const;
export type PaperReason = (typeof paperReasons)[number];

/** A picture that is shown. Size upright, after the turn that the file asks for (EXIF orientation 1 to 8). */
const picture = z.strictObject({
  code: z.literal('included'),
  widthPx: z.int().min(1),
  heightPx: z.int().min(1),
  orientation: z.int().min(1).max(8),
  /** The copy that the PDF shows: upright, smaller, a JPEG of these very bytes. */
  display: displayCopy,
});
const awaited = z.strictObject({ code: z.literal('awaited') });

const declared = {
  /** As the packet and the archive call it: `photo-01`, `paper-01`. */
  exhibitId: z.string().regex(/^(photo|paper)-\d{2,4}$/),
  sha256: sha256Hex,
  bytes: exhibit.shape.bytes,
  mediaType: exhibit.shape.mediaType,
  /** When the server recorded the hash: from then on the bytes could not change. */
  hashRecordedAt: instant,
  /** When the bytes came to the store, by its clock, to the second; null: awaited, or the store did not tell. */
  bytesArrivedAt: instant.nullable().default(null),
  submissionId,
};

export const packetPhoto = z.strictObject({
  ...declared,
  view: exhibit.shape.view,
  caption: text.nullable(),
  /** By the device's clock, as it declared it; null when it did not. */
  takenAt: instant.nullable(),
  /** The camera's own words in the file (EXIF), zone included where it wrote one; null when it wrote none. */
  cameraTime: captureData.shape.cameraTime,
  /** Where the camera says it was (EXIF GPS, WGS 84); null when it wrote nothing. */
  cameraPosition: captureData.shape.cameraPosition,
  /** What else the file says of its capture; null: a packet of before, or a file that says nothing that can be read. */
  camera: captureData.pick({ place: true, device: true, satelliteTime: true }).nullable().default(null),
  /** The phone's clock when it wrote the file, and when the file was chosen; null: the device did not tell. */
  fileWrittenAt: instant.nullable().default(null),
  chosenAt: instant.nullable().default(null),
  state: z.discriminatedUnion('code', [
    picture,
    awaited,
    z.strictObject({ code: z.literal('not-included'), reason: z.enum(photoReasons) }),
  ]),
});

export const packetPaper = z.strictObject({
  ...declared,
  what: z.enum(documentKinds),
  title: text,
  /** The number on the paper. */
  number: z.string().min(1).max(60).nullable(),
  state: z.discriminatedUnion('code', [
    /** Its pages follow, scaled to the packet's. */
    z.strictObject({ code: z.literal('pages'), pages: z.int().min(1) }),
    picture,
    awaited,
    z.strictObject({ code: z.literal('not-included'), reason: z.enum(paperReasons) }),
  ]),
});
export type PacketPaper = z.infer<typeof packetPaper>;
