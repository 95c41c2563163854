import * as z from 'zod';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const id = z.string().trim().min(1).max(64);

/** Which node of the model stands for a hydrant: by a list, else the nearest junction within a distance. */
export const nodeRule = z.strictObject({
  /** Coordinate reference system of the model's own map (`EPSG:2263`, a proj4 definition); null: it has none that is known. */
  crs: z.string().trim().min(1).max(500).nullable(),
  /** Node by hydrant id, before any distance. */
  nodeOf: z.record(id, id),
  /** A junction farther from the hydrant than this is not its node, ft. */
  withinFt: z.number().gt(0).max(5000),
});
export type NodeRule = z.output<typeof nodeRule>;

/** What is known of a loaded network model. Private: it goes to crew, clerk and manager, and to no public page. */
export const networkMeta = z.strictObject({
  /** The day whose network the model describes, as its maker states it; nobody can read it off the file. */
  datedOn: z.iso.date(),
  /** Hour of the model's clock at which it is read. */
  hour: z.number().min(0).max(8760),
  rule: nodeRule,
  sourceFile: z.string().max(200),
  loadedAt: z.iso.datetime(),
  loadedBy: z.string().min(1).max(64),
});
export type NetworkMeta = z.output<typeof networkMeta>;

/** One loading: the model in force is the edition with the highest number. */
export const networkEdition = z.strictObject({
  schemaVersion: z.literal(1),
  edition: z.number().int().min(1),
  /** Of the .inp file as it was given. */
  inpSha256: sha256,
  /** Of its outline, as JSON. */
  outlineSha256: sha256,
  meta: networkMeta,
});
export type NetworkEdition = z.output<typeof networkEdition>;
