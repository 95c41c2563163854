import { setTimeout } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { beforeEach, describe, expect, it } from 'vitest';
import { readLayers } from '../../functions/publish/layers.ts';
import { LayerDamaged, type LayerStore, type Loading } from '../../functions/stores/layers/layers.ts';
import { objectLayers } from '../../functions/stores/layers/objectLayers.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import type { ObjectStore } from '../../functions/stores/objects/objects.ts';
import type { LayerKind } from '../../shared/layers/kinds.ts';
import { pointsToBytes } from '../../shared/layers/coverPoints.ts';
import { buildStreets } from '../../shared/streets/build.ts';
import { streetsToBytes } from '../../shared/streets/file.ts';

const source = {
  file: 'layer.geojson',
  sha256: 'ab'.repeat(32),
  crs: 'EPSG:4326 WGS 84',
  features: 1,
  accepted: 1,
  doubtful: 0,
  rejected: 0,
};
const loading = (bytes: Uint8Array | null): Loading => ({
  loadedAt: '2026-03-04T12:00:00Z',
  loadedBy: 'm-401',
  data: bytes && { bytes, source },
});
const text = (value: string): Uint8Array => new TextEncoder().encode(value);
const line = { row: 1, places: [-60.4, 40.6, -60.39, 40.6], level: 0 };

let objects: ObjectStore;
let layers: LayerStore;
beforeEach(() => {
  objects = memoryObjects();
  layers = objectLayers(objects);
});
const keys = async (kind: LayerKind): Promise<readonly string[]> => objects.list(`${kind}/files/`);

describe('layers as immutable files', () => {
  it('none was loaded; then the last one is in force, the same object until another is', async () => {
    expect(await layers.current('streets')).toBeNull();
    expect(await layers.publish('streets', loading(text('one')))).toMatchObject({ edition: 1 });
    const first = await layers.current('streets');
    expect(new TextDecoder().decode(first?.bytes)).toBe('one');
    expect(await layers.current('streets')).toBe(first);
    expect(await layers.publish('streets', loading(text('two')))).toMatchObject({ edition: 2 });
    expect(new TextDecoder().decode((await layers.current('streets'))?.bytes)).toBe('two');
    // Another process sees the same, and the earlier file is kept.
    expect(await objectLayers(objects).current('streets')).toMatchObject({ edition: 2, data: { source } });
    expect(await keys('streets')).toHaveLength(2);
    expect(await layers.current('addresses')).toBeNull();
  });

  it('taken out it is no layer, and may come back', async () => {
    await layers.publish('streets', loading(text('one')));
    await layers.publish('streets', loading(null));
    expect(await layers.current('streets')).toBeNull();
    expect(await layers.publish('streets', loading(text('one')))).toMatchObject({ edition: 3 });
    expect((await layers.current('streets'))?.edition).toBe(3);
    expect(await keys('streets')).toHaveLength(1);
  });

  it('of loads at the same moment each gets a number of its own', async () => {
    // Each has looked which number is free before the first of them takes it.
    const slow: ObjectStore = {
      ...objects,
      put: async (key, bytes, options) => {
        if (key.includes('/editions/')) await setTimeout(20);
        return objects.put(key, bytes, options);
      },
    };
    const loads = ['a', 'b', 'c', 'd'].map((each) =>
      objectLayers(slow).publish('stations', loading(text(each))),
    );
    const editions = (await Promise.all(loads)).map(({ edition }) => edition);
    expect(editions.toSorted()).toEqual([1, 2, 3, 4]);
  });

  it('a file that is missing, changed or cut is damaged, never no layer', async () => {
    await layers.publish('streets', loading(text('one')));
    const [key = ''] = await keys('streets');
    const broken = (bytes: Uint8Array | null): ObjectStore => ({
      ...objects,
      get: async (wanted) => {
        const found = await objects.get(wanted);
        return wanted === key ? found && bytes && { ...found, bytes } : found;
      },
    });
    for (const bytes of [null, text('not compressed'), gzipSync('two')])
      await expect(objectLayers(broken(bytes)).current('streets')).rejects.toBeInstanceOf(LayerDamaged);
  });
});

describe('what a publication makes of them', () => {
  it('nothing of none; each of its kind; made once an edition', async () => {
    expect(await readLayers(layers)).toEqual({ streets: null, mustCover: null, stations: null });
    await layers.publish('streets', loading(streetsToBytes(buildStreets([line], 300).streets)));
    await layers.publish('addresses', loading(pointsToBytes([-60.4, 40.6])));
    await layers.publish('stations', loading(text('{"version":1,"stations":[]}\n')));
    const read = await readLayers(layers);
    expect(read.mustCover?.count).toBe(1);
    const [from, to] = [
      { longitudeDeg: -60.4, latitudeDeg: 40.6 },
      { longitudeDeg: -60.399, latitudeDeg: 40.6, hydrantId: 'H-1' },
    ];
    expect(read.streets?.walkFt(from, to, 1000)).toBeGreaterThan(270);
    expect((await readLayers(layers)).streets).toBe(read.streets);
  });

  it.each([
    ['streets', text('no network')],
    ['streets', streetsToBytes(buildStreets([line], 300).streets).slice(0, -8)],
    ['addresses', text('{"arrays":[],"more":{}}\n')],
    ['stations', text('{"version":1,"stations":[{}]}\n')],
  ] as const)('a layer of %s that cannot be read stops the publication', async (kind, bytes) => {
    await layers.publish(kind, loading(bytes));
    await expect(readLayers(layers)).rejects.toBeInstanceOf(LayerDamaged);
  });
});
