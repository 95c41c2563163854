import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { editionsIn } from '../../functions/stores/inventory/editions.ts';
import { InventoryDamaged } from '../../functions/stores/inventory/inventory.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { fileObjects } from '../../functions/stores/objects/file.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import type { ObjectStore } from '../../functions/stores/objects/objects.ts';
import { cellsOf } from '../../shared/inventory/cells.ts';
import { loadedBody, type InventoryMeta } from '../../shared/inventory/edition.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { inventoryLoaded } from '../../shared/submissions/forms/inventoryLoaded.ts';

const hydrant = (hydrantId: string, latitudeDeg: number, longitudeDeg: number): Hydrant => ({
  hydrantId,
  latitudeDeg,
  longitudeDeg,
  place: 'Gull Street',
  type: 'dry-barrel',
  service: 'active',
  modelId: null,
  installedOn: '1998-04-23',
  outlets: [{ kind: 'hose', diameterIn: 2.5 }],
  mainSizeIn: 8,
  lateralSizeIn: 6,
  lateralLengthFt: null,
  buryDepthFt: 4.5,
  isolationValveId: null,
  owner: null,
  private: false,
  lastInspectedOn: null,
  ratedFlowGpm: null,
  source: { file: 'made.csv', row: 2 },
});
const meta = (loadedAt: string, accepted = 1): InventoryMeta => ({
  submissionId: '0190e3a1-7f00-7000-8000-000000000001',
  loadedAt,
  loadedBy: 'M-1',
  sourceFile: 'made.csv',
  sourceSha256: 'a'.repeat(64),
  crs: 'EPSG:4326 WGS 84',
  mapping: { hydrantId: ['id'] },
  rows: accepted,
  accepted,
  doubtful: 0,
  rejected: 0,
});
const many = (count: number): Hydrant[] =>
  Array.from({ length: count }, (_, at) => hydrant(`H-${at}`, 41 + (at % 97) / 100, -70 - (at % 89) / 100));

