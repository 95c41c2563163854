import * as z from 'zod';
import { MOST_EXHIBIT_BYTES } from '../evidence/limits.ts';
import { problemIssue } from '../problems/fromZod.ts';
import { relations } from '../problems/relations.ts';

/** Field types that more than one form uses. Ranges are what the trade could plausibly meet, with room. */

/** Years that a record of a hydrant can speak of; another is a slip of the pen. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

/** A UTC instant, ISO 8601 with `Z`, e.g. `2026-03-04T02:10:00Z`. */
export const instant = z.iso.datetime().superRefine((at, ctx) => {
  const year = Number(at.slice(0, 4));
  if (year < FIRST_YEAR || year > LAST_YEAR)
    ctx.addIssue(problemIssue('year-out-of-range', [], { from: String(FIRST_YEAR), to: String(LAST_YEAR) }));
});

/** UUID version 7 (RFC 9562), lower case: made on the device, sorts by time of making. */
export const uuidV7 = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, { error: 'uuid-v7' });

export const submissionId = uuidV7;

/** SHA-256 of the exact bytes, 64 lower-case hex digits (FIPS 180-4). */
export const sha256Hex = z.string().regex(/^[0-9a-f]{64}$/);

/** An id that a person or another system chose (worker, valve, gauge, machine): no control characters. */
export const chosenId = z
  .string()
  .trim()
  .min(1)
  .max(64)
  .regex(/^[^\p{Cc}]+$/u);

export const shortText = z.string().trim().min(1).max(200);
export const longText = z.string().trim().min(1).max(4000);

/** WGS 84 decimal degrees; accuracy is the radius the device states, metres. */
export const position = z.strictObject({
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  accuracyM: z.number().min(0).max(100_000).nullable(),
});

/** What a crew can honestly say of something it looked at. */
export const seen = z.enum(['yes', 'no', 'unknown']);

/** An interval of work, closed by its end; a submission never carries an open interval. */
export const interval = z.strictObject({ from: instant, to: instant }).check(
  relations(({ from, to }, ctx) => {
    if (Date.parse(to) <= Date.parse(from)) ctx.addIssue(problemIssue('interval-ends-before-start', ['to']));
  }),
);

export const cents = z.number().int().min(0).max(100_000_000_00);

/**
 * A photo or document declared by its hash. The bytes come later, by another road; until they do the exhibit is
 * "awaited". A declaration without bytes is still evidence that somebody had the photo.
 */
export const exhibit = z.strictObject({
  sha256: sha256Hex,
  bytes: z.number().int().min(1).max(MOST_EXHIBIT_BYTES),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/heic', 'image/heif', 'image/webp', 'application/pdf']),
  takenAt: instant.nullable(),
  view: z.enum(['overall', 'mid', 'close', 'scale', 'document', 'other']),
  caption: z.string().trim().max(200).nullable(),
  /** The device's clock when it wrote the file, as its files say; absent where it was not asked. */
  fileWrittenAt: instant.optional(),
  /** The device's clock when the file was chosen: no honest camera's clock is later. */
  chosenAt: instant.optional(),
});
export type Exhibit = z.infer<typeof exhibit>;

/** Dispatch told: when, by which of ours, and who took it (a name: personal). */
export const dispatchTold = z.strictObject({
  at: instant,
  toldByWorkerId: chosenId,
  takenBy: z.string().trim().max(80).nullable(),
});

/** How a valve is named: its id in the utility's records, or words when it has none. */
export const valveId = chosenId;
