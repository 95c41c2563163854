import type { Hydrant } from '../../../shared/inventory/hydrant.ts';
import { nearestIndex, type NearestIndex } from '../../../shared/nearest/nearest.ts';
import type { CurrentInventory } from './inventory.ts';

const trees = new WeakMap<CurrentInventory, NearestIndex<Hydrant>>();

/** The search tree of an inventory, built once for as long as that inventory is in force. */
export function searchTree(inventory: CurrentInventory): NearestIndex<Hydrant> {
  const built = trees.get(inventory) ?? nearestIndex(inventory.hydrants);
  trees.set(inventory, built);
  return built;
}
