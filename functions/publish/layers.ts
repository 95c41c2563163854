import { pointsFromBytes, type CoverPoints } from '../../shared/layers/coverPoints.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import { stationsFromBytes, type Station } from '../../shared/stations/stations.ts';
import { streetsFromBytes } from '../../shared/streets/file.ts';
import { layOut } from '../../shared/streets/network.ts';
import { streetWalk, type StreetWalk } from '../../shared/streets/walk.ts';
import { LayerDamaged, type CurrentLayer, type LayerStore } from '../stores/layers/layers.ts';

/** What a layer is made into, once for as long as it is in force: the store hands out the same object until then. */
function madeOnce<T>(make: (layer: CurrentLayer) => T): (layer: CurrentLayer | null) => T | null {
  const made = new WeakMap<CurrentLayer, { readonly value: T }>();
  return (layer) => {
    if (!layer) return null;
    const known = made.get(layer) ?? { value: whole(layer, make) };
    made.set(layer, known);
    return known.value;
  };
}

/** A layer that cannot be read must stop the publication: without it distances would be others, and nobody told. */
function whole<T>(layer: CurrentLayer, make: (layer: CurrentLayer) => T): T {
  try {
    return make(layer);
  } catch (cause) {
    throw new LayerDamaged(`the layer of ${layer.kind}, edition ${layer.edition}, cannot be read`, { cause });
  }
}

const streetsOf = madeOnce(({ bytes }): StreetWalk | null => {
  const network = layOut(streetsFromBytes(bytes));
  return network && streetWalk(network);
});
const pointsOf = madeOnce(({ bytes }): CoverPoints => pointsFromBytes(bytes));
const stationsOf = madeOnce(({ bytes }): readonly Station[] => stationsFromBytes(bytes));

/** The layers in force, for a publication. A fault throws; no layer of a kind is null. */
export async function readLayers(
  store: Pick<LayerStore, 'current'>,
): Promise<Pick<PublicSources, 'streets' | 'mustCover' | 'stations'>> {
  const [streets, addresses, stations] = await Promise.all([
    store.current('streets'),
    store.current('addresses'),
    store.current('stations'),
  ]);
  return { streets: streetsOf(streets), mustCover: pointsOf(addresses), stations: stationsOf(stations) };
}
