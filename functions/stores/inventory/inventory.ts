import type { InventoryEdition, InventoryMeta, InventoryShard } from '../../../shared/inventory/edition.ts';
import type { Hydrant } from '../../../shared/inventory/hydrant.ts';

/** One inventory, whole. */
export interface Inventory {
  readonly manifestSha256: string;
  readonly meta: InventoryMeta;
  readonly shards: readonly InventoryShard[];
  readonly hydrants: readonly Hydrant[];
  readonly byId: ReadonlyMap<string, Hydrant>;
}

/** The inventory in force, with the edition that put it there. */
export type CurrentInventory = Inventory & InventoryEdition;

export type Published =
  | { readonly outcome: 'in-force'; readonly edition: InventoryEdition }
  /** An edition of a later time stands already; the files are kept but nothing points to them. */
  | { readonly outcome: 'older'; readonly current: InventoryEdition };

/** Files of an inventory are missing or changed. Never answered as an empty inventory. */
export class InventoryDamaged extends Error {
  override readonly name = 'InventoryDamaged';
}

/**
 * Inventories as immutable files, and which of them is in force. A store that cannot answer throws
 * `StoreUnavailable`; one whose files do not match their hashes throws `InventoryDamaged`.
 */
export interface InventoryStore {
  /** The inventory in force, or null when none was ever loaded. The same object while the edition stays the same. */
  current(): Promise<CurrentInventory | null>;
  /** Which edition is in force, without reading its hydrants. */
  currentEdition(): Promise<InventoryEdition | null>;
  /** Every edition from the first, for whoever records their facts. */
  editions(): Promise<readonly InventoryEdition[]>;
  /** One inventory by its manifest, in force or not. */
  load(manifestSha256: string): Promise<Inventory>;
  meta(manifestSha256: string): Promise<InventoryMeta>;
  /** A hydrant of the inventory in force; null when it has none of that id, or none was loaded. */
  hydrant(hydrantId: string): Promise<Hydrant | null>;
  /** Writes the files and puts them in force, unless a later edition stands. `meta.loadedAt` is the edition's time. */
  publish(hydrants: readonly Hydrant[], meta: InventoryMeta): Promise<Published>;
}
