import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { cellsOf, type Cell } from '../../../shared/inventory/cells.ts';
import {
  inventoryManifest,
  type InventoryManifest,
  type InventoryMeta,
  type InventoryShard,
} from '../../../shared/inventory/edition.ts';
import { hydrant as hydrantSchema, type Hydrant } from '../../../shared/inventory/hydrant.ts';
import type { ObjectStore } from '../objects/objects.ts';
import { editionsIn, type Editions } from './editions.ts';
import { InventoryDamaged, type CurrentInventory, type Inventory, type InventoryStore } from './inventory.ts';

const compress = promisify(gzip);
const decompress = promisify(gunzip);

/** Some 40 kB compressed: what a phone fetches for its own neighbourhood, and 125 files for a city of 250,000. */
const hydrantsPerShard = 2000;
/** No shard is near this; a file that unpacks to more is not ours. */
const mostShardBytes = 64 * 1024 * 1024;

const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');
const shardKey = (hash: string): string => `shards/${hash}.ndjson.gz`;
const manifestKey = (hash: string): string => `manifests/${hash}.json`;

const newline = 0x0a;

/**
 * Writes hydrants as lines of JSON into one buffer that serves for shard after shard: whole shards as text, a new one
 * each, would be the largest thing in memory.
 */
function lineWriter(): (hydrants: readonly Hydrant[]) => Buffer {
  let lines = Buffer.allocUnsafe(hydrantsPerShard * 512);
  return (hydrants) => {
    let length = 0;
    for (const hydrant of hydrants) {
      const line = `${JSON.stringify(hydrant)}\n`;
      // Three bytes at most for each of JavaScript's 16-bit units.
      if (length + line.length * 3 > lines.length)
        lines = Buffer.concat([lines.subarray(0, length)], lines.length * 2 + line.length * 3);
      length += lines.write(line, length);
    }
    return lines.subarray(0, length);
  };
}

/** The inventory store over any object store. */
export function objectInventory(
  objects: ObjectStore,
  editions: Editions = editionsIn(objects),
): InventoryStore {
  let latest: CurrentInventory | null = null;

  async function readManifest(hash: string): Promise<InventoryManifest> {
    const found = await objects.get(manifestKey(hash));
    if (!found) throw new InventoryDamaged(`the manifest ${hash} is missing`);
    if (sha256(found.bytes) !== hash) throw new InventoryDamaged(`the manifest ${hash} was changed`);
    return inventoryManifest.parse(JSON.parse(Buffer.from(found.bytes).toString('utf8')));
  }

  async function readShard({ sha256: hash, count }: InventoryShard): Promise<Hydrant[]> {
    const found = await objects.get(shardKey(hash));
    if (!found) throw new InventoryDamaged(`the hydrants ${hash} are missing`);
    const bytes = await decompress(found.bytes, { maxOutputLength: mostShardBytes }).catch(
      (cause: unknown) => {
        throw new InventoryDamaged(`the hydrants ${hash} cannot be unpacked`, { cause });
      },
    );
    if (sha256(bytes) !== hash) throw new InventoryDamaged(`the hydrants ${hash} were changed`);
    const hydrants: Hydrant[] = [];
    for (
      let from = 0, to = bytes.indexOf(newline);
      to >= 0;
      from = to + 1, to = bytes.indexOf(newline, from)
    ) {
      hydrants.push(hydrantSchema.parse(JSON.parse(bytes.toString('utf8', from, to))));
    }
    if (hydrants.length !== count)
      throw new InventoryDamaged(`the hydrants ${hash} are ${hydrants.length} instead of ${count}`);
    return hydrants;
  }

  async function load(manifestSha256: string): Promise<Inventory> {
    const { meta, shards, count } = await readManifest(manifestSha256);
    const hydrants: Hydrant[] = [];
    for (const shard of shards) for (const hydrant of await readShard(shard)) hydrants.push(hydrant);
    const byId = new Map(hydrants.map((hydrant) => [hydrant.hydrantId, hydrant]));
    if (hydrants.length !== count || byId.size !== count)
      throw new InventoryDamaged(
        `the inventory ${manifestSha256} holds ${byId.size} hydrants instead of ${count}`,
      );
    return { manifestSha256, meta, shards, hydrants, byId };
  }

  async function writeShard(
    { cell, bounds, hydrants }: Cell,
    write: ReturnType<typeof lineWriter>,
  ): Promise<InventoryShard> {
    const lines = write(hydrants);
    const hash = sha256(lines);
    // The same hydrants were perhaps kept by an edition before; then their file is there already.
    await objects.put(shardKey(hash), await compress(lines), {
      contentType: 'application/gzip',
      ifAbsent: true,
    });
    return { sha256: hash, cell, count: hydrants.length, bounds: [...bounds] };
  }

  async function current(): Promise<CurrentInventory | null> {
    const edition = await editions.current();
    if (!edition) return null;
    if (latest?.edition !== edition.edition) latest = { ...(await load(edition.manifestSha256)), ...edition };
    return latest;
  }

  return {
    current,
    currentEdition: () => editions.current(),
    editions: () => editions.all(),
    load,
    meta: async (hash): Promise<InventoryMeta> => (await readManifest(hash)).meta,
    hydrant: async (hydrantId) => (await current())?.byId.get(hydrantId) ?? null,
    publish: async (hydrants, meta) => {
      const ids = new Set(hydrants.map(({ hydrantId }) => hydrantId));
      if (ids.size !== hydrants.length)
        throw new RangeError(`${hydrants.length - ids.size} hydrants share an id with another`);
      const shards: InventoryShard[] = [];
      const write = lineWriter();
      for (const cell of cellsOf(hydrants, hydrantsPerShard)) shards.push(await writeShard(cell, write));
      const manifest = inventoryManifest.parse({
        schemaVersion: 1,
        meta,
        count: hydrants.length,
        shards,
      } satisfies InventoryManifest);
      const bytes = Buffer.from(`${JSON.stringify(manifest)}\n`);
      const hash = sha256(bytes);
      await objects.put(manifestKey(hash), bytes, { contentType: 'application/json', ifAbsent: true });
      // Last, and in one step: until here nothing points to the new files.
      return editions.moveCurrent(hash, meta.loadedAt);
    },
  };
}
