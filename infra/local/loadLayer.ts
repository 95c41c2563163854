import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inventoryStore, layerStore } from '../../functions/wiring.ts';
import type { LayerKind } from '../../shared/layers/kinds.ts';
import { townStationsGeojson, townStreetsGeojson } from './demo/layers.ts';
import { readLayerOptions } from './import/layers/options.ts';
import { runLayerLoad } from './import/layers/run.ts';

/** Puts a layer in force by the command's own code, unless one is there already; for the demo, whose load may be run again. */
export async function loadLayerGeojson(
  kind: LayerKind,
  geojson: string,
  fileName: string,
  by: string,
): Promise<void> {
  const layers = await layerStore();
  if (await layers.current(kind)) return;
  const folder = await mkdtemp(join(tmpdir(), 'hsl-layer-'));
  try {
    const file = join(folder, fileName);
    await writeFile(file, geojson);
    const options = readLayerOptions([file, '--as', kind, '--by', by], 'en');
    if (options === 'help') throw new Error('the command asked for its own help');
    await runLayerLoad(options, {
      lookAtInventory: inventoryStore,
      openLayers: async () => layers,
      now: () => new Date().toISOString(),
      account: () => by,
      print: () => undefined,
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The demo town's streets and its stations' areas. */
export async function loadTownLayers(by: string): Promise<void> {
  await loadLayerGeojson('streets', townStreetsGeojson(), 'tansy-harbor-streets.geojson', by);
  await loadLayerGeojson('stations', townStationsGeojson(), 'tansy-harbor-stations.geojson', by);
}
