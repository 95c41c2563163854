import * as z from 'zod';
import { chosenId, instant, sha256Hex, shortText } from '../submissions/fields.ts';

/** What a utility may load beside its inventory. Each is optional, and each stands by itself. */
export const layerKinds = ['streets', 'addresses', 'stations'] as const;
export type LayerKind = (typeof layerKinds)[number];
export const isLayerKind = (value: unknown): value is LayerKind => layerKinds.includes(value as LayerKind);

/** Where a layer came from and what was made of it; kept with its data for good. */
export const layerSource = z.strictObject({
  file: shortText,
  sha256: sha256Hex,
  /** The system its coordinates were in, as a label. */
  crs: z.string().max(500),
  /** `features = accepted + rejected`; `doubtful` are those of the accepted that a person should look at. */
  features: z.number().int().min(0),
  accepted: z.number().int().min(0),
  doubtful: z.number().int().min(0),
  rejected: z.number().int().min(0),
});
export type LayerSource = z.infer<typeof layerSource>;

/**
 * A layer that came into force, in the order in which they did. The one with the highest number is in force; `data`
 * null is a layer taken out again.
 */
export const layerEdition = z.strictObject({
  schemaVersion: z.literal(1),
  edition: z.number().int().min(1),
  kind: z.enum(layerKinds),
  loadedAt: instant,
  loadedBy: chosenId,
  data: z.strictObject({ sha256: sha256Hex, source: layerSource }).nullable(),
});
export type LayerEdition = z.infer<typeof layerEdition>;
