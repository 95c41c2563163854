import * as z from 'zod';
import { chosenId, instant, sha256Hex, shortText, submissionId } from '../submissions/fields.ts';
import type { inventoryLoaded } from '../submissions/forms/inventoryLoaded.ts';

/** Where an inventory came from and what was made of it; kept with its rows for good. */
export const inventoryMeta = z.strictObject({
  /** The id of the `inventory-loaded` fact, made at the load: whoever records the fact, and however often, it is one fact. */
  submissionId,
  loadedAt: instant,
  loadedBy: chosenId,
  sourceFile: shortText,
  sourceSha256: sha256Hex,
  /** The system its coordinates were in, as a label. */
  crs: z.string().max(500),
  /** Field of the inventory to the columns that fed it. */
  mapping: z.record(z.string(), z.array(z.string())),
  /** `rows = accepted + rejected`; `doubtful` are those of the accepted that a person should look at. */
  rows: z.number().int().min(0),
  accepted: z.number().int().min(0),
  doubtful: z.number().int().min(0),
  rejected: z.number().int().min(0),
});
export type InventoryMeta = z.infer<typeof inventoryMeta>;

/** West, south, east, north, degrees. */
const bounds = z.tuple([z.number(), z.number(), z.number(), z.number()]);

/** One file of hydrants that stand close together: the unit that a map or a phone fetches. */
export const inventoryShard = z.strictObject({
  /** SHA-256 of the lines before compression; also the file's key. */
  sha256: sha256Hex,
  /** The cell of the quadtree that it covers, as digits from the whole Earth down; '' is the whole Earth. */
  cell: z.string().regex(/^[0-3]*$/),
  count: z.number().int().min(1),
  bounds,
});
export type InventoryShard = z.infer<typeof inventoryShard>;

/** The table of contents of one inventory. Its own SHA-256 names it. */
export const inventoryManifest = z.strictObject({
  schemaVersion: z.literal(1),
  meta: inventoryMeta,
  count: z.number().int().min(0),
  shards: z.array(inventoryShard),
});
export type InventoryManifest = z.infer<typeof inventoryManifest>;

/** An inventory that came into force, in the order in which they did. The one with the highest number is in force. */
export const inventoryEdition = z.strictObject({
  edition: z.number().int().min(1),
  manifestSha256: sha256Hex,
  editionAt: instant,
});
export type InventoryEdition = z.infer<typeof inventoryEdition>;

/** The body of the `inventory-loaded` fact of an edition. */
export const loadedBody = (
  { manifestSha256 }: InventoryEdition,
  meta: InventoryMeta,
): z.infer<typeof inventoryLoaded.body> => ({
  loadedAt: meta.loadedAt,
  loadedBy: meta.loadedBy,
  sourceFile: meta.sourceFile,
  sourceSha256: meta.sourceSha256,
  manifestSha256,
  rows: meta.rows,
  accepted: meta.accepted,
  doubtful: meta.doubtful,
  rejected: meta.rejected,
});
