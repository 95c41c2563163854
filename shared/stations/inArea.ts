import Flatbush from 'flatbush';
import inPolygon from 'point-in-polygon-hao';
import type { Position } from '../nearest/sphere.ts';
import type { Station } from './stations.ts';

interface Laid {
  readonly station: number;
  /** Rings as pairs, as the library takes them. */
  readonly rings: number[][][];
}

/**
 * Which of the areas hold a place, by their numbers, in order. A place on a border belongs to every area that the border
 * is of: a hydrant on the street between two stations is of use to both.
 */
export function areasHolding(stations: readonly Station[]): (place: Position) => readonly number[] {
  const laid: Laid[] = stations.flatMap(({ polygons }, station) =>
    polygons.map((rings) => ({
      station,
      rings: rings.map((ring) =>
        Array.from({ length: ring.length / 2 }, (_, at) => [ring[2 * at] ?? 0, ring[2 * at + 1] ?? 0]),
      ),
    })),
  );
  if (laid.length === 0) return () => [];
  const index = new Flatbush(laid.length);
  for (const { rings } of laid) {
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const [x = 0, y = 0] of rings[0] ?? []) {
      [west, south] = [Math.min(west, x), Math.min(south, y)];
      [east, north] = [Math.max(east, x), Math.max(north, y)];
    }
    index.add(west, south, east, north);
  }
  index.finish();
  return ({ longitudeDeg, latitudeDeg }) => {
    const found = new Set<number>();
    for (const number of index.search(longitudeDeg, latitudeDeg, longitudeDeg, latitudeDeg)) {
      const area = laid[number];
      // The library answers 0 for a place on an edge.
      if (area && inPolygon([longitudeDeg, latitudeDeg], area.rings) !== false) found.add(area.station);
    }
    return [...found].sort((a, b) => a - b);
  };
}
