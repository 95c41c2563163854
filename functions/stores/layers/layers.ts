import type { LayerEdition, LayerKind, LayerSource } from '../../../shared/layers/kinds.ts';

/** A layer in force: its bytes, which `shared/layers` and `shared/streets` read. */
export interface CurrentLayer extends LayerEdition {
  readonly bytes: Uint8Array;
}

/** Files of a layer are missing or changed. Never answered as "no layer". */
export class LayerDamaged extends Error {
  override readonly name = 'LayerDamaged';
}

export interface Loading {
  readonly loadedAt: string;
  readonly loadedBy: string;
  /** Null takes the layer out. */
  readonly data: { readonly bytes: Uint8Array; readonly source: LayerSource } | null;
}

/**
 * The utility's layers as immutable files, and which of each kind is in force. A store that cannot answer throws
 * `StoreUnavailable`; one whose files do not match their hashes throws `LayerDamaged`.
 */
export interface LayerStore {
  /** The layer in force, or null when none is. The same object while the edition stays the same. */
  current(kind: LayerKind): Promise<CurrentLayer | null>;
  /** Keeps a layer, or that there is none, and puts it in force as the next edition. */
  publish(kind: LayerKind, loading: Loading): Promise<LayerEdition>;
}