describe.each(['memory', 'file'])('an inventory on objects in %s', (kind) => {
  let folder: string;
  let objects: ObjectStore;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'inventory-'));
    objects = kind === 'file' ? fileObjects(folder) : memoryObjects();
  });
  afterEach(() => rm(folder, { recursive: true }));

  it('is null before the first load, and no error', async () => {
    expect(await objectInventory(objects).current()).toBeNull();
    expect(await objectInventory(objects).hydrant('H-1')).toBeNull();
  });

  it('comes back as it was put in force', async () => {
    const hydrants = many(5000);
    const published = await objectInventory(objects).publish(hydrants, meta('2026-03-04T10:00:00Z', 5000));
    expect(published).toMatchObject({
      outcome: 'in-force',
      edition: { edition: 1, editionAt: '2026-03-04T10:00:00Z' },
    });
    const current = await objectInventory(objects).current();
    expect(current?.meta).toEqual(meta('2026-03-04T10:00:00Z', 5000));
    expect(current?.byId.size).toBe(5000);
    for (const each of hydrants) expect(current?.byId.get(each.hydrantId)).toEqual(each);
    expect(await objectInventory(objects).hydrant('H-7')).toEqual(hydrants[7]);
    expect(current!.shards.length).toBeGreaterThan(1);
  });

  it('is seen by a store that is already open, and read once an edition', async () => {
    const reader = objectInventory(objects);
    await objectInventory(objects).publish([hydrant('A', 41, -70)], meta('2026-03-04T10:00:00Z'));
    const first = await reader.current();
    expect(await reader.current()).toBe(first);
    await objectInventory(objects).publish([hydrant('B', 41, -70)], meta('2026-03-04T11:00:00Z'));
    expect([...(await reader.current())!.byId.keys()]).toEqual(['B']);
    expect((await reader.editions()).map(({ edition }) => edition)).toEqual([1, 2]);
    expect([...(await reader.load(first!.manifestSha256)).byId.keys()]).toEqual(['A']);
  });

  it('is never replaced by an older one', async () => {
    const store = objectInventory(objects);
    await store.publish([hydrant('B', 41, -70)], meta('2026-03-04T11:00:00Z'));
    expect(await store.publish([hydrant('A', 41, -70)], meta('2026-03-04T10:00:00Z'))).toMatchObject({
      outcome: 'older',
      current: { edition: 1 },
    });
    expect([...(await store.current())!.byId.keys()]).toEqual(['B']);
  });

  it('is one edition when the same load is sent twice', async () => {
    const store = objectInventory(objects);
    const first = await store.publish([hydrant('A', 41, -70)], meta('2026-03-04T10:00:00Z'));
    expect(await store.publish([hydrant('A', 41, -70)], meta('2026-03-04T10:00:00Z'))).toEqual(first);
  });

  it('holds the latest of many loads at the same moment', async () => {
    const loads = Array.from({ length: 12 }, (_, at) => ({
      id: `H-${at}`,
      at: `2026-03-04T10:00:${String((at * 7) % 12).padStart(2, '0')}Z`,
    }));
    const answers = await Promise.all(
      loads.map(({ id, at }) => objectInventory(objects).publish([hydrant(id, 41, -70)], meta(at))),
    );
    const editions = await objectInventory(objects).editions();
    const times = editions.map(({ editionAt }) => editionAt);
    expect(times).toEqual(times.toSorted());
    expect(editions.map(({ edition }) => edition)).toEqual(editions.map((_, at) => at + 1));
    expect(times.at(-1)).toBe('2026-03-04T10:00:11Z');
    expect(answers.filter(({ outcome }) => outcome === 'in-force')).toHaveLength(editions.length);
  });

  it('says damaged, never empty, when a file is missing or was changed', async () => {
    await objectInventory(objects).publish([hydrant('A', 41, -70)], meta('2026-03-04T10:00:00Z'));
    const [shard = ''] = await objects.list('shards/');
    const [manifest = ''] = await objects.list('manifests/');
    const bytes = (await objects.get(shard))!.bytes;
    // A file that unpacks and parses, but is not the one that was put in force.
    const other = gzipSync(gunzipSync(bytes).toString().replace('Gull Street', 'Tern Road'));
    await objects.put(shard, other, { contentType: 'application/gzip' });
    await expect(objectInventory(objects).current()).rejects.toThrow(InventoryDamaged);
    await objects.put(shard, bytes.subarray(0, bytes.length - 3), { contentType: 'application/gzip' });
    await expect(objectInventory(objects).current()).rejects.toThrow(InventoryDamaged);
    await objects.delete(shard);
    await expect(objectInventory(objects).current()).rejects.toThrow(InventoryDamaged);
    await objects.put(manifest, Buffer.from('{}'), { contentType: 'application/json' });
    await expect(objectInventory(objects).current()).rejects.toThrow(InventoryDamaged);
  });

  it('shares the files of hydrants that did not change', async () => {
    const store = objectInventory(objects);
    const west = many(3000);
    const east = many(3000).map((each) => ({
      ...each,
      hydrantId: `E${each.hydrantId}`,
      longitudeDeg: each.longitudeDeg + 20,
    }));
    await store.publish([...west, ...east], meta('2026-03-04T10:00:00Z'));
    const before = (await objects.list('shards/')).length;
    await store.publish(
      [...west, ...east.map((each) => ({ ...each, place: 'Tern Road' }))],
      meta('2026-03-04T11:00:00Z'),
    );
    const changed = (await objects.list('shards/')).length - before;
    expect(changed).toBeGreaterThan(0);
    expect(changed).toBeLessThan(before);
  });

  it('refuses two hydrants of one id: a fault of the caller', async () => {
    await expect(
      objectInventory(objects).publish(
        [hydrant('A', 41, -70), hydrant('A', 42, -70)],
        meta('2026-03-04T10:00:00Z'),
      ),
    ).rejects.toThrow(RangeError);
  });

  it('lets the pointer live elsewhere', async () => {
    const elsewhere = memoryObjects();
    await objectInventory(objects, editionsIn(elsewhere)).publish(
      [hydrant('A', 41, -70)],
      meta('2026-03-04T10:00:00Z'),
    );
    expect(await objects.list('editions/')).toEqual([]);
    expect((await objectInventory(objects, editionsIn(elsewhere)).current())?.byId.size).toBe(1);
  });
});

describe('the fact of a load', () => {
  it('fits its form', () => {
    const body = loadedBody(
      { edition: 1, manifestSha256: 'b'.repeat(64), editionAt: '2026-03-04T10:00:00Z' },
      meta('2026-03-04T10:00:00Z'),
    );
    expect(inventoryLoaded.body.safeParse(body).error).toBeUndefined();
  });
});

describe('cells of hydrants', () => {
  it('hold each hydrant once, none more than the most, each inside its bounds', () => {
    const place = fc.tuple(
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(place, { maxLength: 200 }), fc.integer({ min: 1, max: 20 }), (places, most) => {
        const hydrants = places.map(([lat, lon], at) => hydrant(`H-${at}`, lat, lon));
        const cells = cellsOf(hydrants, most);
        expect(cells.flatMap((cell) => cell.hydrants.map(({ hydrantId }) => hydrantId)).toSorted()).toEqual(
          hydrants.map(({ hydrantId }) => hydrantId).toSorted(),
        );
        expect(new Set(cells.map(({ cell }) => cell)).size).toBe(cells.length);
        for (const {
          bounds: [west, south, east, north],
          hydrants: inside,
        } of cells) {
          for (const { longitudeDeg, latitudeDeg } of inside) {
            expect(
              longitudeDeg >= west && longitudeDeg <= east && latitudeDeg >= south && latitudeDeg <= north,
            ).toBe(true);
          }
        }
      }),
      { numRuns: 50 },
    );
  });
  it('end where hydrants stand on one spot', () =>
    expect(cellsOf([hydrant('A', 41, -70), hydrant('B', 41, -70)], 1)).toHaveLength(1));
});
