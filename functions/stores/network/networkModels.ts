import type { ModelOutline } from '../../../shared/network/outline.ts';
import type { NetworkEdition, NetworkMeta } from '../../../shared/network/edition.ts';

/** The network model in force. */
export interface CurrentModel extends NetworkEdition {
  /** The .inp file's bytes as they were given. */
  readonly inp: Uint8Array;
  readonly outline: ModelOutline;
}

/** Files of a model are missing or changed. Never answered as "no model". */
export class ModelDamaged extends Error {
  override readonly name = 'ModelDamaged';
}

/**
 * The utility's network models as immutable files, and which of them is in force. A store that cannot answer throws
 * `StoreUnavailable`; one whose files do not match their hashes throws `ModelDamaged`.
 */
export interface NetworkModels {
  /** The model in force, or null when none was ever loaded. The same object while the edition stays the same. */
  current(): Promise<CurrentModel | null>;
  /** Keeps a model and puts it in force as the next edition. */
  publish(inp: Uint8Array, outline: ModelOutline, meta: NetworkMeta): Promise<NetworkEdition>;
}
