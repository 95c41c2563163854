import { inventoryEdition, type InventoryEdition } from '../../../shared/inventory/edition.ts';
import { StoreUnavailable } from '../faults.ts';
import type { ObjectStore } from '../objects/objects.ts';
import { InventoryDamaged, type Published } from './inventory.ts';

/** What is in force. Injected into the inventory store, so that it can live elsewhere than beside the files. */
export interface Editions {
  all(): Promise<readonly InventoryEdition[]>;
  current(): Promise<InventoryEdition | null>;
  /** Puts a manifest in force as the next edition, unless one of a later time stands. */
  moveCurrent(manifestSha256: string, editionAt: string): Promise<Published>;
}

/** Loads that happen at the same moment are few; more lost races than this is something else. */
const mostTries = 20;

const keyOf = (edition: number): string => `editions/${String(edition).padStart(8, '0')}.json`;

/**
 * Editions as numbered objects, each written once under the condition that its number is free. That one condition makes
 * the step atomic on any object store: of two loads that read the same last edition, one gets the next number and the
 * other finds it taken, reads again and compares its time with the winner's. Nothing is ever overwritten, and the list
 * is the history.
 */
export function editionsIn(objects: ObjectStore): Editions {
  const known = new Map<string, InventoryEdition>();

  async function read(key: string): Promise<InventoryEdition> {
    const cached = known.get(key);
    if (cached) return cached;
    const found = await objects.get(key);
    if (!found) throw new InventoryDamaged(`${key} was listed and is not there`);
    const edition = inventoryEdition.parse(JSON.parse(Buffer.from(found.bytes).toString('utf8')));
    known.set(key, edition);
    return edition;
  }

  async function current(): Promise<InventoryEdition | null> {
    const last = (await objects.list('editions/')).at(-1);
    return last === undefined ? null : read(last);
  }

  return {
    current,
    all: async () => {
      const editions: InventoryEdition[] = [];
      for (const key of await objects.list('editions/')) editions.push(await read(key));
      return editions;
    },
    moveCurrent: async (manifestSha256, editionAt) => {
      for (let tried = 0; tried < mostTries; tried += 1) {
        const last = await current();
        // The same load sent again is already what it asks to be.
        if (last?.manifestSha256 === manifestSha256) return { outcome: 'in-force', edition: last };
        if (last && Date.parse(last.editionAt) >= Date.parse(editionAt))
          return { outcome: 'older', current: last };
        const edition: InventoryEdition = { edition: (last?.edition ?? 0) + 1, manifestSha256, editionAt };
        const { written } = await objects.put(
          keyOf(edition.edition),
          Buffer.from(`${JSON.stringify(edition)}\n`),
          {
            contentType: 'application/json',
            ifAbsent: true,
          },
        );
        if (written) return { outcome: 'in-force', edition };
      }
      throw new StoreUnavailable(`others loaded inventories ${mostTries} times at the same moment`);
    },
  };
}
